using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Tests.Weeks.Placement;

/// <summary>
/// Judges a placed week from the words of the rules alone (R01–R03, R25, R33, R36–R39 and the planner's own limits), sharing no code with
/// the planner.
/// </summary>
/// <param name="FirstDay">First of the week's seven days, counted as <see cref="Happening.Day"/>.</param>
/// <param name="Open">Whether the planner may use a day.</param>
/// <param name="Windows">The squad's times on a day, minutes from its midnight.</param>
internal sealed record PlacedWeekCheck(
    int FirstDay, Func<int, bool> Open, Func<int, (int From, int To)[]> Windows,
    int ActiveDaysAtMost, int HoursBetweenHard, int HardAtMost, int SessionsPerContactDay)
{
    /// <summary>The first broken rule; null when all hold. Only sessions the planner chose a day for are judged.</summary>
    /// <param name="week">Everything in the seven days.</param>
    /// <param name="all">The week and what lies five days before and three days after it.</param>
    public string? Broken(IReadOnlyList<Happening> week, IReadOnlyList<Happening> all)
    {
        foreach (var session in week)
        {
            if (session is { Workout: not null, Fixed: false } && (DayBroken(session, week) ?? SpacingBroken(session, session.Workout, all)) is { } broken)
            {
                return $"{session.Workout.Name} on day {session.Day - FirstDay}: {broken}";
            }
        }

        return WeekBroken(week);
    }

    private string? DayBroken(Happening session, IReadOnlyList<Happening> week)
    {
        if (session.Day < FirstDay || session.Day > FirstDay + 6 || !Open(session.Day))
        {
            return "not an open day of the week";
        }

        var minute = session.Minute - (session.Day * 1440);
        if (!session.Inside && !Windows(session.Day).Any(w => w.From <= minute && minute + session.Length <= w.To))
        {
            return "outside the squad's times";
        }

        var contacts = 0;
        var within = false;
        foreach (var other in week)
        {
            if (ReferenceEquals(other, session) || other.Day != session.Day)
            {
                continue;
            }

            if (other.Match)
            {
                return "on a match day";
            }

            if (!other.Practice)
            {
                return "a second session on the day";
            }

            contacts++;
            within |= other.Minute <= session.Minute && session.End <= other.End;
            if (!session.Inside && session.Minute < other.End && other.Minute < session.End)
            {
                return "runs into practice";
            }
        }

        return session.Inside && !within ? "not within a practice"
            : session.Inside && !session.Workout!.InsidePractice ? "no session for practice time"
            : !session.Inside && session.Workout!.Name == "movement-games" ? "children's games outside practice"
            : !session.Inside && contacts > 0 && SessionsPerContactDay < 1 ? "shares a practice day"
            : null;
    }

    private string? SpacingBroken(Happening session, Workout workout, IReadOnlyList<Happening> all)
    {
        foreach (var other in all)
        {
            if (ReferenceEquals(other, session))
            {
                continue;
            }

            var apart = Math.Abs(other.Minute - session.Minute);
            if (session.Hard && other.Match)
            {
                if (other.Day == session.Day + 1)
                {
                    return "hard the day before a match";
                }

                var afterTwo = other.Minute < session.Minute && all.Any(m => m.Match && m.Minute < other.Minute && other.Minute - m.Minute <= 48 * 60);
                if (apart < (afterTwo ? 72 : 48) * 60)
                {
                    return afterTwo ? "hard within 72 h of two matches" : "hard within 48 h of a match";
                }
            }

            if (session.Hard && other.Hard && !other.Match && apart < HoursBetweenHard * 60)
            {
                return $"hard within {HoursBetweenHard} h of hard";
            }

            if (workout.HeavyLift && other.Workout is { HeavyLift: true } && apart < 48 * 60)
            {
                return "heavy lifts within 48 h";
            }

            var jumps = (workout.Jumps, other.Workout?.Jumps ?? JumpClass.None);
            if (jumps is not ((JumpClass.None, _) or (_, JumpClass.None)) && apart < (jumps is (JumpClass.High, _) or (_, JumpClass.High) ? 72 : 48) * 60)
            {
                return "jumps too close";
            }
        }

        return null;
    }

    private string? WeekBroken(IReadOnlyList<Happening> week)
    {
        Span<bool> active = stackalloc bool[7];
        Span<bool> contact = stackalloc bool[7];
        var hard = 0;
        var ownHard = false;
        foreach (var happening in week)
        {
            active[happening.Day - FirstDay] = true;
            contact[happening.Day - FirstDay] |= happening.Workout is null;
            hard += happening.Hard ? 1 : 0;
            ownHard |= happening is { Hard: true, Workout: not null, Fixed: false };
        }

        if (hard > HardAtMost && ownHard)
        {
            return $"{hard} hard sessions";
        }

        var days = 0;
        foreach (var day in active)
        {
            days += day ? 1 : 0;
        }

        if (days > ActiveDaysAtMost)
        {
            foreach (var happening in week)
            {
                if (happening is { Workout: not null, Fixed: false } && !contact[happening.Day - FirstDay])
                {
                    return $"{days} active days";
                }
            }
        }

        return null;
    }
}
