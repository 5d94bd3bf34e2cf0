using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Seasons;
using CsCheck;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Templates;
using NodaTime;

namespace ClubCycle.Planning.Tests.Replanning;

public class ReplanningTests
{
    private const int Plans = 60;

    private static readonly Gen<(PlanRequest Request, SquadPlan Plan, LocalDate Day)> PlannedOnADay =
        from planned in Any.Planned
        from day in Gen.Int[0, 419]
        select (planned.Request, planned.Plan, planned.Plan.Cycle.Start.PlusDays(day % planned.Plan.Cycle.Length));

    [Fact]
    public void Nothing_changes_when_nothing_changed_whatever_day_it_is() => PlannedOnADay.Sample((request, plan, day) =>
    {
        var again = A.Plan(request with { Published = plan, PlanFrom = day });

        Assert.Equal(Bytes(plan), Bytes(again));
        Assert.False(again.Changes.Any);
        Assert.Equal(plan.Sessions.Count(s => s.Kind != SessionKind.ActiveRecovery), again.Changes.Kept);
    }, iter: Plans, threads: 1);

    [Fact]
    public void The_past_stays_as_it_was_published_whatever_is_closed_later() => Gen.Select(PlannedOnADay, Gen.Int[0, 30]).Sample((planned, days) =>
    {
        var (request, plan, day) = planned;
        var again = A.Plan(request with { Published = plan, PlanFrom = day, Closed = [new ClosedDays(day, day.PlusDays(days), "closed")] });

        Assert.Equal(plan.Sessions.Where(s => s.Date < day), again.Sessions.Where(s => s.Date < day));
        Assert.Equal(again.Sessions.Count, again.Sessions.Select(s => s.Uid).Distinct().Count());
        Assert.DoesNotContain(again.Changes.Moved, m => m.From.Date < day || m.To.Date < day);
        Assert.DoesNotContain(again.Changes.Dropped, d => d.At.Date < day);
        Assert.All(again.Changes.Moved, m => Assert.NotEmpty(m.Why));
        Assert.All(again.Changes.Dropped, d => Assert.NotEmpty(d.Why));
    }, iter: Plans, threads: 1);

    [Fact]
    public void The_changes_lead_from_the_published_plan_to_the_new_one() => Gen.Select(PlannedOnADay, Gen.Int[0, 30]).Sample((planned, days) =>
    {
        var (request, plan, day) = planned;
        var again = A.Plan(request with { Published = plan, PlanFrom = day, Closed = [new ClosedDays(day, day.PlusDays(days), "closed")] });
        var was = plan.Sessions.Where(s => s.Kind != SessionKind.ActiveRecovery).ToDictionary(s => s.Uid, s => s.StartsAt);
        foreach (var moved in again.Changes.Moved)
        {
            Assert.Equal(moved.From, was[moved.Uid]);
            was[moved.Uid] = moved.To;
        }

        Assert.All(again.Changes.Dropped, d => Assert.True(was.Remove(d.Uid)));
        Assert.All(again.Changes.Added, a => was.Add(a.Uid, a.At));

        Assert.Equal(was.OrderBy(w => w.Key), again.Sessions.Where(s => s.Kind != SessionKind.ActiveRecovery).Select(s => KeyValuePair.Create(s.Uid, s.StartsAt)).OrderBy(s => s.Key));
    }, iter: Plans, threads: 1);

