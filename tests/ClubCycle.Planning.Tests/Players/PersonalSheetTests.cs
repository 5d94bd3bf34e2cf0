using ClubCycle.Planning.Players;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Tests.Players;

public class PersonalSheetTests
{
    private static readonly SquadPlan Plan = A.Plan(A.Request());
    private static readonly FieldTestResult Maximum = new(TestKind.MaximumHeartRate, A.Date("2026-02-20"), 196);

    [Fact]
    public void Without_numbers_the_sheet_is_the_squad_s() => Assert.All(Plan.Sessions, s => Assert.Equal(s.Steps.Select(x => new PersonalStep(x)), Of(s, false)));

    [Fact]
    public void An_easy_run_names_the_own_ceiling_on_the_run_only()
    {
        var run = Plan.Sessions.First(s => s.Workout == "easy-run");

        var own = Of(run, false, Maximum).Where(s => s.Own is not null).ToList();

        Assert.Equal("Yours: ceiling of easy running: 148 b/min (maximum measured; being able to talk comes first).", Assert.Single(own).Own);
        Assert.Equal("main", own[0].Step.Part);
    }

    [Fact]
    public void A_lift_that_was_tested_has_the_own_load()
    {
        var (session, step) = Plan.Sessions.SelectMany(s => s.Steps, (s, x) => (s, x)).First(p => p.x.PercentOfMaximum >= 80);

        var own = Of(session, false, new FieldTestResult(TestKind.Lift, A.Date("2026-02-20"), 100, 1, step.Name)).Single(s => s.Step == step).Own;

        Assert.StartsWith("Your load: ", own, StringComparison.Ordinal);
        Assert.Contains("% of about 100 kg", own, StringComparison.Ordinal);
    }

    /// <summary>Three tenths fewer jumps and sprints (R45), everything else as it was.</summary>
    [Theory]
    [InlineData("jumps")]
    [InlineData("lift-and-jump")]
    [InlineData("sprint-intervals")]
    [InlineData("hill-sprints")]
    public void Growing_fast_means_fewer_jumps_and_sprints_and_nothing_else(string workout)
    {
        var braked = 0;
        foreach (var session in Plan.Sessions.Where(s => s.Workout == workout))
        {
            foreach (var (squads, own) in session.Steps.Zip(Of(session, true)))
            {
                if (own.Own is null)
                {
                    Assert.Equal(squads, own.Step);
                    continue;
                }

                braked++;
                var (before, after) = (Count(squads), Count(own.Step));
                Assert.InRange(after, 1, Math.Max(1, (int)(0.7 * before)));
                Assert.True((own.Step.FootContacts ?? 0) <= 0.7 * (squads.FootContacts ?? 0) || after == 1);
                Assert.Equal((squads.Metres, squads.RestSeconds, squads.PercentOfMaximum), (own.Step.Metres, own.Step.RestSeconds, own.Step.PercentOfMaximum));
            }
        }

        Assert.InRange(braked, 2, int.MaxValue);
    }

    private static int Count(Step step) => (step.Sets ?? 1) * (step.Reps ?? 1);

    private static IReadOnlyList<PersonalStep> Of(PlannedSession session, bool growing, params FieldTestResult[] results)
    {
        PlayerNumbers player = new(null, growing, results);
        return PersonalSheet.Of(session, player, new PersonalValues(player, AgeGroup.Senior, A.Date("2026-03-01")));
    }
}
