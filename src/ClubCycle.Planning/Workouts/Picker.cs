using ClubCycle.Planning.Squads;

namespace ClubCycle.Planning.Workouts;

/// <summary>Takes exercises from the library for one sheet: another one each turn, none twice.</summary>
internal sealed class Picker(AgeGroup ageGroup, int turn)
{
    private readonly HashSet<string> _taken = new(StringComparer.Ordinal);

    public Exercise Take(ExerciseUse use) => TryTake(use) ?? throw new InvalidOperationException($"The exercise library has nothing left for \"{use}\" at {ageGroup}.");

    /// <summary>Null when every exercise for this use is already on the sheet.</summary>
    public Exercise? TryTake(ExerciseUse use)
    {
        var pool = ExerciseLibrary.For(use, ageGroup);
        for (var i = 0; i < pool.Count; i++)
        {
            var exercise = pool[(turn + i) % pool.Count];
            if (_taken.Add(exercise.Name))
            {
                return exercise;
            }
        }

        return null;
    }
}