    /// <summary>
    /// Spacing looks three days around a match, so the weeks of the old and the new day and their neighbours may change, and no other. While a stint's
    /// load still climbs, in its first four weeks, a week may also change for the week before it.
    /// </summary>
    [Fact]
    public void Moving_one_match_leaves_the_sessions_of_other_weeks_alone() => Gen.Select(Any.Squad, Gen.Int[0, 16], Gen.Int[-3, 3]).Sample((squad, which, by) =>
    {
        var dates = MatchDays(A.SeasonA, squad.MatchDay);
        List<Fixture> fixtures = [.. dates.Select((d, i) => new Fixture(d, Key: NamedId.From("fixture", $"{i}")))];
        var request = A.Request(A.SeasonA, squad, fixtures: fixtures);
        var plan = A.Plan(request);
        var from = dates[which % dates.Count];
        var to = LocalDate.Min(LocalDate.Max(from.PlusDays(by), A.SeasonA.Stints[0].First), A.SeasonA.Cycle.End);
        fixtures[which % dates.Count] = fixtures[which % dates.Count] with { Date = to };

        var changes = A.Plan(request with { Fixtures = fixtures, Published = plan }).Changes;

        var days = changes.Moved.SelectMany(m => new[] { m.From.Date, m.To.Date }).Concat(changes.Added.Select(a => a.At.Date)).Concat(changes.Dropped.Select(d => d.At.Date));
        var first = LocalDate.Min(from, to).PlusDays(-13);
        var last = LocalDate.Max(from, to).PlusDays(13);
        var climbs = plan.Weeks.Where(w => w is { Phase: Planning.Phases.PhaseKind.InSeason, WeekInPhase: 4 } && w.First.PlusWeeks(-3) <= last && w.Last >= first).Select(w => w.Last);
        Assert.All(days, d => Assert.InRange(d, first, climbs.Append(last).Max()));
    }, iter: Plans, threads: 1);

    [Fact]
    public void A_moved_match_keeps_its_identity_and_is_shown_as_moved()
    {
        var (one, two) = (NamedId.From("fixture", "one"), NamedId.From("fixture", "two"));
        var request = A.Request(fixtures: [new(A.Date("2026-10-03"), Key: one), new(A.Date("2026-10-10"), Key: two)]);
        var plan = A.Plan(request);

        var changes = A.Plan(request with { Fixtures = [new(A.Date("2026-10-04"), Key: one), new(A.Date("2026-10-10"), Key: two)], Published = plan }).Changes;

        var moved = Assert.Single(changes.Moved, m => m.Title == "Match");
        Assert.Equal((A.Date("2026-10-03").At(A.Time("14:00")), A.Date("2026-10-04").At(A.Time("14:00"))), (moved.From, moved.To));
        Assert.Equal("The match moved.", moved.Why);
    }

    [Fact]
    public void A_match_put_off_after_its_day_is_planned_once_on_its_new_day()
    {
        var key = NamedId.From("fixture", "rain");
        var request = A.Request(fixtures: [new(A.Date("2026-10-03"), Key: key)]);
        var plan = A.Plan(request);

        var again = A.Plan(request with { Fixtures = [new(A.Date("2026-10-14"), Key: key)], Published = plan, PlanFrom = A.Date("2026-10-05") });

        Assert.Equal(A.Date("2026-10-14"), Assert.Single(again.Sessions, s => s.Kind == SessionKind.Match).Date);
        Assert.Single(again.Changes.Moved, m => m.To.Date == A.Date("2026-10-14"));
    }

    [Fact]
    public void A_session_that_a_new_match_pushes_off_its_day_moves_within_its_week_or_goes_with_a_reason()
    {
        var request = A.Request(fixtures: []);
        var plan = A.Plan(request);
        var pushed = plan.Sessions.First(s => s is { Kind: SessionKind.Session, InsidePractice: false } && s.Date >= A.Date("2026-09-01"));

        var changes = A.Plan(request with { Fixtures = [new(pushed.Date)], Published = plan }).Changes;

        Assert.True(
            changes.Moved.Any(m => m.Uid == pushed.Uid && m.Why.Length > 0 && m.To.Date != pushed.Date) || changes.Dropped.Any(d => d.Uid == pushed.Uid && d.Why.Length > 0));
    }

