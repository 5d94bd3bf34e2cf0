using System.Globalization;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Workouts;
using CsCheck;
using NodaTime;

namespace ClubCycle.Planning.Tests;

/// <summary>What holds for every plan of every request.</summary>
[Trait(Cases.Trait, Cases.Random)]
public class AnyPlanTests(AnyPlanTests.Pass pass) : IClassFixture<AnyPlanTests.Pass>
{
    public static TheoryData<string> Invariants => [.. Cases.Of(typeof(AnyPlanTests))];

    [Theory]
    [MemberData(nameof(Invariants))]
    public void Holds_for_every_plan(string invariant) => Assert.True(!pass.Failures.TryGetValue(invariant, out var failure), failure);

    [Fact]
    public void A_valid_request_fails_only_for_a_gap_of_more_than_a_year() => Any.Request.Sample(
        request => AnnualPlanner.Plan(request) is Result<SquadPlan>.Ok or Result<SquadPlan>.Failed { First.Code: "template.no-chain" } && true,
        iter: 200, threads: 1);

    private static void Phases_tile_the_cycle(PlanRequest request, SquadPlan plan, string __)
    {
        var next = request.Season.Cycle.Start;
        foreach (var phase in plan.Phases)
        {
            Assert.Equal(next, phase.First);
            Assert.True(phase.Last >= phase.First);
            next = phase.Last.PlusDays(1);
        }

        Assert.Equal(request.Season.Cycle.End.PlusDays(1), next);
        Assert.Equal(plan.Weeks.Count, plan.Phases.Sum(p => p.Weeks));
    }

    private static void Weeks_follow_each_other_and_lie_in_the_phase_they_name(PlanRequest request, SquadPlan plan, string __)
    {
        for (var i = 1; i < plan.Weeks.Count; i++)
        {
            Assert.Equal(plan.Weeks[i - 1].First.PlusDays(7), plan.Weeks[i].First);
        }

        Assert.All(plan.Weeks, week =>
        {
            Assert.Equal(request.FirstWeekday, week.First.DayOfWeek);
            var day = LocalDate.Max(week.First, request.Season.Cycle.Start);
            Assert.Equal(week.Phase, plan.Phases.Single(p => p.First <= day && day <= p.Last).Kind);
            Assert.Equal(week.Phase == Planning.Phases.PhaseKind.InSeason, request.Season.Stints.Any(s => s.First <= week.Last && s.Last >= week.First));
        });
    }

    private static void Every_session_has_its_own_id_and_lies_in_one_week_of_the_cycle(PlanRequest request, SquadPlan plan, string __)
    {
        Assert.Equal(plan.Sessions.Count, plan.Sessions.Select(s => s.Uid).Distinct().Count());
        Assert.All(plan.Sessions, s =>
        {
            Assert.True(request.Season.Cycle.Contains(s.Date));
            Assert.Single(plan.Weeks, w => w.First <= s.Date && s.Date <= w.Last);
        });
    }

    private static void Sessions_are_sorted_by_date_start_and_slot(PlanRequest _, SquadPlan plan, string __) =>
        Assert.Equal(plan.Sessions.OrderBy(s => s.Date).ThenBy(s => s.Start).ThenBy(s => s.Slot, StringComparer.Ordinal).Select(s => s.Uid), plan.Sessions.Select(s => s.Uid));

    private static void A_week_s_load_is_the_sum_of_its_sessions(PlanRequest _, SquadPlan plan, string __) =>
Assert.All(plan.Weeks, week =>
        Assert.Equal(
            plan.Sessions.Where(s => week.First <= s.Date && s.Date <= week.Last && s.Kind != SessionKind.ActiveRecovery && !s.InsidePractice).Sum(s => s.PlannedEffort * s.Minutes),
            week.PlannedLoadAu));

