namespace ClubCycle.Planning.Weeks.Placement;

/// <summary>Which spot each session takes, -1 for dropped, and what the week costs.</summary>
internal sealed record WeekChoice(int[] Spots, long Cost);

/// <summary>Complete search of one week with pruning: what is placed, plus the least that the rest can cost, must stay under the best known.</summary>
internal sealed class WeekSearch
{
    private readonly PreparedWeek _week;
    private readonly Heritage? _before;
    private readonly int _count;
    private readonly int _reach;
    private readonly int[] _chosen;
    private readonly int[] _restCost;
    private readonly int[] _restDays;
    private readonly List<(WeekEnd End, WeekChoice Choice)>? _ends;
    private long _limit;
    private WeekChoice? _best;

    private WeekSearch(PreparedWeek week, Heritage? before, long limit, int reach, bool everyEnd)
    {
        (_week, _before, _limit, _reach, _count) = (week, before is { IsNothing: true } ? null : before, limit, reach, week.Spots.Length);
        _chosen = new int[_count];
        Array.Fill(_chosen, -1);
        _restCost = new int[_count + 1];
        _restDays = new int[_count + 1];
        for (var depth = _count - 1; depth >= 0; depth--)
        {
            _restCost[depth] = _restCost[depth + 1] + week.SmallestCost[week.Order[depth]];

            // A session that is dropped instead costs far more than any day.
            _restDays[depth] = Math.Min(7, _restDays[depth + 1] + (week.TakesOwnDay[week.Order[depth]] ? 1 : 0));
        }

        _ends = everyEnd ? [] : null;
    }

    /// <summary>The cheapest placement that costs no more than the limit; null when there is none.</summary>
    public static WeekChoice? Cheapest(PreparedWeek week, Heritage? before, long limit)
    {
        var search = new WeekSearch(week, before, limit, 0, false);
        search.Place(0, 0, 0, week.Matches, WeekEnd.Nothing);
        return search._best;
    }

    /// <summary>Placements that cost no more than the limit, each with what it leaves to the next week; none is both dearer than another and leaves less freedom.</summary>
    /// <param name="reach">Minutes before its end that matter to the next week.</param>
    public static IReadOnlyList<(WeekEnd End, WeekChoice Choice)> CheapestByEnd(PreparedWeek week, Heritage? before, long limit, int reach)
    {
        var search = new WeekSearch(week, before, limit, reach, true);
        search.Place(0, 0, 0, week.Matches, WeekEnd.Nothing);
        return search._ends!;
    }

    /// <summary>What a placement leaves to the next week.</summary>
    public static Heritage HeritageOf(PreparedWeek week, int[] chosen, int reach)
    {
        var (free, pinned) = (WeekEnd.Nothing, WeekEnd.Nothing);
        for (var i = 0; i < chosen.Length; i++)
        {
            if (chosen[i] >= 0)
            {
                var spot = week.Spots[i][chosen[i]];
                (free, pinned) = week.IsPinned(i) ? (free, pinned.With(week.Traits[i], spot, reach)) : (free.With(week.Traits[i], spot, reach), pinned);
            }
        }

        return new Heritage(free, pinned, week.Week.HoursBetweenHard);
    }

    /// <param name="end">What the sessions placed so far leave to the next week; those to come can only add to it.</param>
    private void Place(int depth, long cost, int days, int hard, WeekEnd end)
    {
        var least = cost + _restCost[depth] + PlacementCost.OfActiveDays(days | _week.ContactDays, _restDays[depth], _week.Repeats);
        if (least > _limit || (_ends is not null && IsNoBetter(least, end)))
        {
            return;
        }

        if (depth == _count)
        {
            Keep(least, end);
            return;
        }

        var session = _week.Order[depth];
        var traits = _week.Traits[session];
        var pinned = (traits & Traits.Pinned) != 0;
        var isHard = (traits & Traits.Hard) != 0 ? 1 : 0;
        var spots = _week.Spots[session];
        if (pinned || isHard == 0 || hard < _week.Week.HardAtMost)
        {
            for (var s = 0; s < spots.Length; s++)
            {
                ref readonly var spot = ref spots[s];
                if (least - _week.SmallestCost[session] + spot.Cost > _limit)
                {
                    break;
                }

                var bit = 1 << spot.Day;
                if (!pinned && ((days & bit) != 0 || !IsActiveDayAllowed(days, bit)))
                {
                    continue;
                }

                if (PairCost(session, spot, depth) is { } pairs)
                {
                    _chosen[session] = s;
                    Place(depth + 1, cost + spot.Cost + pairs, days | bit, hard + isHard, pinned || _ends is null ? end : end.With(traits, spot, _reach));
                    _chosen[session] = -1;
                }
            }
        }

        if (!pinned)
        {
            Place(depth + 1, cost + _week.DropCost(session), days, hard, end);
        }
    }

