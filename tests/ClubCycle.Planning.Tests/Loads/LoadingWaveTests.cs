using ClubCycle.Planning.Loads;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Templates;
using ClubCycle.Planning.Weeks;

namespace ClubCycle.Planning.Tests.Loads;

/// <summary>Weeks as letters: recovery, aerobic build, mixed, pre-season, in season; <c>x</c> is a closed week of pre-season. Then what they ask: loading, unloading, taper.</summary>
public class LoadingWaveTests
{
    [Theory]
    [InlineData("AAAAAAAA", 4, "LLLULLLU")]
    [InlineData("AAAAAAAA", 3, "LLULLULL")]
    [InlineData("RRAAAAA", 4, "LLLLLUL")]
    [InlineData("RRRRSSSS", 2, "LLLLLLLL")]
    public void Every_nth_building_week_unloads(string weeks, int every, string wave) => Assert.Equal(wave, Of(weeks, every));

    [Fact]
    public void The_count_runs_on_through_neighbouring_building_phases() => Assert.Equal("LLLULLLULTL", Of("AAAMMMPPPPS", 4));

    [Theory]
    [InlineData("RPPS", "LLTL")]
    [InlineData("RPS", "LLL")]
    [InlineData("APS", "LTL")]
    [InlineData("PAR", "LLL")]
    [InlineData("PPP", "LLT")]
    public void The_last_of_two_building_weeks_or_more_tapers_when_it_is_pre_season(string weeks, string wave) => Assert.Equal(wave, Of(weeks, 4));

    [Theory]
    [InlineData("AAAAPS", 4, "LLULTL")]
    [InlineData("APPPS", 3, "LULTL")]
    [InlineData("AAAAR", 4, "LLLUL")]
    [InlineData("RRAAAPPS", 4, "LLLLULTL")]
    public void An_easier_week_right_before_the_taper_comes_a_week_earlier(string weeks, int every, string wave) => Assert.Equal(wave, Of(weeks, every));

    [Fact]
    public void But_never_in_the_first_week() => Assert.Equal("LUTL", Of("PPPS", 2));

    [Theory]
    [InlineData("AAxAAAA", 4, "LLLLLLU")]
    [InlineData("PPxPPPS", 4, "LLLLLTL")]
    public void A_closed_week_starts_the_count_again_and_needs_no_taper_before_it(string weeks, int every, string wave) => Assert.Equal(wave, Of(weeks, every));

    [Theory]
    [InlineData("U17", TrainingAge.Trained, 4, 3)]
    [InlineData("U18", TrainingAge.Trained, 4, 4)]
    [InlineData("Senior", TrainingAge.New, 4, 3)]
    [InlineData("Senior", TrainingAge.Some, 5, 5)]
    [InlineData("U17", TrainingAge.Trained, 2, 2)]
    public void The_young_and_the_new_unload_every_third_week_at_least(string ages, TrainingAge trainingAge, int asked, int every)
    {
        var template = BuiltInTemplates.For(AgeGroup.Senior) with { Loading = new(asked, 0.6, 0.8, 0.08) };

        Assert.Equal(every, LoadingWave.UnloadEvery(template, A.Squad(AgeGroup.Find(ages), trainingAge)));
    }

    private static string Of(string weeks, int every)
    {
        var first = A.Date("2026-08-03");
        var cycle = weeks.Select((w, i) => new CycleWeek(first.PlusWeeks(i), Phase(w), 0, i + 1, weeks.Length)).ToList();
        var wave = LoadingWave.Of(cycle, every, week => weeks[cycle.IndexOf(week)] == 'x');
        return string.Concat(wave.Select(w => w switch { WeekLoading.Unloading => 'U', WeekLoading.Taper => 'T', _ => 'L' }));
    }

    private static PhaseKind Phase(char letter) => letter switch
    {
        'R' => PhaseKind.Recovery,
        'A' => PhaseKind.AerobicBuild,
        'M' => PhaseKind.Mixed,
        'S' => PhaseKind.InSeason,
        _ => PhaseKind.PreSeason,
    };
}