    private static void Every_match_is_in_the_plan_at_its_time(PlanRequest request, SquadPlan plan, string __)
    {
        var expected = request.Fixtures is { } fixtures
            ? fixtures.Select(f => f.Date.At(f.Start!.Value))
            : from stint in request.Season.Stints
              from day in new DateInterval(stint.First, stint.Last)
              where day.DayOfWeek == request.Squad.MatchDay && !request.Closed.Any(c => c.Contains(day))
              select day.At(request.Squad.MatchStart!.Value);

        Assert.Equal(expected.Order(), plan.Sessions.Where(s => s.Kind == SessionKind.Match).Select(s => s.StartsAt).Order());
    }

    private static void Nothing_is_added_on_closed_days_or_match_days_or_outside_the_squad_s_times(PlanRequest request, SquadPlan plan, string __)
    {
        var matchDays = plan.Sessions.Where(s => s.Kind == SessionKind.Match).Select(s => s.Date).ToHashSet();
        Assert.All(plan.Sessions.Where(s => s.Kind == SessionKind.Session), s =>
        {
            Assert.DoesNotContain(s.Date, matchDays);
            Assert.DoesNotContain(request.Closed, c => c.Contains(s.Date));
            var start = (s.Start.Hour * 60) + s.Start.Minute;
            if (s.InsidePractice)
            {
                var practice = plan.Sessions.Single(p => p.Kind == SessionKind.Practice && p.Date == s.Date);
                Assert.True(s.Start >= practice.Start && s.Start.PlusMinutes(s.Minutes) <= practice.Start.PlusMinutes(practice.Minutes));
                Assert.True(WorkoutCatalogue.Find(s.Workout!)!.InsidePractice);
            }
            else if (request.Squad.Windows.Count > 0)
            {
                Assert.Contains(request.Squad.Windows, w => w.Days.Contains(s.Date.DayOfWeek) && s.Start >= w.From && start + s.Minutes <= (w.To.Hour * 60) + w.To.Minute);
            }
        });
        Assert.All(plan.Sessions.Where(s => s.Kind == SessionKind.Practice), s => Assert.DoesNotContain(request.Closed, c => c.Contains(s.Date)));
    }

    private static void A_session_inside_practice_is_where_the_practice_is_and_no_other_has_a_place(PlanRequest request, SquadPlan plan, string __)
    {
        var practices = plan.Sessions.Where(s => s.Kind == SessionKind.Practice).ToDictionary(s => s.Date);
        Assert.All(practices.Values, p => Assert.Equal(request.Squad.Practices.Single(usual => usual.Day == p.Date.DayOfWeek).Place, p.Place));
        Assert.All(plan.Sessions.Where(s => s.Kind == SessionKind.Session), s => Assert.Equal(s.InsidePractice ? practices[s.Date].Place : null, s.Place));
    }

    private static void A_day_has_one_session_of_its_own_at_most_and_none_beside_a_contact(PlanRequest _, SquadPlan plan, string __) =>
        Assert.All(plan.Sessions.Where(s => s is { InsidePractice: false, Kind: not SessionKind.ActiveRecovery }).GroupBy(s => s.Date), day =>
            Assert.True(day.Count() == 1 || day.All(s => s.Kind == SessionKind.Match)));

    /// <summary>R36, R37, R38 (a) and R33 counted by hand, without the rule book.</summary>
    private static void Hard_sessions_keep_their_hours_apart_and_away_from_matches(PlanRequest request, SquadPlan plan, string __)
    {
        var hours = request.Template.Mixes.Max(m => m.HoursBetweenHard);
        var hard = plan.Sessions.Where(s => s.Hardness == Hardness.Hard).ToList();
        for (var i = 1; i < hard.Count; i++)
        {
            var (one, two) = (hard[i - 1], hard[i]);
            if (one.Kind == SessionKind.Session || two.Kind == SessionKind.Session)
            {
                var both = one.Kind == two.Kind;
                Assert.True(Hours(one, two) >= (both ? hours : 48), $"{one.Title} {one.StartsAt} and {two.Title} {two.StartsAt}");
                Assert.True(Period.DaysBetween(one.Date, two.Date) > 1);
            }
        }

        var jumps = plan.Sessions.Where(s => s.Workout is { } name && WorkoutCatalogue.Find(name)!.Jumps != JumpClass.None).ToList();
        Assert.All(jumps.Zip(jumps.Skip(1)), pair => Assert.True(Hours(pair.First, pair.Second) >= 48));
    }

