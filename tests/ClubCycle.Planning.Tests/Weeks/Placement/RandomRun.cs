using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Weeks;
using ClubCycle.Planning.Weeks.Placement;
using ClubCycle.Planning.Workouts;
using CsCheck;
using NodaTime;

namespace ClubCycle.Planning.Tests.Weeks.Placement;

/// <summary>Consecutive weeks that get in each other's way: much hard work, matches at week ends and midweek, closed days, pins, published sessions.</summary>
internal static class RandomRun
{
    private const int DayMinutes = 24 * 60;

    private enum Open
    {
        Always,
        Often,
        AtWeekEnds,
    }

    /// <summary>Every heavy lift of the catalogue is hard too; this one shows the spacing of lifts alone.</summary>
    private static readonly Workout LiftThatIsNotHard = new("short-lift", "Short lift", [Quality.Speed], Hardness.Moderate, 5, HeavyLift: true);

    private static readonly Gen<Workout> Workouts = Gen.OneOf(
    [
        LiftThatIsNotHard,
        .. new[]
        {
            "heavy-lift", "heavy-lift", "lift-and-jump", "jumps", "high-jumps", "low-jumps", "sprint-intervals", "hill-sprints", "reactive-agility",
            "strength-circuit", "technique-lifting", "body-weight", "easy-run", "movement-games",
        }.Select(AWeek.Workout),
    ]);

    private static readonly IsoDayOfWeek[] EveryDay = [.. Enumerable.Range(1, 7).Select(d => (IsoDayOfWeek)d)];

    /// <summary>More often at a week's ends, where neighbours meet.</summary>
    private static readonly Gen<int> Days = Gen.OneOf(Gen.OneOf(0, 1, 5, 6), Gen.Int[0, 6]);

    private static readonly IReadOnlyList<TimeWindow>[] Windows =
    [
        [],
        [],
        [new(EveryDay, A.Time("17:00"), A.Time("22:00"))],
        [new(EveryDay, A.Time("18:15"), A.Time("20:15")), new([IsoDayOfWeek.Monday, IsoDayOfWeek.Wednesday, IsoDayOfWeek.Saturday], A.Time("06:30"), A.Time("08:00"))],
        [new([IsoDayOfWeek.Saturday, IsoDayOfWeek.Sunday], A.Time("09:00"), A.Time("12:00")), new([IsoDayOfWeek.Tuesday, IsoDayOfWeek.Wednesday, IsoDayOfWeek.Friday], A.Time("19:00"), A.Time("21:00"))],
    ];

    private static readonly Gen<AgeGroup> Ages = Gen.OneOf(AgeGroup.Senior, AgeGroup.Masters, AgeGroup.Youth(12), AgeGroup.Youth(16));

    private static readonly Gen<LocalDate> Firsts = Gen.OneOf(0, 0, 3, 6).Select(d => AWeek.Monday.PlusDays(d));

    private static readonly Gen<LocalTime> Evenings = Gen.Int[0, 12].Select(q => new LocalTime(17, 0).PlusMinutes(15 * q));

    private static readonly Gen<LocalTime> KickOffs = Gen.OneOf(Gen.Const(14), Gen.Const(14), Gen.Int[10, 20]).Select(hour => new LocalTime(hour, 0));

    /// <summary>Null, or a day's match: now and then two in three days.</summary>
    private static readonly Gen<Contact?[]> Matches = Gen.Select(Gen.Int[0, 99].Array[7], KickOffs.Array[7], Gen.Bool).Select((chances, times, season) =>
        chances.Select((chance, day) => season && chance < (day >= 5 ? 40 : day >= 3 ? 25 : 8) ? new Contact(Guid.Empty, "match", AWeek.Monday, times[day], 60, true, "") : null).ToArray());

    private static readonly Gen<Contact?[]> Practices = Gen.Select(Gen.Int[0, 9], Evenings, Gen.Int[4, 7]).Array[7].Select(days =>
        days.Select(d => d.Item1 < 3 ? new Contact(Guid.Empty, "practice", AWeek.Monday, d.Item2, d.Item3 * 15, false, "") : null).ToArray());

