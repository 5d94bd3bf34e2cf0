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
    public PlacementWhy WhyOf(int week) => new(Chosen(week)!.Value, Chosen(week - 1), Chosen(week + 1));

    private ChosenWeek? Chosen(int week) => week < 0 || week >= _problems.Count ? null : new ChosenWeek(_problems[week], _prepared[week], _choices[week].Spots);

    private PlacedWeek WeekOf(int week)
    {
        var (problem, spots) = (_problems[week], _choices[week].Spots);
        List<Placed> placed = [];
        List<(WantedSession, string)> dropped = [];
        for (var i = 0; i < spots.Length; i++)
        {
            if (spots[i] < 0)
            {
                dropped.Add((problem.Wanted[i], WhyOf(week).NoPlaceFor(i)));
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
