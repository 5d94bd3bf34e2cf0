using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Weeks;
using ClubCycle.Planning.Weeks.Placement;
using ClubCycle.Planning.Workouts;
using CsCheck;
using NodaTime;

namespace ClubCycle.Planning.Tests.Weeks.Placement;

/// <summary>Weeks a club may meet, and some it hopefully never will.</summary>
internal static class RandomWeek
{
    private static readonly Gen<string> Workouts = Gen.OneOf(
        "easy-run", "core-and-easy-run", "strength-circuit", "technique-lifting", "heavy-lift", "jumps", "lift-and-jump", "low-jumps", "high-jumps",
        "sprint-intervals", "hill-sprints", "reactive-agility", "movement-games");

    private static readonly Gen<LocalTime> Evenings = Gen.Int[0, 12].Select(q => new LocalTime(17, 0).PlusMinutes(15 * q));

    private static readonly Gen<IReadOnlyList<TimeWindow>> Windows = Gen.OneOf(
        Gen.Const<IReadOnlyList<TimeWindow>>([]),
        Gen.Select(Gen.Int[0, 6].Array[1, 4], Evenings, Gen.Int[30, 150]).List[1, 3].Select(IReadOnlyList<TimeWindow> (list) =>
        [
            .. list.Select(w => new TimeWindow([.. w.Item1.Distinct().Select(d => (IsoDayOfWeek)(d + 1))], w.Item2, w.Item2.PlusMinutes(w.Item3))),
        ]));

    private static readonly Gen<Contact?> Contacts = Gen.Select(Gen.Int[0, 9], Evenings, Gen.Int[4, 7]).Select(c => c.Item1 switch
    {
        <= 5 => null,
        <= 7 => new Contact(Guid.Empty, "practice", AWeek.Monday, c.Item2, c.Item3 * 15, false, ""),
        _ => new Contact(Guid.Empty, "match", AWeek.Monday, c.Item2.PlusHours(-4), 60, true, ""),
    });

    private static readonly Gen<AgeGroup> Ages = Gen.OneOf(AgeGroup.Senior, AgeGroup.Masters, AgeGroup.Youth(12), AgeGroup.Youth(16));

    /// <summary>Sessions and matches of the five days before and, rarer, of the three days after.</summary>
    private static readonly Gen<Anchor> Anchors = Gen.Select(Gen.Int[-5, 2], Evenings, Gen.OneOf(Gen.Const("match"), Workouts)).Select((day, time, what) =>
    {
        var minute = ((day < 0 ? day : day + 7) * 1440) + (time.Hour * 60) + time.Minute;
        return what == "match"
            ? new Anchor(minute - 240, true, true, false, JumpClass.None)
            : new Anchor(minute, AWeek.Workout(what).Hardness == Hardness.Hard, false, AWeek.Workout(what).HeavyLift, AWeek.Workout(what).Jumps);
    });

    private static Gen<WantedSession> Wanted =>
        from workout in Workouts
        from minutes in Gen.Int[3, 12]
        from kept in Gen.Int[0, 20]
        from time in Evenings
        select new WantedSession("", AWeek.Workout(workout), minutes * 5, kept == 20, kept is < 7 or 20 ? AWeek.Monday.PlusDays(kept % 7) : null, kept is < 7 or 20 ? time : null);

    /// <param name="mostWanted">How many sessions at most.</param>
    /// <param name="open">How many of ten days are open.</param>
    public static Gen<WeekToPlace> Of(int mostWanted, int open) =>
        from wanted in Wanted.List[1, mostWanted]
        from contacts in Contacts.Array[7]
        from around in Anchors.List[0, 3]
        from free in Gen.Int[0, 9].Array[7]
        from limits in Gen.Select(Gen.Int[2, 6], Gen.OneOf(48, 48, 72), Gen.Int[1, 4], Gen.Int[0, 1])
        from squad in Gen.Select(Ages, Windows)
        from baseDays in Gen.Int[0, 13].Array[mostWanted]
        select new WeekToPlace(
            A.Squad(squad.Item1, practices: [], windows: squad.Item2), AWeek.Monday,
            [.. wanted.Select((w, i) => w with { Slot = $"slot.{i}" })],
            [.. contacts.Index().Where(c => c.Item is not null).Select(c => c.Item! with { Date = AWeek.Monday.PlusDays(c.Index) })],
            around, [.. free.Select(f => f < open)],
            limits.Item1, limits.Item2, limits.Item3, limits.Item4,
            baseDays.Index().Where(b => b.Item < 7).ToDictionary(b => $"slot.{b.Index}", b => b.Item));

    /// <summary>The rules' view of a week.</summary>
    public static PlacedWeekCheck CheckOf(WeekToPlace week) => new(
        0, day => day is >= 0 and < 7 && week.Free[day], day => WindowsOf(week.Squad, week.First.PlusDays(day).DayOfWeek),
        week.ActiveDaysAtMost, week.HoursBetweenHard, week.HardAtMost, week.SessionsPerContactDay);

    /// <summary>As the squad says; otherwise evenings from 18 to 21 on weekdays and 10 to 18 at weekends.</summary>
    public static (int From, int To)[] WindowsOf(Squad squad, IsoDayOfWeek day) =>
        squad.Windows.Count > 0 ? [.. squad.Windows.Where(w => w.Days.Contains(day)).Select(w => (Minutes(w.From), Minutes(w.To))).OrderBy(w => w.Item1)]
        : day is IsoDayOfWeek.Saturday or IsoDayOfWeek.Sunday ? [(600, 1080)]
        : [(1080, 1260)];

    public static IEnumerable<Happening> ContactsOf(WeekToPlace week) =>
        week.Contacts.Select(c => new Happening((Period.DaysBetween(week.First, c.Date) * 1440) + Minutes(c.Start), c.Minutes, c.IsMatch, null));

    /// <summary>What lies around a week; what an anchor was is told by what it is.</summary>
    public static IEnumerable<Happening> AroundOf(WeekToPlace week) => week.Around.Select(Around);

    public static Happening Around(Anchor anchor) => new(
        anchor.Minute, 60, anchor.Match,
        anchor.Match ? null : new Workout("around", "", [], anchor.Hard ? Hardness.Hard : Hardness.Easy, 5, anchor.HeavyLift, anchor.Jumps), Fixed: true);

    public static Happening Of(WeekToPlace week, Placed placed) => new(
        (Period.DaysBetween(week.First, placed.Date) * 1440) + Minutes(placed.Start), placed.Wanted.Minutes, false, placed.Wanted.Workout, placed.InsidePractice, placed.Wanted.Pinned);

    public static int Minutes(LocalTime time) => (time.Hour * 60) + time.Minute;

    public static string Print(WeekToPlace week) => string.Join("\n",
    [
        $"{week.Squad.AgeGroup}, active {week.ActiveDaysAtMost}, hard {week.HardAtMost} {week.HoursBetweenHard} h, on contact days {week.SessionsPerContactDay}, open {string.Join("", week.Free.Select(f => f ? '1' : '0'))}",
        .. week.Squad.Windows.Select(w => $"window {string.Join(",", w.Days)} {w.From}-{w.To}"),
        .. week.Wanted.Select(w => $"wanted {w.Workout.Name} {w.Minutes} {(w.Pinned ? "pinned" : "")} {w.KeepDate} {w.KeepStart}"),
        .. week.Contacts.Select(c => $"{c.Slot} {c.Date} {c.Start} {c.Minutes}"),
        .. week.Around.Select(a => $"around {a}"),
    ]);
}
