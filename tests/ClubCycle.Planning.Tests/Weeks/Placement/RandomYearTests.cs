using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Workouts;
using CsCheck;
using NodaTime;

namespace ClubCycle.Planning.Tests.Weeks.Placement;

/// <summary>Whole years with odd fixtures, closed days, windows and pins: every week against the rules' words, week ends included.</summary>
public class RandomYearTests
{
    private static readonly Season[] Seasons = [A.SeasonA, A.SeasonB, A.SeasonC, A.SeasonD, A.SeasonE];

    private static readonly IReadOnlyList<TimeWindow>[] Windows =
    [
        [],
        [],
        [new([IsoDayOfWeek.Monday, IsoDayOfWeek.Wednesday, IsoDayOfWeek.Thursday], A.Time("06:30"), A.Time("08:00")), new([IsoDayOfWeek.Saturday, IsoDayOfWeek.Sunday], A.Time("09:00"), A.Time("12:00"))],
        [new([IsoDayOfWeek.Monday, IsoDayOfWeek.Tuesday, IsoDayOfWeek.Wednesday, IsoDayOfWeek.Thursday, IsoDayOfWeek.Friday, IsoDayOfWeek.Saturday, IsoDayOfWeek.Sunday], A.Time("17:00"), A.Time("22:00"))],
    ];

    private static readonly Gen<Practice> Practices = Gen.Select(Gen.Int[1, 7], Gen.Int[0, 8], Gen.Int[4, 7]).Select(
        (day, quarter, length) => new Practice((IsoDayOfWeek)day, new LocalTime(17, 30).PlusMinutes(15 * quarter), 15 * length, Practice.UsualPhases));

    private static Gen<PlanRequest> Requests =>
        from season in Gen.OneOf(Seasons)
        from ages in Gen.OneOf(Gen.Const(AgeGroup.Senior), Gen.Const(AgeGroup.Masters), Gen.Int[8, 18].Select(AgeGroup.Youth))
        from practices in Practices.List[0, 4]
        from matchDay in Gen.Int[1, 7]
        from windows in Gen.OneOf(Windows)
        from closed in Gen.Select(Gen.Int[0, 330], Gen.Int[0, 9]).List[0, 3]
        from gaps in Gen.Int[1, 12].Array[40]
        from kickOffs in Gen.Int[10, 20].Array[40]
        from usual in Gen.Bool
        from first in Gen.OneOf(IsoDayOfWeek.Monday, IsoDayOfWeek.Monday, IsoDayOfWeek.Sunday, IsoDayOfWeek.Thursday)
        select A.Request(
            season,
            A.Squad(ages, practices: [.. practices.DistinctBy(p => p.Day)], matchDay: (IsoDayOfWeek)matchDay, windows: windows),
            fixtures: usual ? null : Fixtures(season, gaps, kickOffs),
            closed: [.. closed.Select(c => new ClosedDays(season.Cycle.Start.PlusDays(c.Item1), season.Cycle.Start.PlusDays(c.Item1 + c.Item2), "holiday"))],
            firstWeekday: first);

    [Fact]
    public void No_week_of_any_year_breaks_a_hard_rule() =>
        Requests.Sample(request => Assert.Empty(Broken(request, A.Plan(request))), iter: 150, print: Print);

    [Fact]
    public void Pins_hold_and_everything_else_keeps_the_rules_around_them()
    {
        var pinned =
            from request in Requests
            from picks in Gen.Select(Gen.Int[0, 10_000], Gen.Int[0, 6], Gen.Int[-1, 3]).List[1, 8]
            select request with { Pins = [.. Pins(request, picks)] };
        pinned.Sample(
            request =>
            {
                var plan = A.Plan(request);

                Assert.Empty(Broken(request, plan));
                Assert.All(plan.Sessions.Where(s => s.Pinned), s => Assert.Contains(request.Pins!, p => p.Slot == s.Slot && p.Date == s.Date && (p.Start is null || p.Start == s.Start)));
            },
            iter: 100, print: Print);
    }

    [Fact]
    public void A_published_plan_stays_where_it_is_when_nothing_changed()
    {
        var later =
            from request in Requests
            from day in Gen.Int[0, 300]
            select (request, request.Season.Cycle.Start.PlusDays(day));
        later.Sample(
            (request, from) =>
            {
                var published = A.Plan(request);
                var again = A.Plan(request with { Published = published, PlanFrom = from });

                Assert.Equal(Places(published), Places(again));
            },
            iter: 60, print: r => $"{Print(r.Item1)} from {r.Item2}");
    }

    [Fact]
    public void A_moved_match_moves_only_sessions_that_a_rule_touches()
    {
        var moved =
            from request in Requests
            from which in Gen.Int[0, 100]
            from days in Gen.OneOf(-3, -2, -1, 1, 2, 3)
            select (request, which, days);
        moved.Sample(
            (request, which, days) => OnlyTouchedSessionsMove(request, which, days),
            iter: 100, print: r => $"{Print(r.Item1)} match {r.Item2} by {r.Item3}");
    }