    private static void No_week_has_more_active_days_than_its_phase_allows_unless_contacts_take_them(PlanRequest request, SquadPlan plan, string __) => Assert.All(plan.Weeks, week =>
    {
        var days = plan.Sessions.Where(s => week.First <= s.Date && s.Date <= week.Last && s.Kind != SessionKind.ActiveRecovery).ToLookup(s => s.Date);
        var most = Math.Min(request.Template.Mixes.Single(m => m.Phase == week.Phase).ActiveDaysAtMost, request.Squad.AgeGroup is { IsYouth: true, YoungestAge: <= 12 } ? 5 : 6);
        Assert.True(days.Count <= most || days.All(d => d.Any(s => s.Kind is SessionKind.Match or SessionKind.Practice)), $"{week.Name}: {days.Count} of {most}");
    });

    private static void A_plan_breaks_a_must_rule_only_where_the_calendar_does(PlanRequest request, SquadPlan plan, string __) =>
        Assert.All(plan.Findings.Where(f => f.Strength == Strength.Must), finding =>
        {
            var contacts = plan.Sessions.Where(s => s.Kind is SessionKind.Practice or SessionKind.Match && (finding.Week is not { } week || (week <= s.Date && s.Date <= week.PlusDays(6)))).ToList();
            var forced = finding.Rule switch
            {
                "R01" => contacts.Select(c => c.Date).Distinct().Count() == 7,
                "R05" => contacts.Sum(c => c.Minutes) > request.Squad.AgeGroup.YoungestAge * 60,
                "R06" => contacts.Sum(c => c.Minutes) > 16 * 60,
                "R07" => FreeDays(request) < 56 || request.Fixtures is not null,
                "R18" => request.Fixtures is not null,
                _ => false,
            };
            Assert.True(forced, finding.Message);
        });

    private static void Every_finding_says_what_to_do_and_where_it_comes_from(PlanRequest _, SquadPlan plan, string __) =>
        Assert.All(plan.Findings, f => Assert.DoesNotContain("", new[] { f.Message.Trim(), f.Mend.Trim(), f.Source.Trim() }));

    private static void Every_finding_has_its_figures(PlanRequest _, SquadPlan plan, string __) =>
        Assert.All(plan.Findings, f => Assert.True(f.Facts is { Unit.Length: > 0 } facts && double.IsFinite(facts.Measured) && double.IsFinite(facts.Limit), $"{f.Rule} {f.Week}"));

