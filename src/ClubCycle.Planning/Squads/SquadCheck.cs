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
        if (string.IsNullOrWhiteSpace(squad.Name))
        {
            problems.Add(new Problem("squad.name-missing", "Give the squad a name.", "squad.name"));
        }
        else if (squad.Name.Length > LongestName)
        {
            problems.Add(new Problem("squad.name-too-long", $"The name has {squad.Name.Length} characters; use {LongestName} at most.", "squad.name"));
        }

        else if (squad.Name.Any(char.IsControl))
        {
            problems.Add(new Problem("squad.name-control-character", "The name holds a control character, such as a line break. Write it on one line.", "squad.name"));
        }

        if (squad.Practices.Count > MostPractices)
        {
            problems.Add(new Problem("squad.too-many-practices", $"A week holds {MostPractices} practices at most. Remove some.", "squad.practices"));
        }

        for (var i = 0; i < squad.Practices.Count; i++)
        {
            var practice = squad.Practices[i];
            if (practice.Minutes is < 15 or > 240)
            {
                problems.Add(new Problem("squad.practice-minutes", $"A practice lasts 15 to 240 minutes, not {practice.Minutes}.", $"squad.practices[{i}].minutes"));
            }

            if (practice.Place is { } place && (place.Length > Practice.LongestPlace || place.Any(char.IsControl)))
            {
                problems.Add(new Problem("squad.practice-place", $"A place has {Practice.LongestPlace} characters at most, on one line. Shorten it.", $"squad.practices[{i}].place"));
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

            if (window.Days.Count == 0)
            {
                problems.Add(new Problem("squad.window-without-days", "Name at least one weekday for the window.", $"squad.windows[{i}].days"));
            }
        }

        return problems;
    }

    private static bool EndsAfterMidnight(LocalTime start, int minutes) => (start.TickOfDay / NodaConstants.TicksPerMinute) + minutes > 24 * 60;
}
