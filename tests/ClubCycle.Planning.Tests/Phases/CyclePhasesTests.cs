using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Templates;
using NodaTime;
using static ClubCycle.Planning.Phases.PhaseKind;

namespace ClubCycle.Planning.Tests.Phases;

public class CyclePhasesTests
{
    [Fact]
    public void Four_months_in_two_halves_have_the_usual_year()
    {
        var phases = Of(A.SeasonA);

        Assert.Equal([Recovery, AerobicBuild, Mixed, PreSeason, InSeason, PhaseKind.Break, InSeason], phases.Select(p => p.Kind));
        Assert.InRange(phases[0].Weeks, 4, 5);
        Assert.InRange(phases[1].Weeks, 12, 14);
        Assert.InRange(phases[2].Weeks, 4, 5);
        Assert.InRange(phases[3].Weeks, 8, 9);
        Assert.Equal((A.Date("2026-12-07"), A.Date("2026-12-27")), (phases[5].First, phases[5].Last));
    }

    [Fact]
    public void Three_months_have_one_long_chain()
    {
        var phases = Of(A.SeasonB);

        Assert.Equal([Recovery, AerobicBuild, Mixed, PreSeason, InSeason], phases.Select(p => p.Kind));
        Assert.InRange(phases.Take(4).Sum(p => p.Weeks), 38, 40);
        Assert.All(phases.Take(4), p => Assert.Equal("long", p.Chain));
    }

    [Fact]
    public void Two_months_are_prepared_in_two_waves()
    {
        var phases = Of(A.SeasonC);

        Assert.Equal([Recovery, AerobicBuild, Mixed, Restore, AerobicBuild, Mixed, PreSeason, InSeason], phases.Select(p => p.Kind));
        Assert.All(phases.Take(7), p => Assert.Equal("two-waves", p.Chain));
    }

    [Fact]
    public void Outdoor_indoor_outdoor_has_a_short_chain_in_July_and_August()
    {
        var phases = Of(A.SeasonD);

        Assert.Equal([Recovery, AerobicBuild, Mixed, PreSeason, InSeason], phases.Select(p => p.Kind));
        Assert.All(phases.Take(4), p => Assert.Equal("short", p.Chain));
        Assert.Equal((A.Date("2026-07-01"), A.Date("2026-08-30")), (phases[0].First, phases[3].Last));
    }

    [Fact]
    public void A_southern_year_has_a_long_chain_over_new_year_and_a_break_in_July()
    {
        var phases = Of(A.SeasonE);

        Assert.Equal([Recovery, AerobicBuild, Mixed, PreSeason, InSeason, PhaseKind.Break, InSeason], phases.Select(p => p.Kind));
        Assert.All(phases.Take(4), p => Assert.Equal("long", p.Chain));
        Assert.Contains(phases.Take(4), p => p.First.Year == 2026 && p.Last.Year == 2027);
        Assert.Equal(7, phases[5].First.Month);
        Assert.Equal(7, phases[5].Last.Month);
    }

    [Fact]
    public void A_long_autumn_to_spring_season_has_its_winter_break()
    {
        var phases = Of(A.Season("2026-05-31", "2026-09-12/2026-12-13", "2027-02-06/2027-05-30"));

        Assert.Equal([Recovery, AerobicBuild, Mixed, PreSeason, InSeason, Recovery, AerobicBuild, Mixed, PreSeason, InSeason], phases.Select(p => p.Kind));
        Assert.Equal(7, phases.Skip(5).Take(4).Sum(p => p.Weeks));
    }

    /// <summary>One day of a stint makes its whole week an in-season week.</summary>
    [Fact]
    public void A_season_that_starts_on_a_Wednesday_takes_its_whole_week()
    {
        var phases = Of(A.Season("2025-12-10", "2026-09-02/2026-12-09"));

        Assert.Equal(A.Date("2026-08-31"), phases[^1].First);
        Assert.Equal(A.Date("2026-12-09"), phases[^1].Last);
    }