    private bool IsActiveDayAllowed(int days, int bit) =>
        (_week.ContactDays & bit) != 0 || int.PopCount(days | bit | _week.ContactDays) <= _week.Week.ActiveDaysAtMost;

    /// <summary>What the session pays for its neighbours among those already placed and in the week before; null when one of them is too near.</summary>
    private int? PairCost(int session, Spot spot, int depth)
    {
        var cost = 0;
        if (_before is not null)
        {
            if (_before.CostOf(_week, session, spot) is not { } after)
            {
                return null;
            }

            cost = after;
        }

        var paysAfterHard = spot.PaysAfterHard;
        for (var d = 0; d < depth; d++)
        {
            var other = _week.Order[d];
            if (_chosen[other] < 0)
            {
                continue;
            }

            var there = _week.Spots[other][_chosen[other]];
            var apart = Math.Abs(spot.Minute - there.Minute);
            var needed = _week.Between[(session * _count) + other];
            if (apart < needed || (_week.Repeats && PreparedWeek.WeekMinutes - apart < needed))
            {
                return null;
            }

            if (IsDayAfter(there, spot))
            {
                cost += YouthStrengthCost(session, other);
                if (paysAfterHard && (_week.Traits[other] & Traits.Hard) != 0)
                {
                    cost += PlacementCost.NotEasyAfterHard;
                    paysAfterHard = false;
                }
            }
            else if (IsDayAfter(spot, there))
            {
                cost += YouthStrengthCost(session, other);
                cost += there.PaysAfterHard && (_week.Traits[session] & Traits.Hard) != 0 && !HasHardOn(spot.Day, depth) ? PlacementCost.NotEasyAfterHard : 0;
            }
        }

        return cost;
    }

    /// <summary>Only fixed sessions can share a day: then the day after is paid for once.</summary>
    private bool HasHardOn(int day, int depth)
    {
        for (var d = 0; d < depth; d++)
        {
            var other = _week.Order[d];
            if (_chosen[other] >= 0 && _week.Spots[other][_chosen[other]].Day == day && (_week.Traits[other] & Traits.Hard) != 0)
            {
                return true;
            }
        }

        return false;
    }

    private bool IsDayAfter(Spot first, Spot second) => second.Day - first.Day == 1 || (_week.Repeats && second.Day - first.Day == -6);

    private int YouthStrengthCost(int one, int other) =>
        (_week.Traits[one] & _week.Traits[other] & Traits.YouthStrength) != 0 ? PlacementCost.YouthStrengthNextDay : 0;

    /// <summary>Whether a known placement costs no more and leaves the next week at least as much freedom.</summary>
    private bool IsNoBetter(long least, WeekEnd end)
    {
        foreach (var (known, choice) in _ends!)
        {
            if (choice.Cost <= least && known.AllowsAllOf(end))
            {
                return true;
            }
        }

        return false;
    }

    private void Keep(long cost, WeekEnd end)
    {
        var choice = new WeekChoice([.. _chosen], cost);
        if (_ends is null)
        {
            (_best, _limit) = (choice, cost - 1);
            return;
        }

        _ends.RemoveAll(e => e.Choice.Cost >= cost && end.AllowsAllOf(e.End));
        _ends.Add((end, choice));
    }
}