    private static Gen<WeekToPlace> Mix(int mostWanted) =>
        from sessions in Gen.Select(Workouts, Gen.Int[4, 15]).List[2, mostWanted]
        from limits in Gen.Select(Gen.Int[3, 7], Gen.OneOf(48, 48, 48, 72, 100, 168), Gen.Int[2, 5], Gen.Int[0, 1])
        from baseDays in Gen.OneOf(Days, Gen.Const(7)).Array[mostWanted]
        select AWeek.Wanting() with
        {
            Wanted = [.. sessions.Select((s, i) => new WantedSession($"slot.{i}", s.Item1, s.Item2 * 5))],
            ActiveDaysAtMost = limits.Item1,
            HoursBetweenHard = limits.Item2,
            HardAtMost = limits.Item3,
            SessionsPerContactDay = limits.Item4,
            BaseDays = baseDays.Index().Where(b => b.Item < 7).ToDictionary(b => $"slot.{b.Index}", b => b.Item),
        };

    /// <summary>Of ten sessions three are published and one is pinned, a third of the pins without a time.</summary>
    private static readonly Gen<(int Chance, int Day, LocalTime Time, int Timed)> Keeping = Gen.Select(Gen.Int[0, 99], Days, Evenings, Gen.Int[0, 2]);

    private static readonly Gen<Anchor> Happenings = Gen.Select(Evenings, Workouts, Gen.OneOf(0, 48, 100)).Select((time, workout, hours) =>
        new Anchor(Minutes(time), workout.Hardness == Hardness.Hard, false, workout.HeavyLift, workout.Jumps, "happened", hours));

    private static readonly Gen<Anchor> OutsideMatches = KickOffs.Select(time => new Anchor(Minutes(time), true, true, false, JumpClass.None));

    private static readonly Gen<Anchor?> Before = Gen.Frequency((5, Gen.Const((Anchor?)null)), (2, Happenings.Select(a => (Anchor?)a)), (1, OutsideMatches.Select(a => (Anchor?)a)));

    private static readonly Gen<Anchor?> After = Gen.Frequency((5, Gen.Const((Anchor?)null)), (1, OutsideMatches.Select(a => (Anchor?)a)));

    /// <param name="mostWanted">How many sessions a week at most.</param>
    public static Gen<IReadOnlyList<WeekToPlace>> Of(int weeks, int mostWanted) =>
        from first in Firsts
        from squad in Gen.Select(Ages, Gen.OneOf(Windows))
        from mixes in Mix(mostWanted).Array[3]
        from mix in Gen.Int[0, 2].Array[weeks]
        from practices in Practices
        from matches in Matches.Array[weeks]
        from replanned in Gen.Bool.Array[weeks]
        from keeping in Keeping.Array[mostWanted].Array[weeks]
        from closed in Gen.Int[0, 11].Array[7 * weeks]
        from open in Gen.Enum<Open>()
        from past in Gen.OneOf(0, 0, 2, 4)
        from before in Before.Array[7 + 4]
        from after in After.Array[3]
        select WithAround(
            [
                .. mix.Select((m, number) => InPlace(mixes[m], number, first, A.Squad(squad.Item1, practices: [], windows: squad.Item2)) with
                {
                    Contacts = ContactsOf(practices, matches[number], first.PlusDays(7 * number)),
                    Free = [.. closed.Skip(7 * number).Take(7).Select((c, day) => IsOpen(open, day, c) && (number > 0 || day >= past))],
                    Wanted = WantedOf(mixes[m], replanned[number] ? keeping[number] : [], first.PlusDays(7 * number)),
                }),
            ],
            [
                .. before.Take(7).Select((a, day) => a is { } anchor ? anchor with { Minute = anchor.Minute + ((day - 7) * DayMinutes) } : (Anchor?)null).OfType<Anchor>(),
                .. before.Skip(7).Take(past).Select((a, day) => a is { Match: false } anchor
                    ? anchor with { Minute = anchor.Minute + (day * DayMinutes), HoursBetweenHard = mixes[mix[0]].HoursBetweenHard } : (Anchor?)null).OfType<Anchor>(),
                .. after.Select((a, day) => a is { } anchor ? anchor with { Minute = anchor.Minute + (((7 * weeks) + day) * DayMinutes) } : (Anchor?)null).OfType<Anchor>(),
            ]);

    /// <summary>A phase's ordinary week: usual practices and match days, everything free, nothing published or around.</summary>
    public static Gen<WeekToPlace> BaseWeek(int mostWanted) =>
        from first in Firsts
        from squad in Gen.Select(Ages, Gen.OneOf(Windows))
        from mix in Mix(mostWanted)
        from practices in Practices
        from matches in Matches
        select InPlace(mix, 0, first, A.Squad(squad.Item1, practices: [], windows: squad.Item2)) with { Contacts = ContactsOf(practices, matches, first), BaseDays = null };