    [Fact]
    public void The_days_before_the_first_whole_week_belong_to_the_first_phase()
    {
        var (phases, weeks) = Split(A.SeasonA);

        Assert.Equal(A.Date("2026-03-01"), phases[0].First);
        Assert.Equal(A.Date("2026-03-02"), weeks[0].First);
        Assert.Equal(phases[0].Weeks, Period.DaysBetween(A.Date("2026-03-02"), phases[0].Last.PlusDays(1)) / 7);
    }

    [Fact]
    public void A_cycle_that_starts_with_the_season_has_no_gap_at_all()
    {
        var (phases, weeks) = Split(A.Season("2026-09-02", "2026-09-03/2026-11-29"));

        Assert.Equal([InSeason], phases.Select(p => p.Kind));
        Assert.Equal(A.Date("2026-08-31"), weeks[0].First);
        Assert.Equal(A.Date("2026-09-03"), phases[0].First);
    }

    [Fact]
    public void Stints_that_meet_in_one_week_are_one_in_season_phase() =>
        Assert.Single(Of(A.Season("2026-06-30", "2026-09-01/2026-11-25", "2026-11-27/2027-02-28")), p => p.Kind == InSeason);

    [Fact]
    public void A_single_match_day_is_a_season()
    {
        var phases = Of(A.Season("2026-08-30", "2027-06-12/2027-06-12"));

        Assert.Equal((1, A.Date("2027-06-07"), A.Date("2027-06-12")), (phases[^1].Weeks, phases[^1].First, phases[^1].Last));
    }

    [Theory]
    [InlineData(IsoDayOfWeek.Monday)]
    [InlineData(IsoDayOfWeek.Saturday)]
    [InlineData(IsoDayOfWeek.Sunday)]
    public void Weeks_start_on_the_first_weekday_of_the_club(IsoDayOfWeek first) =>
        Assert.All(Split(A.SeasonA, first).Weeks, w => Assert.Equal(first, w.First.DayOfWeek));

    [Fact]
    public void A_leap_day_may_be_the_first_match_day()
    {
        var phases = Of(A.Season("2027-05-30", "2028-02-29/2028-05-27"));

        Assert.Equal(A.Date("2028-02-28"), phases[^1].First);
        Assert.Equal(A.Date("2028-02-27"), phases[^2].Last);
    }

    [Fact]
    public void Without_an_earlier_season_a_leap_day_counts_from_the_28th_a_year_before()
    {
        var season = A.Season(null, "2027-10-01/2028-02-29");

        Assert.Equal(new DateInterval(A.Date("2027-03-01"), A.Date("2028-02-29")), season.Cycle);
        Assert.Equal(season.Cycle.Start, Of(season)[0].First);
    }

    [Fact]
    public void A_fixed_length_is_kept_and_the_others_make_room()
    {
        var senior = BuiltInTemplates.For(AgeGroup.Senior);
        var longChain = senior.Chains.Single(c => c.Name == "long");
        var mine = senior with
        {
            Chains = [longChain with { Phases = [longChain.Phases[0], longChain.Phases[1], longChain.Phases[2] with { FixedWeeks = 7 }, longChain.Phases[3]] }, senior.Chains[0]],
        };

        var phases = CyclePhases.Of(A.SeasonA, mine, IsoDayOfWeek.Monday).OrThrow().Phases;

        Assert.Equal(7, phases[2].Weeks);
        Assert.Equal(30, phases.Take(4).Sum(p => p.Weeks));
    }

