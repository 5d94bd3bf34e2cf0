using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;

namespace ClubCycle.Planning.Tests.Rules;

public class YoungPlayersHaveMonthsAwayFromHockeyTests
{
    // Vector: one 28-day and one 30-day block are 58 days: enough for the must, short for the should. Rule after AAP 2007 and 2024.
    [Fact]
    public void Two_blocks_of_about_a_month_meet_the_must_but_not_the_should()
    {
        var days = HockeyFreeRules.DaysInBlocks([28, 30, 27, 6]);

        Assert.Equal(58, days);
        Assert.Equal(Strength.Should, HockeyFreeRules.Shortage(days));
    }

    [Theory]
    [InlineData(55, Strength.Must)]
    [InlineData(56, Strength.Should)]
    [InlineData(83, Strength.Should)]
    [InlineData(84, null)]
    public void Eight_weeks_are_a_must_and_twelve_a_should(int days, Strength? shortage) => Assert.Equal(shortage, HockeyFreeRules.Shortage(days));

    [Fact]
    public void Days_between_contacts_are_counted_to_both_ends_of_the_cycle()
    {
        var year = Year.Of("U12").Phase(PhaseKind.Recovery, 20).With("practice 2026-08-31 18:00 60", "match 2026-10-05 10:00 40");

        // 28 days before the practice, 34 between, 76 after: all blocks count.
        Assert.Empty(year.Check(HockeyFreeRules.R07));
        Assert.Equal(Strength.Must, Assert.Single(Year.Of("U12").Phase(PhaseKind.Recovery, 7).With("practice 2026-08-10 18:00 60").Check(HockeyFreeRules.R07)).Strength);
        Assert.Empty(Year.Of("Senior").Phase(PhaseKind.InSeason, 4).Check(HockeyFreeRules.R07));
    }
}