    /// <summary>One ordinary week again and again, each time with one thing of another week at most.</summary>
    public static Gen<IReadOnlyList<WeekToPlace>> OfNearlyEqual(int weeks, int mostWanted) =>
        from first in Firsts
        from squad in Gen.Select(Ages, Gen.OneOf(Windows))
        from usual in Mix(mostWanted)
        from other in Mix(mostWanted)
        from practices in Practices.Array[2]
        from thing in Gen.Int[0, 8].Array[weeks]
        from closed in Gen.Int[0, 6]
        select (IReadOnlyList<WeekToPlace>)
        [
            .. thing.Select((t, number) => InPlace(
                t switch
                {
                    0 => usual with { HoursBetweenHard = other.HoursBetweenHard },
                    1 => usual with { HardAtMost = other.HardAtMost },
                    2 => usual with { ActiveDaysAtMost = other.ActiveDaysAtMost },
                    3 => usual with { SessionsPerContactDay = other.SessionsPerContactDay },
                    4 => usual with { BaseDays = other.BaseDays },
                    5 => usual with { Free = [.. Enumerable.Range(0, 7).Select(day => day != closed)] },
                    6 => usual with { Wanted = [other.Wanted[0], .. usual.Wanted.Skip(1)] },
                    _ => usual,
                },
                number, first, A.Squad(squad.Item1, practices: [], windows: squad.Item2)) with
            {
                Contacts = ContactsOf(practices[t == 7 ? 1 : 0], new Contact?[7], first.PlusDays(7 * number)),
            }),
        ];

    public static string Print(IReadOnlyList<WeekToPlace> weeks) =>
        string.Join("\n", weeks.Select(w => $"-- from {w.First.DayOfWeek} {w.First}, base days {string.Join(", ", w.BaseDays?.Select(b => $"{b.Key} {b.Value}") ?? [])}\n{RandomWeek.Print(w)}"));

    private static WeekToPlace InPlace(WeekToPlace mix, int number, LocalDate first, Squad squad) => mix with { First = first.PlusDays(7 * number), Squad = squad };

    private static List<Contact> ContactsOf(Contact?[] practices, Contact?[] matches, LocalDate first) =>
        [.. Enumerable.Range(0, 7).Select(day => (matches[day] ?? practices[day]) is { } contact ? contact with { Date = first.PlusDays(day) } : null).OfType<Contact>()];

    private static bool IsOpen(Open open, int day, int chance) => open switch
    {
        Open.Always => true,
        Open.Often => chance > 0,
        _ => day is 0 or > 4,
    };

    private static List<WantedSession> WantedOf(WeekToPlace mix, (int Chance, int Day, LocalTime Time, int Timed)[] keeping, LocalDate first) =>
    [
        .. mix.Wanted.Index().Select(s => keeping.ElementAtOrDefault(s.Index) is { Chance: < 40 } keep && keeping.Length > 0
            ? s.Item with { Pinned = keep.Chance >= 30, KeepDate = first.PlusDays(keep.Day), KeepStart = keep.Chance >= 30 && keep.Timed == 0 ? null : keep.Time }
            : s.Item),
    ];

    /// <summary>Each week sees its neighbours' matches, and of what lies around the run what is near enough.</summary>
    private static IReadOnlyList<WeekToPlace> WithAround(IReadOnlyList<WeekToPlace> weeks, IReadOnlyList<Anchor> around)
    {
        List<Anchor> all =
        [
            .. around,
            .. weeks.SelectMany(w => w.Contacts.Where(c => c.IsMatch))
                .Select(m => new Anchor((Period.DaysBetween(weeks[0].First, m.Date) * DayMinutes) + Minutes(m.Start), true, true, false, JumpClass.None)),
        ];

        return
        [
            .. weeks.Select((week, number) => week with
            {
                Around =
                [
                    .. all.Select(a => a with { Minute = a.Minute - (7 * number * DayMinutes) })
                        .Where(a => a.Minute >= -7 * DayMinutes && a.Minute < 10 * DayMinutes && (!a.Match || a.Minute is < 0 or >= 7 * DayMinutes)),
                ],
            }),
        ];
    }

    private static int Minutes(LocalTime time) => (time.Hour * 60) + time.Minute;
}
