using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Templates;
using ClubCycle.Planning.Workouts;
using static ClubCycle.Planning.Phases.PhaseKind;

namespace ClubCycle.Planning.Tests.Templates;

public class BuiltInTemplatesTests
{
    [Fact]
    public void Every_one_passes_its_own_check() => Assert.All(BuiltInTemplates.All, t => Assert.Empty(TemplateCheck.Check(t)));

    [Fact]
    public void Every_age_group_has_exactly_one() =>
        Assert.All(AgeGroup.All, ages => Assert.Equal(BuiltInTemplates.For(ages), Assert.Single(BuiltInTemplates.All, t => t.AgeGroups.Contains(ages))));

    [Theory]
    [InlineData("senior-standard", "Senior")]
    [InlineData("masters-standard", "Masters")]
    [InlineData("youth-u8-u10", "U9")]
    [InlineData("youth-u11-u12", "U11")]
    [InlineData("youth-u13-u14", "U14")]
    [InlineData("youth-u15-u16", "U16")]
    [InlineData("youth-u17-u18", "U17")]
    public void Each_is_found_by_name_and_by_age(string name, string ages) => Assert.Equal(BuiltInTemplates.Find(name), BuiltInTemplates.For(AgeGroup.Find(ages)!.Value));

    [Fact]
    public void An_unknown_name_finds_nothing() => Assert.Null(BuiltInTemplates.Find("Senior-Standard"));

    /// <summary>Sessions in a loading week outside hockey: two waves of building for adults, less the younger the players are (editorial table).</summary>
    [Theory]
    [InlineData("Senior", Recovery, 3)]
    [InlineData("Senior", AerobicBuild, 5)]
    [InlineData("Senior", Mixed, 4)]
    [InlineData("Senior", PreSeason, 4)]
    [InlineData("Senior", PhaseKind.Break, 4)]
    [InlineData("Masters", Recovery, 2)]
    [InlineData("Masters", AerobicBuild, 4)]
    [InlineData("Masters", Mixed, 3)]
    [InlineData("Masters", PreSeason, 3)]
    [InlineData("U18", Recovery, 2)]
    [InlineData("U18", AerobicBuild, 4)]
    [InlineData("U18", Mixed, 3)]
    [InlineData("U18", PreSeason, 3)]
    [InlineData("U16", AerobicBuild, 3)]
    [InlineData("U16", Mixed, 3)]
    [InlineData("U14", AerobicBuild, 3)]
    [InlineData("U14", Recovery, 2)]
    [InlineData("U12", AerobicBuild, 2)]
    [InlineData("U12", Recovery, 1)]
    [InlineData("U10", AerobicBuild, 0)]
    [InlineData("U10", PreSeason, 1)]
    public void A_loading_week_holds_the_sessions_of_its_age(string ages, PhaseKind phase, int sessions) => Assert.Equal(sessions, Mix(ages, phase).Slots.Count);

    [Fact]
    public void The_aerobic_build_of_seniors_is_four_easy_runs_and_one_circuit()
    {
        var workouts = Mix("Senior", AerobicBuild).Slots.SelectMany(s => s.Workouts).ToList();

        Assert.Equal((4, 1), (workouts.Count(w => w == "easy-run"), workouts.Count(w => w == "core-and-circuit")));
    }

    [Theory]
    [InlineData(AerobicBuild, 0)]
    [InlineData(Recovery, 0)]
    [InlineData(Mixed, 2)]
    [InlineData(PreSeason, 3)]
    public void Hard_sessions_of_seniors_come_late_and_never_more_than_48_hours_allow(PhaseKind phase, int hard) =>
        Assert.Equal(hard, Mix("Senior", phase).Slots.Count(s => s.Workouts.All(w => WorkoutCatalogue.Find(w)!.Hardness == Hardness.Hard)));

    [Fact]
    public void Sessions_are_no_longer_than_the_age_allows() => Assert.All(
        new (int Under, int Most)[] { (10, 15), (12, 30), (14, 40), (16, 50) },
        limit => Assert.All(BuiltInTemplates.For(AgeGroup.Youth(limit.Under)).Mixes.SelectMany(m => m.Slots), s => Assert.InRange(s.Minutes, 10, limit.Most)));

    [Fact]
    public void Runs_of_under_14s_last_25_minutes_at_most() => Assert.All(
        BuiltInTemplates.For(AgeGroup.Youth(14)).Mixes.SelectMany(m => m.Slots).Where(s => s.Workouts.Contains("easy-run")), s => Assert.InRange(s.Minutes, 10, 25));

    [Fact]
    public void The_youngest_get_movement_games_only() =>
        Assert.All(BuiltInTemplates.For(AgeGroup.Youth(8)).Mixes.SelectMany(m => m.Slots).SelectMany(s => s.Workouts), w => Assert.Equal("movement-games", w));

    [Fact]
    public void Nobody_under_16_lifts_heavy_and_nobody_in_a_template_drops_from_a_box() => Assert.All(BuiltInTemplates.All, t =>
    {
        var workouts = t.Mixes.SelectMany(m => m.Slots).SelectMany(s => s.Workouts).Select(w => WorkoutCatalogue.Find(w)!).ToList();

        Assert.DoesNotContain(workouts, w => w.Jumps == JumpClass.High);
        Assert.True(t.AgeGroups.All(a => a.Under is null or > 16) || !workouts.Any(w => w.HeavyLift));
    });

    [Fact]
    public void Youth_chains_give_four_weeks_of_recovery_and_eight_without_hockey_where_the_gap_allows() =>
        Assert.All(BuiltInTemplates.All.Where(t => t.AgeGroups.All(a => a.IsYouth)), template => Assert.All(Enumerable.Range(9, 44), weeks =>
        {
            var chain = template.Chains.First(c => c.MinWeeks <= weeks && weeks <= c.MaxWeeks);
            var split = WeekAllocation.Split(chain.Phases, weeks)!;

            Assert.InRange(split[0], 4, 52);
            Assert.InRange(chain.Phases.Zip(split).TakeWhile(p => p.First.Kind is not PreSeason).Sum(p => p.Second), 8, 52);
        }));

    private static WeeklyMix Mix(string ages, PhaseKind phase) => BuiltInTemplates.For(AgeGroup.Find(ages)!.Value).Mixes.Single(m => m.Phase == phase);
}
