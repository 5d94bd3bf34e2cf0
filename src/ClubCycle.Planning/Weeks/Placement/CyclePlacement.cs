namespace ClubCycle.Planning.Weeks.Placement;

/// <summary>
/// Places the sessions of a run of weeks at the smallest cost that breaks no hard rule; <c>docs/placement.md</c> is the problem.
/// </summary>
/// <remarks>
/// Each week alone gives a lower bound, and equal weeks are solved once. Neighbours that do not fit together are joined and solved by dynamic
/// programming over the ends of weeks; joined weeks grow until they fit their neighbours, so the sum of the parts is the optimum.
/// </remarks>
internal sealed class CyclePlacement
{
    private readonly PreparedWeek[] _weeks;
    private readonly WeekChoice[] _choices;

    private CyclePlacement(PreparedWeek[] weeks)
    {
        _weeks = weeks;
        _choices = [.. weeks.Select(w => w.Best)];
    }

    /// <summary>A run of consecutive weeks.</summary>
    /// <param name="known">Weeks of this squad that were prepared before, by <see cref="WeekKey"/>; new ones are added.</param>
    public static PlacedCycle Place(IReadOnlyList<WeekToPlace> weeks, Dictionary<int[], PreparedWeek>? known = null)
    {
        if (weeks.Count == 0)
        {
            return new PlacedCycle([], [], [], 0);
        }

        var times = new DayTimes(weeks[0].Squad, weeks[0].First.DayOfWeek);
        known ??= new Dictionary<int[], PreparedWeek>(WeekKey.Comparer);
        var prepared = new PreparedWeek[weeks.Count];
        for (var i = 0; i < prepared.Length; i++)
        {
            var week = WithPinsBeside(weeks, i, times);
            var key = WeekKey.Of(week);
            prepared[i] = known.TryGetValue(key, out var equal) ? equal : known[key] = new PreparedWeek(week, times, false);
        }

        var placement = new CyclePlacement(prepared);
        var cost = placement.Solve();
        return new PlacedCycle(weeks, prepared, placement._choices, cost);
    }

    /// <summary>The best placement when the same week stands before and after this one: its spacing holds across its own ends.</summary>
    /// <param name="times">The squad's, where they are at hand.</param>
    public static PlacedCycle PlaceRepeating(WeekToPlace week, DayTimes? times = null)
    {
        var prepared = new PreparedWeek(week, times ?? new DayTimes(week.Squad, week.First.DayOfWeek), true);
        return new PlacedCycle([week], [prepared], [prepared.Best], prepared.Best.Cost);
    }

    /// <summary>What people fixed in the weeks beside it is a fact for a week's free sessions.</summary>
    private static WeekToPlace WithPinsBeside(IReadOnlyList<WeekToPlace> weeks, int index, DayTimes times)
    {
        List<Anchor> pins = [];
        foreach (var beside in (ReadOnlySpan<int>)[index - 1, index + 1])
        {
            if (beside < 0 || beside >= weeks.Count || !HasPins(weeks[beside]))
            {
                continue;
            }

            var other = new PreparedWeek(weeks[beside], times, false);
            for (var i = 0; i < other.Spots.Length; i++)
            {
                if (other.IsPinned(i))
                {
                    var workout = weeks[beside].Wanted[i].Workout;
                    pins.Add(new Anchor(
                        other.Spots[i][0].Minute + ((beside - index) * PreparedWeek.WeekMinutes), workout.Hardness == Workouts.Hardness.Hard, false, workout.HeavyLift, workout.Jumps,
                        workout.Title, weeks[beside].HoursBetweenHard));
                }
            }
        }

        return pins.Count == 0 ? weeks[index] : weeks[index] with { Around = [.. weeks[index].Around, .. pins] };
    }

