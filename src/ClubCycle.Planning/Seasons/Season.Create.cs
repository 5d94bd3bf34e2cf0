using NodaTime;

namespace ClubCycle.Planning.Seasons;

public sealed partial record Season
{
    /// <summary>A season whose dates can be planned, or every problem with them.</summary>
    /// <param name="previousLastDay">Last match day of the season before; null means the same dates a year earlier.</param>
    public static Result<Season> Create(LocalDate? previousLastDay, IReadOnlyList<Stint> stints)
    {
        if (stints.Count == 0)
        {
            return new Problem("season.no-stints", "A season needs at least one run of match dates. Add its first and last match day.", "season.stints");
        }

        if (stints.Count > MostStints)
        {
            return new Problem("season.too-many-stints", $"A season has {MostStints} stints at most, this one has {stints.Count}. Join stints that follow each other.", "season.stints");
        }

        List<Problem> problems = [.. StintProblems(stints)];
        if (previousLastDay is { } given && PlanDates.Problem(given, "season", "season.previousLastDay") is { } outside)
        {
            problems.Add(outside);
        }

        if (problems.Count > 0)
        {
            return new Result<Season>.Failed(problems);
        }

        var previous = previousLastDay ?? stints[^1].Last.PlusYears(-1);
        if (previous >= stints[0].First)
        {
            problems.Add(new Problem(
                "season.starts-before-cycle",
                previousLastDay is null
                    ? $"The season is longer than a year: it starts on {Iso(stints[0].First)} and the season before would have ended on {Iso(previous)}. Say when the season before ended."
                    : $"The first match day {Iso(stints[0].First)} is not after the season before, which ended on {Iso(previous)}. Move one of the two dates.",
                "season.stints[0].first"));
        }

        var days = Period.DaysBetween(previous, stints[^1].Last);
        if (days > LongestCycleInWeeks * 7)
        {
            problems.Add(new Problem(
                "season.cycle-too-long",
                $"From {Iso(previous.PlusDays(1))} to {Iso(stints[^1].Last)} is {days} days; a planning year has {LongestCycleInWeeks} weeks at most. Plan the seasons one after the other, or move the last day of the season before.",
                "season.previousLastDay"));
        }

        var weeks = stints.Sum(s => (Period.DaysBetween(s.First, s.Last) / 7) + 1);
        if (weeks > LongestStintsInWeeks)
        {
            problems.Add(new Problem(
                "season.stints-too-long",
                $"The stints hold {weeks} weeks; {LongestStintsInWeeks} at most leave room to recover and rebuild. Shorten a stint or add a break.",
                "season.stints"));
        }

        return problems.Count > 0 ? new Result<Season>.Failed(problems) : new Season(previous, [.. stints]);
    }

    private static IEnumerable<Problem> StintProblems(IReadOnlyList<Stint> stints)
    {
        for (var i = 0; i < stints.Count; i++)
        {
            var (first, last) = (stints[i].First, stints[i].Last);
            if ((PlanDates.Problem(first, "season", $"season.stints[{i}].first") ?? PlanDates.Problem(last, "season", $"season.stints[{i}].last")) is { } outside)
            {
                yield return outside;
            }
            else if (last < first)
            {
                yield return new Problem("season.stint-reversed", $"The stint ends on {Iso(last)}, before it starts on {Iso(first)}. Swap the two dates.", $"season.stints[{i}].last");
            }
            else if (i > 0 && first <= stints[i - 1].Last)
            {
                yield return new Problem(
                    "season.stints-overlap",
                    $"This stint starts on {Iso(first)}, but the one before it lasts until {Iso(stints[i - 1].Last)}. List stints in order and leave at least a day between them, or join them.",
                    $"season.stints[{i}].first");
            }
        }
    }

    private static string Iso(LocalDate date) => NodaTime.Text.LocalDatePattern.Iso.Format(date);
}