    private static void OnlyTouchedSessionsMove(PlanRequest request, int which, int days)
    {
        Fixture[] fixtures = [.. A.Plan(request).Sessions.Where(s => s.Kind == SessionKind.Match).Select(s => new Fixture(s.Date, s.Start))];
        if (fixtures.Length == 0)
        {
            return;
        }

        var old = fixtures[which % fixtures.Length];
        var day = old.Date.PlusDays(days);
        if (!request.Season.Cycle.Contains(day) || fixtures.Any(f => f.Date == day))
        {
            return;
        }

        var published = A.Plan(request with { Fixtures = fixtures });
        var changed = request with { Fixtures = [.. fixtures.Select(f => f == old ? f with { Date = day } : f)], Published = published };
        var plan = A.Plan(changed);

        Assert.Empty(Broken(changed, plan));
        foreach (var was in published.Sessions.Where(s => s.Kind == SessionKind.Session))
        {
            if (plan.Sessions.FirstOrDefault(s => s.Uid == was.Uid) is { } now && now.StartsAt != was.StartsAt)
            {
                var back = plan with { Sessions = [.. plan.Sessions.Select(s => s.Uid == was.Uid ? now with { Date = was.Date, Start = was.Start, InsidePractice = was.InsidePractice } : s)] };
                Assert.True(Broken(changed, back).Any(), $"{was.Slot} left {was.StartsAt} for {now.StartsAt} and no rule asked for it");
            }
        }
    }

    private static IEnumerable<string> Places(SquadPlan plan) =>
        plan.Sessions.Where(s => s.Kind == SessionKind.Session).Select(s => $"{s.StartsAt} {s.Slot} {s.InsidePractice}");

    private static List<Fixture> Fixtures(Season season, int[] gaps, int[] kickOffs)
    {
        List<Fixture> fixtures = [];
        foreach (var stint in season.Stints)
        {
            for (var day = stint.First; day <= stint.Last; day = day.PlusDays(gaps[fixtures.Count % gaps.Length]))
            {
                fixtures.Add(new Fixture(day, new LocalTime(kickOffs[fixtures.Count % kickOffs.Length], 0)));
            }
        }

        return fixtures;
    }

    private static IEnumerable<Pin> Pins(PlanRequest request, List<(int Session, int Day, int Time)> picks)
    {
        var plan = A.Plan(request);
        PlannedSession[] sessions = [.. plan.Sessions.Where(s => s.Kind == SessionKind.Session)];
        return sessions.Length == 0 ? [] : picks.Select(p =>
        {
            var session = sessions[p.Session % sessions.Length];
            var week = plan.Weeks.First(w => w.First <= session.Date && session.Date <= w.First.PlusDays(6));
            return new Pin(week.First, session.Slot, week.First.PlusDays(p.Day), p.Time < 0 ? null : new LocalTime(7 + (4 * p.Time), 0));
        }).DistinctBy(p => (p.WeekFirst, p.Slot));
    }

    private static IEnumerable<string> Broken(PlanRequest request, SquadPlan plan)
    {
        var zero = plan.Weeks[0].First;
        int Day(LocalDate date) => Period.DaysBetween(zero, date);
        (Happening Happening, PlannedSession Session)[] all =
        [
            .. plan.Sessions.Where(s => s.Kind != SessionKind.ActiveRecovery).Select(s => (
                new Happening(
                    (Day(s.Date) * 1440) + RandomWeek.Minutes(s.Start), s.Minutes, s.Kind == SessionKind.Match,
                    s.Workout is { } name ? WorkoutCatalogue.Find(name) : null, s.InsidePractice, s.Pinned || s.Date < request.PlanFrom), s)),
        ];
        var restDays = request.Squad.AgeGroup.Under <= 14 ? 2 : 1;
        var youngest = request.Squad.AgeGroup.Under - 2 ?? 18;
        foreach (var week in plan.Weeks)
        {
            var first = Day(week.First);
            var mix = request.Template.Mixes.First(m => m.Phase == week.Phase);
            var check = new PlacedWeekCheck(
                first,
                day => request.Season.Cycle.Contains(zero.PlusDays(day)) && !request.Closed.Any(c => c.First <= zero.PlusDays(day) && zero.PlusDays(day) <= c.Last),
                day => RandomWeek.WindowsOf(request.Squad, zero.PlusDays(day).DayOfWeek),
                Math.Min(mix.ActiveDaysAtMost, 7 - restDays), mix.HoursBetweenHard, youngest < 14 ? 2 : youngest < 18 ? 3 : 4, mix.SessionsPerContactDay);
            Happening[] inWeek = [.. all.Where(h => h.Happening.Day >= first && h.Happening.Day < first + 7).Select(h => h.Happening)];
            Happening[] near = [.. all.Where(h => h.Happening.Day >= first - 5 && h.Happening.Day < first + 10).Select(h => h.Happening)];
            if (check.Broken(inWeek, near) is { } broken)
            {
                yield return $"{week.Name} {week.Phase}: {broken}";
            }
        }
    }

    private static string Print(PlanRequest request) => string.Join("\n",
    [
        $"{request.Squad.AgeGroup}, weeks from {request.FirstWeekday}, match day {request.Squad.MatchDay}, season {string.Join(" ", request.Season.Stints.Select(s => $"{s.First}/{s.Last}"))}",
        .. request.Squad.Practices.Select(p => $"practice {p.Day} {p.Start} {p.Minutes}"),
        .. request.Squad.Windows.Select(w => $"window {string.Join(",", w.Days)} {w.From}-{w.To}"),
        .. request.Closed.Select(c => $"closed {c.First} {c.Last}"),
        .. (request.Fixtures ?? []).Select(f => $"match {f.Date} {f.Start}"),
        .. (request.Pins ?? []).Select(p => $"pin {p.Slot} {p.Date} {p.Start}"),
    ]);
}
