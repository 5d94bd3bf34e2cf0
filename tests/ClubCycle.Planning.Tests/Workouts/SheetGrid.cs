using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Weeks;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Tests.Workouts;

/// <summary>Every workout for every age group that may have it, over training ages, phases, weeks, loadings, minutes and turns.</summary>
internal static class SheetGrid
{
    private static readonly int[] Weeks = [1, 4, 9];
    private static readonly int[] Lengths = [5, 10, 22, 30, 45, 90];

    /// <summary>One that holds and one that builds.</summary>
    private static readonly PhaseKind[] Phases = [PhaseKind.InSeason, PhaseKind.PreSeason];

    public static IEnumerable<(Workout Workout, DoseContext Context, SessionSheet Sheet)> All(params string[] workouts)
    {
        foreach (var workout in WorkoutCatalogue.All.Where(w => workouts.Length == 0 || workouts.Contains(w.Name)))
        {
            foreach (var group in AgeGroup.All.Where(workout.AllowedFor))
            {
                foreach (var context in Contexts(group))
                {
                    yield return (workout, context, SessionSheets.For(workout, context));
                }
            }
        }
    }

    /// <summary>Describes the sheet only when it fails: the grid is large.</summary>
    public static void Holds(bool holds, Workout workout, DoseContext context, object? detail = null)
    {
        if (!holds)
        {
            Assert.Fail($"{workout.Name}, {context}: {(detail is SessionSheet sheet ? string.Join(", ", sheet.Steps.Select(step => step.Name)) : detail)}");
        }
    }

    private static IEnumerable<DoseContext> Contexts(AgeGroup ages) =>
        from trainingAge in Enum.GetValues<TrainingAge>()
        from phase in Phases
        from week in Weeks
        from loading in Enum.GetValues<WeekLoading>()
        from minutes in Lengths
        from turn in new[] { 0, 3 }
        select new DoseContext(ages, trainingAge, phase, week, loading, minutes, turn);
}