    /// <summary>A random coach fixes and leaves out random sessions, one after the other; every decision holds to the end.</summary>
    [Fact]
    public void Every_decision_of_a_coach_holds_after_all_later_ones() => Gen.Select(Any.Planned, Gen.Select(Gen.Int[0, 9_999], Gen.Int[0, 6], Gen.Int[14, 20], Gen.Bool).Array[1, 4]).Sample((planned, decisions) =>
    {
        var (request, plan) = planned;
        var pins = new Dictionary<(LocalDate, string), Pin>();
        foreach (var (which, day, hour, skip) in decisions)
        {
            var sessions = plan.Sessions.Where(s => s is { Kind: SessionKind.Session, InsidePractice: false }).ToList();
            if (sessions.Count == 0)
            {
                return;
            }

            var session = sessions[which % sessions.Count];
            var week = plan.Weeks.Single(w => w.First <= session.Date && session.Date <= w.Last).First;
            var date = week.PlusDays(day);
            pins[(week, session.Slot)] = skip || !plan.Cycle.Contains(date) ? new Pin(week, session.Slot, null, null, true) : new Pin(week, session.Slot, date, new LocalTime(hour, 0));
            plan = A.Plan(request with { Published = plan, Pins = [.. pins.Values] });
        }

        Assert.All(pins.Values, pin =>
        {
            var found = plan.Sessions.SingleOrDefault(s => s.Slot == pin.Slot && pin.WeekFirst <= s.Date && s.Date <= pin.WeekFirst.PlusDays(6));
            Assert.Equal(pin.Skipped, found is null);
            if (found is not null)
            {
                Assert.Equal((pin.Date, pin.Start, true), (found.Date, found.Start, found.Pinned));
            }
        });
        Assert.Equal(plan.Sessions.Count, plan.Sessions.Select(s => s.Uid).Distinct().Count());
    }, iter: Plans, threads: 1);

    [Fact]
    public void A_fixed_day_holds_in_an_easier_week_too()
    {
        var request = A.Request();
        var plan = A.Plan(request);
        var easier = plan.Weeks.First(w => w is { Phase: Planning.Phases.PhaseKind.PreSeason, Loading: Planning.Weeks.WeekLoading.Unloading or Planning.Weeks.WeekLoading.Taper });
        var slots = request.Template.Mixes.Single(m => m.Phase == easier.Phase).Slots.Select(s => "pre-season." + s.Name);

        Assert.All(slots, slot =>
        {
            var pinned = A.Plan(request with { Pins = [new Pin(easier.First, slot, easier.First.PlusDays(2), A.Time("18:00"))] });
            Assert.Contains(pinned.Sessions, s => s.Slot == slot && s.Date == easier.First.PlusDays(2) && s.Pinned && s.Minutes >= 15);
        });
    }

    [Fact]
    public void A_session_left_out_by_a_coach_is_shown_as_dropped_with_that_reason()
    {
        var request = A.Request();
        var plan = A.Plan(request);
        var run = plan.Sessions.First(s => s.Kind == SessionKind.Session);

        var changes = A.Plan(request with { Published = plan, Pins = [new Pin(A.Date("2026-03-02"), run.Slot, null, null, true)] }).Changes;

        Assert.Equal(("A coach left it out.", run.Uid), (changes.Dropped[0].Why, changes.Dropped[0].Uid));
    }

    [Fact]
    public void A_squad_that_joins_in_mid_year_has_no_past_and_starts_gently()
    {
        var joined = A.Plan(A.Request(planFrom: A.Date("2026-05-11")));
        var usual = BuiltInTemplates.For(AgeGroup.Senior).Mixes.Single(m => m.Phase == Planning.Phases.PhaseKind.Recovery).Slots.Sum(s => s.Minutes);

        Assert.All(joined.Sessions, s => Assert.True(s.Date >= A.Date("2026-05-11")));
        Assert.InRange(MinutesOf(joined, A.Date("2026-05-11")), 1, 0.5 * usual);
        Assert.InRange(MinutesOf(joined, A.Date("2026-05-18")), 0.5 * usual, 0.7 * usual);
    }

    private static int MinutesOf(SquadPlan plan, LocalDate week) =>
        plan.Sessions.Where(s => s.Kind == SessionKind.Session && week <= s.Date && s.Date <= week.PlusDays(6)).Sum(s => s.Minutes);

    private static List<LocalDate> MatchDays(Season season, IsoDayOfWeek day) =>
        [.. season.Stints.SelectMany(s => new DateInterval(s.First, s.Last)).Where(d => d.DayOfWeek == day)];

    /// <summary>Findings left out: those of past weeks are no longer anyone's business.</summary>
    private static string Bytes(SquadPlan plan) => PlanFile.WritePlan(plan with { Findings = [], Changes = PlanChanges.None });
}