    /// <summary>Planned and written on a machine of another culture.</summary>
    private static void The_same_request_gives_the_same_bytes_in_whatever_order_its_lists_come_and_whatever_culture_the_machine_has(PlanRequest request, SquadPlan _, string bytes)
    {
        var shuffled = request with
        {
            Fixtures = request.Fixtures is { } fixtures ? [.. fixtures.Reverse()] : null,
            Closed = [.. request.Closed.Reverse()],
            Squad = request.Squad with { Practices = [.. request.Squad.Practices.Reverse()] },
        };
        var here = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(((string[])["tr-TR", "ar-SA", "fa-IR", "de-DE"])[request.Season.Cycle.Length % 4]);
            Assert.Equal(bytes, PlanFile.WritePlan(A.Plan(shuffled)));
        }
        finally
        {
            CultureInfo.CurrentCulture = here;
        }
    }

    /// <summary>Weeks, not dates, decide: the same year some weeks later is the same plan some weeks later, over clock changes, leap days and long years too.</summary>
    private static void A_year_moved_by_whole_weeks_has_its_sessions_moved_by_whole_weeks(PlanRequest request, SquadPlan plan, string __)
    {
        var days = 7 * (1 + (request.Season.Cycle.Start.DayOfYear % 300));
        var moved = Moved(request, days);

        Assert.Equal(Places(plan, days), Places(A.Plan(moved), 0));
        Assert.Equal(PlanFile.WriteRequest(request), PlanFile.WriteRequest(Moved(moved, -days)));
    }

    private static void A_plan_file_read_back_is_the_same_plan(PlanRequest request, SquadPlan _, string bytes)
    {
        Assert.Equal(bytes, PlanFile.WritePlan(PlanFile.ReadPlan(bytes).OrThrow()));

        var text = PlanFile.WriteRequest(request);
        Assert.Equal(text, PlanFile.WriteRequest(PlanFile.ReadRequest(text).OrThrow()));
    }

    /// <summary>Whatever is done to a clone, the template it came from stays as it was.</summary>
    private static void Changing_a_clone_leaves_its_template_alone(PlanRequest request, SquadPlan _, string __)
    {
        var clone = TemplateFile.Read(TemplateFile.Write(request.Template)).OrThrow();
        Assert.Equal(TemplateFile.Write(request.Template), TemplateFile.Write(clone));

        var changed = clone with { Mixes = [.. clone.Mixes.Select(m => m with { Slots = [.. m.Slots.Take(1)] })], Loading = clone.Loading with { UnloadEvery = 2 } };
        AnnualPlanner.Plan(request with { Template = changed });

        Assert.Equal(TemplateFile.Write(request.Template), TemplateFile.Write(clone));
        Assert.NotSame(request.Template.Mixes, clone.Mixes);
    }

    private static PlanRequest Moved(PlanRequest request, int days) => request with
    {
        Season = Season.Create(request.Season.PreviousLastDay.PlusDays(days), [.. request.Season.Stints.Select(s => new Stint(s.First.PlusDays(days), s.Last.PlusDays(days)))]).OrThrow(),
        Fixtures = request.Fixtures is { } fixtures ? [.. fixtures.Select(f => f with { Date = f.Date.PlusDays(days) })] : null,
        Closed = [.. request.Closed.Select(c => c with { First = c.First.PlusDays(days), Last = c.Last.PlusDays(days) })],
    };

    private static List<(LocalDate, LocalTime, int, string)> Places(SquadPlan plan, int days) =>
        [.. plan.Sessions.Where(s => s.Kind != SessionKind.Match).Select(s => (s.Date.PlusDays(days), s.Start, s.Minutes, s.Slot))];

    private static double Hours(PlannedSession earlier, PlannedSession later) => Period.Between(earlier.StartsAt, later.StartsAt, PeriodUnits.Minutes).Minutes / 60.0;

    /// <summary>Days in gaps of four weeks or more that remain when each gap that allows it keeps one week of practice before its matches.</summary>
    private static int FreeDays(PlanRequest request)
    {
        var free = 0;
        var since = request.Season.PreviousLastDay;
        foreach (var stint in request.Season.Stints)
        {
            var gap = (Period.DaysBetween(since, stint.First) - 1) / 7;
            free += gap >= 6 ? 7 * (gap - 2) : gap >= 5 ? 28 : 0;
            since = stint.Last;
        }

        return free;
    }

    public sealed class Pass
    {
        public IReadOnlyDictionary<string, string> Failures { get; } =
            Cases.Failures(typeof(AnyPlanTests), Any.Request.Select(object[]? (request) => AnnualPlanner.Plan(request) is Result<SquadPlan>.Ok(var plan) ? [request, plan, PlanFile.WritePlan(plan)] : null));
    }
}
