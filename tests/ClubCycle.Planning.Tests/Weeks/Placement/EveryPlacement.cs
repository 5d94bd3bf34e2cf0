using ClubCycle.Planning.Weeks.Placement;
using ClubCycle.Planning.Workouts;
using NodaTime;

namespace ClubCycle.Planning.Tests.Weeks.Placement;

/// <summary>Full enumeration of a week: each session on each day it could have, or nowhere; the rules decide by <see cref="PlacedWeekCheck"/>.</summary>
internal static class EveryPlacement
{
    /// <summary>The smallest cost, and how many sessions the placements of that cost hold.</summary>
    public static (int Cost, int Placed) Best(WeekToPlace week)
    {
        var check = RandomWeek.CheckOf(week);
        var candidates = week.Wanted.Select(w => Candidates(week, w)).ToArray();
        Happening[] fixedOnes = [.. RandomWeek.ContactsOf(week)];
        Happening[] around = [.. RandomWeek.AroundOf(week)];
        var choice = new int[candidates.Length];
        (int Cost, int Placed) best = (int.MaxValue, 0);
        while (true)
        {
            var chosen = choice.Select((c, i) => candidates[i][c]).ToArray();
            List<Happening> all = [.. fixedOnes, .. chosen.OfType<Happening>()];
            if (check.Broken(all, [.. all, .. around]) is null && Cost(week, chosen) is var cost && cost < best.Cost)
            {
                best = (cost, all.Count - fixedOnes.Length);
            }

            var turn = 0;
            while (turn < choice.Length && ++choice[turn] == candidates[turn].Length)
            {
                choice[turn++] = 0;
            }

            if (turn == choice.Length)
            {
                return best;
            }
        }
    }

    /// <summary>The cost of a week as <see cref="PlacementCost"/> describes it; null stands for a dropped session.</summary>
    public static int Cost(WeekToPlace week, IReadOnlyList<Happening?> chosen)
    {
        var contacts = RandomWeek.ContactsOf(week).ToList();
        var active = Enumerable.Range(0, 7).Select(d => contacts.Any(c => c.Day == d) || chosen.Any(c => c?.Day == d)).ToArray();
        var matches = contacts.Concat(RandomWeek.AroundOf(week)).Where(h => h.Match).Select(h => h.Day).ToHashSet();
        var hard = contacts.Concat(RandomWeek.AroundOf(week)).Concat(chosen.OfType<Happening>()).Where(h => h.Hard).Select(h => h.Day).ToHashSet();

        var cost = active.Count(a => a) > 5 ? PlacementCost.SixthActiveDay : 0;
        for (var day = 1; day < 7; day++)
        {
            cost += active[day] && active[day - 1] ? PlacementCost.DayAfterActive : 0;
            cost += day >= 3 && active[day] && active[day - 1] && active[day - 2] && active[day - 3] ? PlacementCost.LongRun : 0;
        }

        for (var i = 0; i < chosen.Count; i++)
        {
            var wanted = week.Wanted[i];
            if (chosen[i] is not { } session)
            {
                cost += PlacementCost.Dropped + (PlacementCost.DroppedStep * (chosen.Count - i));
                continue;
            }

            cost += wanted.Pinned ? 0 : OwnCost(week, wanted, session);
            if (session.Inside)
            {
                continue;
            }

            cost += wanted.Workout.Hardness != Hardness.Easy && hard.Contains(session.Day - 1) ? PlacementCost.NotEasyAfterHard : 0;
            cost += wanted.Workout.Hardness != Hardness.Easy && matches.Contains(session.Day + 1) ? PlacementCost.NotEasyBeforeMatch : 0;
            cost += week.Squad.AgeGroup.IsYouth && Strength(wanted.Workout)
                ? PlacementCost.YouthStrengthNextDay * chosen.Take(i).Count(o => o is { Workout: { } w } && Strength(w) && Math.Abs(o.Day - session.Day) == 1)
                : 0;
        }

        return cost;
    }

    private static int OwnCost(WeekToPlace week, WantedSession wanted, Happening session)
    {
        var date = week.First.PlusDays(session.Day);
        var cost = session.Inside ? PlacementCost.InsidePractice : 0;
        cost += date.DayOfWeek >= IsoDayOfWeek.Saturday ? PlacementCost.Weekend : 0;
        if (wanted.KeepDate is { } kept)
        {
            cost += kept != date ? PlacementCost.PublishedDayLost
                : wanted.KeepStart is { } time && RandomWeek.Minutes(time) != session.Minute % 1440 ? PlacementCost.PublishedTimeLost
                : 0;
        }
        else if (week.BaseDays!.TryGetValue(wanted.Slot, out var usual) && usual != session.Day)
        {
            cost += PlacementCost.BaseDayLost;
        }

        // What is published next week would have to move away.
        var alone = new PlacedWeekCheck(0, _ => true, _ => [(0, 1440)], 7, week.HoursBetweenHard, 7, 1);
        return cost + (PlacementCost.PublishedDayLost * week.PublishedAhead.Count(a =>
            alone.Broken([session with { Inside = false, Workout = session.Workout! with { Name = "alone" } }], [RandomWeek.Around(a)]) is not null));
    }

    private static bool Strength(Workout workout) => workout.HeavyLift || workout.Qualities.Contains(Quality.MuscularEndurance);

    private static Happening?[] Candidates(WeekToPlace week, WantedSession wanted)
    {
        if (wanted is { Pinned: true, KeepDate: { } date, KeepStart: { } start })
        {
            var minute = (Period.DaysBetween(week.First, date) * 1440) + RandomWeek.Minutes(start);
            var inside = wanted.Workout.InsidePractice && RandomWeek.ContactsOf(week).Any(c => c.Practice && c.Minute + 15 == minute && minute + wanted.Minutes <= c.End);
            return [new Happening(minute, wanted.Minutes, false, wanted.Workout, inside, true)];
        }

        List<Happening?> candidates = [null];
        for (var day = 0; day < 7; day++)
        {
            var practice = RandomWeek.ContactsOf(week).FirstOrDefault(c => c.Practice && c.Day == day);
            if (OwnStart(week, wanted, day, practice) is { } own)
            {
                candidates.Add(new Happening(own, wanted.Minutes, false, wanted.Workout));
            }

            if (practice is not null)
            {
                candidates.Add(new Happening(practice.Minute + 15, wanted.Minutes, false, wanted.Workout, true));
            }
        }

        return [.. candidates];
    }

    /// <summary>The published time of the published day where it is still free, else the first free minute of the day.</summary>
    private static int? OwnStart(WeekToPlace week, WantedSession wanted, int day, Happening? practice)
    {
        bool Free(int minute) => practice is null || minute + wanted.Minutes <= practice.Minute || minute >= practice.End;

        var midnight = day * 1440;
        var windows = RandomWeek.WindowsOf(week.Squad, week.First.PlusDays(day).DayOfWeek);
        if (wanted.KeepDate == week.First.PlusDays(day) && wanted.KeepStart is { } kept)
        {
            var minute = midnight + RandomWeek.Minutes(kept);
            if (Free(minute) && windows.Any(w => midnight + w.From <= minute && minute + wanted.Minutes <= midnight + w.To))
            {
                return minute;
            }
        }

        foreach (var (from, to) in windows)
        {
            for (var minute = midnight + from; minute + wanted.Minutes <= midnight + to; minute++)
            {
                if (Free(minute))
                {
                    return minute;
                }
            }
        }

        return null;
    }
}
