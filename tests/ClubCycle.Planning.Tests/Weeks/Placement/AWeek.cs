using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Weeks;
using ClubCycle.Planning.Weeks.Placement;
using ClubCycle.Planning.Workouts;
using NodaTime;

namespace ClubCycle.Planning.Tests.Weeks.Placement;

/// <summary>A week to place from Monday 3 August 2026, open every day, with nothing around it; a test says what differs.</summary>
internal static class AWeek
{
    public static readonly LocalDate Monday = A.Date("2026-08-03");

    /// <summary>A workout the catalogue does not plan yet: single-leg series, so that the spacing of high jumps can be shown.</summary>
    public static readonly Workout HighJumps = new("high-jumps", "High jumps", [Quality.Speed], Hardness.Moderate, 6, Jumps: JumpClass.High);

    private const int DayMinutes = 24 * 60;

    /// <summary>Sessions of 45 minutes, most valuable first; slots are <c>easy-run.1</c>, <c>easy-run.2</c> and so on.</summary>
    public static WeekToPlace Wanting(params string[] workouts) => new(
        A.Squad(practices: []), Monday, [.. workouts.Select((w, i) => Wanted(w, i + 1))], [], [],
        [true, true, true, true, true, true, true], 6, 48, 4, 0, null);

    public static WantedSession Wanted(string workout, int number = 1, int minutes = 45) =>
        new($"{workout}.{number}", Workout(workout), minutes);

    public static Workout Workout(string name) => name == HighJumps.Name ? HighJumps : WorkoutCatalogue.Find(name)!;

    /// <summary>Only these days are open: <c>"Mon Wed"</c>.</summary>
    public static WeekToPlace OpenOn(this WeekToPlace week, string days) =>
        week with { Free = [.. Enumerable.Range(0, 7).Select(d => days.Contains(DayName(d), StringComparison.Ordinal))] };

    /// <summary>Contacts of the week: <c>"match Sat 14:00"</c>, <c>"practice Tue 19:30"</c> (of 60 and 90 minutes).</summary>
    public static WeekToPlace With(this WeekToPlace week, params string[] contacts) => week with { Contacts = [.. week.Contacts, .. contacts.Select(Contact)] };

    /// <summary>What stands outside the week: <c>"match -1 14:00"</c> is a match on the day before it, <c>"jumps 7 18:00"</c> jumps on the day after it.</summary>
    public static WeekToPlace Around(this WeekToPlace week, params string[] anchors) => week with { Around = [.. week.Around, .. anchors.Select(Anchor)] };

    public static WeekToPlace Pinning(this WeekToPlace week, int index, string day, string? start = null) =>
        week.Change(index, w => w with { Pinned = true, KeepDate = Date(day), KeepStart = start is null ? null : A.Time(start) });

    public static WeekToPlace Published(this WeekToPlace week, int index, string day, string start) =>
        week.Change(index, w => w with { KeepDate = Date(day), KeepStart = A.Time(start) });

    /// <summary>The first session's usual day, 0 to 6.</summary>
    public static WeekToPlace Usually(this WeekToPlace week, int day) => week with { BaseDays = new Dictionary<string, int> { [week.Wanted[0].Slot] = day } };

    public static WeekToPlace Change(this WeekToPlace week, int index, Func<WantedSession, WantedSession> change) =>
        week with { Wanted = [.. week.Wanted.Select((w, i) => i == index ? change(w) : w)] };

    /// <summary>Where everything went: <c>"jumps.1 Tue 18:00"</c>, with <c>inside</c> behind it where it is part of a practice.</summary>
    public static string[] Placed(this WeekToPlace week) =>
        [.. CyclePlacement.Place([week]).Weeks[0].Placed.Select(p => $"{p.Wanted.Slot} {DayName(Period.DaysBetween(week.First, p.Date))} {p.Start.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture)}{(p.InsidePractice ? " inside" : "")}")];

    public static string[] Dropped(this WeekToPlace week) => [.. CyclePlacement.Place([week]).Weeks[0].Dropped.Select(d => d.Wanted.Slot)];

    public static long Cost(this WeekToPlace week) => CyclePlacement.Place([week]).Cost;

    /// <summary>The same week seven days later.</summary>
    public static WeekToPlace Next(this WeekToPlace week) => week with
    {
        First = week.First.PlusWeeks(1),
        Contacts = [.. week.Contacts.Select(c => c with { Date = c.Date.PlusWeeks(1) })],
        Wanted = [.. week.Wanted.Select(w => w with { KeepDate = w.KeepDate?.PlusWeeks(1) })],
    };

    /// <summary>The squad's times on every day.</summary>
    public static WeekToPlace From(this WeekToPlace week, string from, string to) =>
        week with { Squad = week.Squad with { Windows = [new TimeWindow([.. Enum.GetValues<IsoDayOfWeek>().Where(d => d != IsoDayOfWeek.None)], A.Time(from), A.Time(to))] } };

    public static LocalDate Date(string day) => Monday.PlusDays(Enumerable.Range(0, 7).Single(d => DayName(d) == day));

    public static Contact Contact(string text)
    {
        var parts = text.Split(' ');
        var match = parts[0] == "match";
        return new Contact(Guid.Empty, parts[0], Date(parts[1]), A.Time(parts[2]), match ? 60 : 90, match, "");
    }

    private static Anchor Anchor(string text)
    {
        var parts = text.Split(' ');
        var time = A.Time(parts[2]);
        var minute = (int.Parse(parts[1], System.Globalization.CultureInfo.InvariantCulture) * DayMinutes) + (time.Hour * 60) + time.Minute;
        return parts[0] == "match"
            ? new Anchor(minute, true, true, false, JumpClass.None)
            : new Anchor(minute, Workout(parts[0]).Hardness == Hardness.Hard, false, Workout(parts[0]).HeavyLift, Workout(parts[0]).Jumps);
    }

    private static string DayName(int day) => Monday.PlusDays(day).DayOfWeek.ToString()[..3];
}
