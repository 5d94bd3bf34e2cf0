using ClubCycle.Planning.Loads;
using ClubCycle.Planning.Squads;

namespace ClubCycle.Planning.Tests.Loads;

/// <summary>What the planner does not design itself; the table is editorial.</summary>
public class LoadTableTests
{
    [Theory]
    [InlineData("U8", 30)]
    [InlineData("U10", 30)]
    [InlineData("U11", 40)]
    [InlineData("U12", 40)]
    [InlineData("U13", 50)]
    [InlineData("U14", 50)]
    [InlineData("U15", 60)]
    [InlineData("Senior", 60)]
    public void Younger_children_play_shorter_matches(string ages, int minutes) => Assert.Equal(minutes, LoadTable.MatchMinutes(AgeGroup.Find(ages)!.Value));

    [Theory]
    [InlineData(SessionKind.Practice, 90, 450)]
    [InlineData(SessionKind.Match, 60, 480)]
    [InlineData(SessionKind.ActiveRecovery, 20, 20)]
    public void Practices_matches_and_active_recovery_have_their_load(SessionKind kind, int minutes, int load)
    {
        var plan = A.Plan(A.Request());

        Assert.Equal([(minutes, load)], plan.Sessions.Where(s => s.Kind == kind).Select(s => (s.Minutes, s.PlannedLoadAu)).Distinct());
    }
}
