using NodaTime;

namespace ClubCycle.Planning.Weeks.Placement;

/// <summary>Where the sessions of a run of weeks went.</summary>
internal sealed class PlacedCycle
{
    private readonly IReadOnlyList<WeekToPlace> _problems;
    private readonly PreparedWeek[] _prepared;
    private readonly WeekChoice[] _choices;

    public PlacedCycle(IReadOnlyList<WeekToPlace> problems, PreparedWeek[] prepared, WeekChoice[] choices, long cost)
    {
        (_problems, _prepared, _choices, Cost) = (problems, prepared, choices, cost);
        Weeks = [.. Enumerable.Range(0, problems.Count).Select(WeekOf)];
    }

    public IReadOnlyList<PlacedWeek> Weeks { get; }

    /// <summary>What the placement costs by <see cref="PlacementCost"/>; the smallest there is.</summary>
    public long Cost { get; }

    /// <summary>The reasons for a week's places.</summary>
    /// <param name="takesPlace">Tells by week and slot whether a placed session takes place in the end.</param>
    public PlacementWhy WhyOf(int week, Func<int, string, bool> takesPlace) =>
        new(Chosen(week, takesPlace)!.Value, Chosen(week - 1, takesPlace), Chosen(week + 1, takesPlace));

    private ChosenWeek? Chosen(int week, Func<int, string, bool> takesPlace)
    {
        if (week < 0 || week >= _problems.Count)
        {
            return null;
        }

        var wanted = _problems[week].Wanted;
        var spots = _choices[week].Spots;
        for (var i = 0; i < spots.Length; i++)
        {
            if (spots[i] >= 0 && !takesPlace(week, wanted[i].Slot))
            {
                return new ChosenWeek(_problems[week], _prepared[week], [.. spots.Select((s, j) => s >= 0 && takesPlace(week, wanted[j].Slot) ? s : -1)]);
            }
        }

        return new ChosenWeek(_problems[week], _prepared[week], spots);
    }

    private PlacedWeek WeekOf(int week)
    {
        var (problem, spots) = (_problems[week], _choices[week].Spots);
        List<Placed> placed = [];
        List<(WantedSession, string)> dropped = [];
        for (var i = 0; i < spots.Length; i++)
        {
            if (spots[i] < 0)
            {
                dropped.Add((problem.Wanted[i], WhyOf(week, static (_, _) => true).NoPlaceFor(i)));
                continue;
            }

            var spot = _prepared[week].Spots[i][spots[i]];
            var minute = spot.Minute % DayTimes.DayMinutes;
            placed.Add(new Placed(problem.Wanted[i], i, problem.First.PlusDays(spot.Day), new LocalTime(minute / 60, minute % 60), spot.Inside));
        }

        placed.Sort((a, b) => a.Date != b.Date ? a.Date.CompareTo(b.Date) : a.Start.CompareTo(b.Start));
        return new PlacedWeek(placed, dropped);
    }
}

/// <param name="Spots">By session; -1 for one that does not take place.</param>
internal readonly record struct ChosenWeek(WeekToPlace Problem, PreparedWeek Prepared, int[] Spots);