    [Fact]
    public void A_gap_without_a_chain_is_named_with_the_nearest_chain()
    {
        var senior = BuiltInTemplates.For(AgeGroup.Senior);
        var problem = Problem(A.SeasonA, senior with { Chains = [.. senior.Chains.Where(c => c.Name != "long")] });

        Assert.Equal("template.no-chain", problem.Code);
        Assert.Contains("30 weeks from 2026-03-02 to 2026-09-27", problem.Message, StringComparison.Ordinal);
        Assert.Contains("'two-waves' for 41 to 52 weeks", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_chain_that_cannot_fill_its_gap_says_what_it_holds()
    {
        var senior = BuiltInTemplates.For(AgeGroup.Senior);
        var problem = Problem(A.SeasonA, senior with { Chains = [senior.Chains[0], new("long", 16, 40, [new(Recovery, 3, 0.5, 5), new(PreSeason, 5, 0.5, 10)])] });

        Assert.Equal("template.chain-infeasible", problem.Code);
        Assert.Contains("8 to 15 weeks", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_next_chain_is_tried_when_the_first_cannot_fill_the_gap()
    {
        var senior = BuiltInTemplates.For(AgeGroup.Senior);
        var phases = CyclePhases.Of(A.SeasonA, senior with { Chains = [new("narrow", 1, 52, [new(Recovery, 1, 1, 4)]), .. senior.Chains] }, IsoDayOfWeek.Monday).OrThrow().Phases;

        Assert.Equal("long", phases[0].Chain);
        Assert.Equal("narrow", phases[5].Chain);
    }

    [Fact]
    public void Every_built_in_template_fills_every_gap_from_1_to_52_weeks() =>
        Assert.All(BuiltInTemplates.All, template => Assert.All(Enumerable.Range(1, 52), weeks =>
            Assert.NotNull(template.Chains.Where(c => c.MinWeeks <= weeks && weeks <= c.MaxWeeks).Select(c => WeekAllocation.Split(c.Phases, weeks)).FirstOrDefault(s => s is not null))));

    private static (IReadOnlyList<Phase> Phases, IReadOnlyList<CycleWeek> Weeks) Split(Season season, IsoDayOfWeek first = IsoDayOfWeek.Monday)
    {
        var cycle = CyclePhases.Of(season, BuiltInTemplates.For(AgeGroup.Senior), first).OrThrow();
        return (cycle.Phases, cycle.Weeks);
    }

    private static IReadOnlyList<Phase> Of(Season season) => Split(season).Phases;

    [Fact]
    public void A_squad_that_joins_nine_weeks_before_its_matches_gets_the_chain_for_nine_weeks()
    {
        var phases = A.Plan(A.Request(A.SeasonB) with { PlanFrom = A.Date("2026-06-30") }).Phases;

        Assert.Equal([(Recovery, "before-joining"), (Recovery, "short"), (AerobicBuild, "short"), (Mixed, "short"), (PreSeason, "short"), (InSeason, "")], phases.Select(p => (p.Kind, p.Chain)));
        Assert.Equal(9, phases.Where(p => p.Chain == "short").Sum(p => p.Weeks));
        Assert.Equal(A.Date("2026-06-28"), phases[0].Last);
    }

    [Theory]
    [InlineData("2026-07-14", 7, "short")]
    [InlineData("2026-05-19", 15, "short")]
    [InlineData("2026-05-12", 16, "long")]
    public void A_squad_that_joins_gets_the_chain_whose_limits_hold_the_weeks_that_are_left(string joins, int left, string chain)
    {
        var phases = A.Plan(A.Request(A.SeasonB) with { PlanFrom = A.Date(joins) }).Phases;

        Assert.Equal("before-joining", phases[0].Chain);
        Assert.Equal(left, phases.Where(p => p.Chain == chain).Sum(p => p.Weeks));
    }

    [Fact]
    public void What_it_joined_with_stays_when_it_is_planned_again()
    {
        var request = A.Request(A.SeasonB) with { PlanFrom = A.Date("2026-06-30") };
        var joined = A.Plan(request);

        Assert.Equal(joined.Phases, A.Plan(request with { Published = joined, PlanFrom = A.Date("2026-07-21") }).Phases);
    }

    [Fact]
    public void A_squad_that_joins_in_the_first_week_has_the_whole_chain() =>
        Assert.DoesNotContain(A.Plan(A.Request(A.SeasonB) with { PlanFrom = A.SeasonB.Cycle.Start.PlusDays(3) }).Phases, p => p.Chain == "before-joining");

    private static Problem Problem(Season season, Template template) =>
        Assert.IsType<Result<CyclePhases>.Failed>(CyclePhases.Of(season, template, IsoDayOfWeek.Monday)).First;
}
