using ClubCycle.Planning.Players;
using ClubCycle.Planning.Squads;
using NodaTime;

namespace ClubCycle.Planning.Tests.Players;

public sealed class GuardianAgeTests
{
    private static readonly LocalDate Today = new(2026, 6, 15);

    [Theory]
    [InlineData(2011, true)]
    [InlineData(2010, true)]
    [InlineData(2009, false)]
    public void A_child_counts_as_one_until_the_end_of_the_year_in_which_it_reaches_the_age(int born, bool asks) =>
        Assert.Equal(asks, GuardianAge.Asks(16, AgeGroup.Senior, born, Today));

    [Theory]
    [InlineData(16, 16, true)]
    [InlineData(18, 16, false)]
    [InlineData(18, 17, true)]
    public void Without_a_year_of_birth_the_squads_youngest_decides(int under, int below, bool asks) =>
        Assert.Equal(asks, GuardianAge.Asks(below, AgeGroup.Youth(under), null, Today));

    [Fact]
    public void The_year_of_birth_comes_before_the_squad() => Assert.False(GuardianAge.Asks(16, AgeGroup.Youth(14), 2008, Today));

    [Fact]
    public void No_guardian_is_asked_for_adults() => Assert.False(GuardianAge.Asks(GuardianAge.Oldest, AgeGroup.Senior, null, Today));
}
