using ClubCycle.Planning.Measures;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Tests.Measures;

public sealed class YouthLiftingTests
{
    /// <summary>R29; Australian Strength and Conditioning Association 2007 and 2017, loads from memory.</summary>
    [Theory]
    [InlineData(6, 0)]
    [InlineData(8, 0)]
    [InlineData(9, 60)]
    [InlineData(11, 60)]
    [InlineData(12, 70)]
    [InlineData(14, 70)]
    [InlineData(15, 80)]
    [InlineData(17, 80)]
    public void The_ceiling_rises_with_age(int age, double percent) => Assert.Equal(percent, YouthLifting.CeilingPercent(age).Value());

    [Fact]
    public void The_sheets_use_the_same_ceilings() => Assert.All(
        AgeGroup.All.Where(group => group.IsYouth), group => Assert.Equal(RepetitionTable.Ceiling(group), YouthLifting.CeilingPercent(group.YoungestAge).Value()));

    /// <summary>R29; Faigenbaum et al. 2009 from memory; 9 and 15 years editorial.</summary>
    [Theory]
    [InlineData(8, true, false, false)]
    [InlineData(9, true, true, false)]
    [InlineData(14, true, true, false)]
    [InlineData(14, false, false, false)]
    [InlineData(15, true, true, true)]
    [InlineData(15, false, false, false)]
    [InlineData(17, true, true, true)]
    [InlineData(17, false, false, false)]
    [InlineData(18, false, true, true)]
    public void Minors_try_a_maximum_only_supervised_and_are_not_asked_to_under_15(int age, bool supervised, bool allowed, bool suggested) =>
        Assert.Equal(new MaximumAttempt(allowed, suggested), YouthLifting.AttemptAtMaximum(age, supervised).OrThrow());

    [Theory]
    [InlineData(5)]
    [InlineData(18)]
    public void A_youth_ceiling_is_for_minors(int age) => YouthLifting.CeilingPercent(age).Refused("measure.lifting-minor-age", "6 to 17 years");

    [Theory]
    [InlineData(5)]
    [InlineData(91)]
    public void An_age_out_of_range_is_refused(int age) => YouthLifting.AttemptAtMaximum(age, true).Refused("measure.lifting-age", "6 to 90 years");
}
