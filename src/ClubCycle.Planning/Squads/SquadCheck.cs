using NodaTime;

namespace ClubCycle.Planning.Squads;

/// <summary>What a squad must be for its year to be planned.</summary>
public static class SquadCheck
{
    public const int LongestName = 100;
    public const int MostPractices = 7;

    public static IReadOnlyList<Problem> Check(Squad squad)
    {
        List<Problem> problems = [];
        if (TypedText.NameProblem(squad.Name, LongestName, "squad.name", "squad's name", "squad.name") is { } unreadable)
        {
            problems.Add(unreadable);
        }

        if (!IsDay(squad.MatchDay))
        {
            problems.Add(new Problem("squad.match-day", "Say on which weekday the squad usually plays.", "squad.matchDay"));
        }

        if (!Enum.IsDefined(squad.TrainingAge))
        {
            problems.Add(new Problem("squad.training-age", "Say for how many years the squad has trained in a structured way.", "squad.trainingAge"));
        }

        if (squad.Practices.Count > MostPractices)
        {
            problems.Add(new Problem("squad.too-many-practices", $"A week holds {MostPractices} practices at most. Remove some.", "squad.practices"));
        }

        for (var i = 0; i < squad.Practices.Count; i++)
        {
            var practice = squad.Practices[i];
            if (!IsDay(practice.Day))
            {
                problems.Add(new Problem("squad.practice-day", "Say on which weekday the practice is.", $"squad.practices[{i}].day"));
            }

            if (practice.Minutes is < 15 or > 240)
            {
                problems.Add(new Problem("squad.practice-minutes", $"A practice lasts 15 to 240 minutes, not {practice.Minutes}.", $"squad.practices[{i}].minutes"));
            }

            if (TypedText.LineProblem(practice.Place, Practice.LongestPlace, "squad.practice-place", "place", $"squad.practices[{i}].place") is { } misplaced)
            {
                problems.Add(misplaced with { Code = "squad.practice-place" });
            }

            if (EndsAfterMidnight(practice.Start, practice.Minutes))
            {
                problems.Add(new Problem("squad.practice-past-midnight", "The practice would end after midnight. Start it earlier or shorten it.", $"squad.practices[{i}].start"));
            }

            if (squad.Practices.Take(i).Any(p => p.Day == practice.Day && p.Phases.Intersect(practice.Phases).Any()))
            {
                problems.Add(new Problem("squad.practice-twice-a-day", $"There are two practices on {practice.Day} in the same phase. Join them or move one.", $"squad.practices[{i}].day"));
            }
        }

        for (var i = 0; i < squad.Windows.Count; i++)
        {
            var window = squad.Windows[i];
            if (window.To <= window.From)
            {
                problems.Add(new Problem("squad.window-reversed", "The window ends before it starts. Swap the two times.", $"squad.windows[{i}].to"));
            }

            if (window.Days.Count == 0 || !window.Days.All(IsDay))
            {
                problems.Add(new Problem("squad.window-without-days", "Name at least one weekday for the window.", $"squad.windows[{i}].days"));
            }
        }

        return problems;
    }

    private static bool IsDay(IsoDayOfWeek day) => day is >= IsoDayOfWeek.Monday and <= IsoDayOfWeek.Sunday;

    private static bool EndsAfterMidnight(LocalTime start, int minutes) => (start.TickOfDay / NodaConstants.TicksPerMinute) + minutes > 24 * 60;
}
