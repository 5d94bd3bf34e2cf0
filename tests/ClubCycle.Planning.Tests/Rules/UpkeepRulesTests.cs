using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Tests.Rules;

public class EnduranceIsKeptInSeasonTests
{
    private static Year Season(string ages, PhaseKind phase = PhaseKind.InSeason) => Year.Of(ages).Phase(phase, 4).Every(7, 4, "match 2026-08-08 14:00 60");

    [Fact]
    public void A_match_alone_is_one_effort_and_one_finding_for_the_phase() =>
        Assert.StartsWith("4 of 4 weeks", Assert.Single(Season("Senior").Check(UpkeepRules.R23)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("practice")]
    [InlineData("easy-run")]
    public void A_match_and_a_practice_or_a_run_pass(string session) => Assert.Empty(Season("Senior").Every(7, 4, $"{session} 2026-08-05 18:00 30").Check(UpkeepRules.R23));

    // Spiering et al. 2021: 13 minutes and more kept endurance; a match counts from 40 minutes on.
    [Theory]
    [InlineData("match 2026-08-08 10:00 40", true)]
    [InlineData("match 2026-08-08 10:00 39", false)]
    [InlineData("easy-run 2026-08-08 10:00 13", true)]
    [InlineData("easy-run 2026-08-08 10:00 12", false)]
    [InlineData("strength-circuit 2026-08-08 10:00 40", false)]
    public void Short_efforts_and_other_work_do_not_count(string session, bool second) =>
        Assert.Equal(second, Year.Of("Senior").Phase(PhaseKind.InSeason, 1).With("practice 2026-08-04 18:00 90", session).Check(UpkeepRules.R23).Count == 0);

    [Fact]
    public void With_a_sheet_only_the_main_part_counts()
    {
        var run = A.Plan(A.Request()).Sessions.First(s => s.Workout == "easy-run");

        Assert.True(UpkeepRules.KeepsEndurance(run));
        Assert.False(UpkeepRules.KeepsEndurance(run with { Steps = [new Step("warm-up", "jog", "", Minutes: 15), new Step("main", "run", "", Minutes: 12)] }));
    }

    [Fact]
    public void The_break_is_judged_and_the_build_is_not()
    {
        Assert.Single(Season("Senior", PhaseKind.Break).Check(UpkeepRules.R23));
        Assert.Empty(Season("Senior", PhaseKind.AerobicBuild).Check(UpkeepRules.R23));
    }

    [Fact]
    public void Children_under_eleven_are_not_judged() => Assert.Empty(Season("U12").Check(UpkeepRules.R23));

    [Fact]
    public void The_fewest_efforts_are_told()
    {
        var finding = Assert.Single(Season("Senior").With("practice 2026-08-05 18:00 90").Check(UpkeepRules.R23));

        Assert.Equal((1, 2, "sessions"), finding.FiguresOf());
        Assert.StartsWith("3 of 4 weeks", finding.Message, StringComparison.Ordinal);
        Assert.Equal(A.Date("2026-08-10"), finding.Week);
    }

    [Theory]
    [InlineData(12, false)]
    [InlineData(13, true)]
    public void A_practice_counts_from_thirteen_minutes_on(int minutes, bool counts) =>
        Assert.Equal(counts, Season("Senior").Every(7, 4, $"practice 2026-08-05 18:00 {minutes}").Check(UpkeepRules.R23).Count == 0);
}
