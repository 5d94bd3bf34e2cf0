namespace ClubCycle.Planning.Weeks.Placement;

/// <summary>The end of a week as far as the next week's spacing can see it: the last start of each kind.</summary>
/// <param name="Hard">Minutes from midnight of the next week's first day, negative; <see cref="Long"/> when too long ago to matter. The same for the others.</param>
/// <param name="HighJumps">Also counted in <paramref name="Jumps"/>.</param>
/// <param name="HardYesterday">A hard session on the last day.</param>
/// <param name="YouthStrengthYesterday">How many sessions of strength work of minors on the last day.</param>
internal readonly record struct WeekEnd(int Hard, int HeavyLift, int Jumps, int HighJumps, bool HardYesterday, int YouthStrengthYesterday)
{
    public const int Long = int.MinValue / 2;

    public static WeekEnd Nothing { get; } = new(Long, Long, Long, Long, false, 0);

    /// <summary>With one more session.</summary>
    /// <param name="reach">Minutes that matter to the next week.</param>
    public WeekEnd With(Traits traits, Spot spot, int reach)
    {
        var minute = spot.Minute - PreparedWeek.WeekMinutes;
        var seen = minute + reach > 0;
        var yesterday = spot.Day == 6;
        return new WeekEnd(
            seen && (traits & Traits.Hard) != 0 ? Math.Max(Hard, minute) : Hard,
            seen && (traits & Traits.HeavyLift) != 0 ? Math.Max(HeavyLift, minute) : HeavyLift,
            seen && (traits & Traits.Jumps) != 0 ? Math.Max(Jumps, minute) : Jumps,
            seen && (traits & Traits.HighJumps) != 0 ? Math.Max(HighJumps, minute) : HighJumps,
            HardYesterday || (yesterday && (traits & Traits.Hard) != 0),
            YouthStrengthYesterday + (yesterday && (traits & Traits.YouthStrength) != 0 ? 1 : 0));
    }

    /// <summary>Whether everything that can follow the other end can follow this one, at no higher cost.</summary>
    public bool AllowsAllOf(WeekEnd other) =>
        Hard <= other.Hard && HeavyLift <= other.HeavyLift && Jumps <= other.Jumps && HighJumps <= other.HighJumps
        && (!HardYesterday || other.HardYesterday) && YouthStrengthYesterday <= other.YouthStrengthYesterday;

    /// <summary>Whether a session of the next week may start there.</summary>
    public bool Allows(Traits traits, int minute, int hoursBetweenHard) =>
        minute - Hard >= Spacing.MinutesBetween(traits, Traits.Hard, hoursBetweenHard)
        && minute - HeavyLift >= Spacing.MinutesBetween(traits, Traits.HeavyLift, hoursBetweenHard)
        && minute - Jumps >= Spacing.MinutesBetween(traits, Traits.Jumps, hoursBetweenHard)
        && minute - HighJumps >= Spacing.MinutesBetween(traits, Traits.Jumps | Traits.HighJumps, hoursBetweenHard);
}

/// <summary>What a week leaves to the next one: its free sessions and, apart, those that a person fixed, which bind only free ones.</summary>
internal sealed record Heritage(WeekEnd Free, WeekEnd Pinned, int HoursBetweenHard)
{
    public bool IsNothing => Free == WeekEnd.Nothing && Pinned == WeekEnd.Nothing;

    /// <summary>What a session pays for what the week before holds; null when it may not stand there.</summary>
    public int? CostOf(PreparedWeek week, int session, Spot spot)
    {
        var traits = week.Traits[session];
        var hours = Math.Max(week.Week.HoursBetweenHard, HoursBetweenHard);
        if (!Free.Allows(traits, spot.Minute, hours) || (!week.IsPinned(session) && !Pinned.Allows(traits, spot.Minute, hours)))
        {
            return null;
        }

        return spot.Day != 0 ? 0
            : (spot.PaysAfterHard && (Free.HardYesterday || Pinned.HardYesterday) ? PlacementCost.NotEasyAfterHard : 0)
                + ((traits & Traits.YouthStrength) != 0 ? PlacementCost.YouthStrengthNextDay * (Free.YouthStrengthYesterday + Pinned.YouthStrengthYesterday) : 0);
    }
}