    private static bool HasPins(WeekToPlace week)
    {
        foreach (var wanted in week.Wanted)
        {
            if (wanted.Pinned)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Joins neighbours until all parts fit together; returns the cost of the whole.</summary>
    private long Solve()
    {
        List<(int From, int To, long Cost)> parts = [.. _choices.Select((c, i) => (i, i, c.Cost))];
        for (var joined = true; joined;)
        {
            joined = false;
            for (var p = 0; p + 1 < parts.Count;)
            {
                if (FitTogether(parts[p].To))
                {
                    p++;
                    continue;
                }

                // Look on before solving: the next neighbours may not fit either.
                var last = p + 1;
                while (last + 1 < parts.Count && !FitTogether(parts[last].To))
                {
                    last++;
                }

                var (from, to) = (parts[p].From, parts[last].To);
                parts.RemoveRange(p + 1, last - p);
                parts[p] = (from, to, SolveTogether(from, to));
                joined = true;
            }
        }

        return parts.Sum(p => p.Cost);
    }

    /// <summary>Whether this week's end and the next week's start neither break a rule nor cost anything together.</summary>
    private bool FitTogether(int week)
    {
        var before = WeekSearch.HeritageOf(_weeks[week], _choices[week].Spots, Reach(week));
        if (before.IsNothing)
        {
            return true;
        }

        var (next, spots) = (_weeks[week + 1], _choices[week + 1].Spots);
        for (var i = 0; i < spots.Length; i++)
        {
            if (spots[i] >= 0 && before.CostOf(next, i, next.Spots[i][spots[i]]) != 0)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Minutes at the end of a week that matter to the next one.</summary>
    private int Reach(int week) =>
        60 * Math.Max(Spacing.HoursBetweenHighJumps, Math.Max(_weeks[week].Week.HoursBetweenHard, _weeks[week + 1].Week.HoursBetweenHard));

    private sealed record State(WeekChoice? Choice, State? Before, Heritage? End, long Cost);

    private long SolveTogether(int from, int to)
    {
        // One week after the other is a good first answer; what it costs above the sum of the weeks alone is all that the search has to look at.
        var known = 0L;
        var rest = 0L;
        Heritage? before = null;
        for (var w = from; w <= to; w++)
        {
            var choice = WeekSearch.Cheapest(_weeks[w], before, long.MaxValue)!;
            known += choice.Cost;
            rest += _weeks[w].Best.Cost;
            before = w < to ? WeekSearch.HeritageOf(_weeks[w], choice.Spots, Reach(w)) : null;
        }

        List<State> states = [new State(null, null, null, 0)];
        for (var w = from; w < to; w++)
        {
            rest -= _weeks[w].Best.Cost;
            List<State> next = [];
            foreach (var state in states)
            {
                foreach (var (_, choice) in WeekSearch.CheapestByEnd(_weeks[w], state.End, known - state.Cost - rest, Reach(w)))
                {
                    Add(next, new State(choice, state, WeekSearch.HeritageOf(_weeks[w], choice.Spots, Reach(w)), state.Cost + choice.Cost));
                }
            }

            states = next;
        }

        State? best = null;
        foreach (var state in states)
        {
            if (WeekSearch.Cheapest(_weeks[to], state.End, (best?.Cost - 1 ?? known) - state.Cost) is { } choice)
            {
                best = new State(choice, state, null, state.Cost + choice.Cost);
            }
        }

        for (var (state, w) = (best!, to); w >= from; w--)
        {
            _choices[w] = state.Choice!;
            state = state.Before!;
        }

        return best!.Cost;
    }

    /// <summary>Keeps only states that no other beats in both cost and freedom.</summary>
    private static void Add(List<State> states, State state)
    {
        if (states.Exists(s => s.Cost <= state.Cost && s.End!.Free.AllowsAllOf(state.End!.Free)))
        {
            return;
        }

        states.RemoveAll(s => s.Cost >= state.Cost && state.End!.Free.AllowsAllOf(s.End!.Free));
        states.Add(state);
    }
}
