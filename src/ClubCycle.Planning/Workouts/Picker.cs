using ClubCycle.Planning.Squads;

namespace ClubCycle.Planning.Workouts;

/// <summary>Takes exercises from the library for one sheet: another one each turn, none twice.</summary>
internal sealed class Picker(AgeGroup ageGroup, TrainingAge trainingAge, int turn)
{
    private readonly Exercise[][] _pools = ExerciseLibrary.PoolsOf(ageGroup, trainingAge);
    private readonly List<Exercise> _taken = new(16);

    public Exercise Take(ExerciseUse use)
    {
        var exercise = TryPeek(use) ?? throw new InvalidOperationException($"The exercise library has nothing left for \"{use}\" at {ageGroup} with training age \"{trainingAge}\".");
        Take(exercise);
        return exercise;
    }

    public void Take(Exercise exercise) => _taken.Add(exercise);

    /// <summary>The next exercise for this use; null when all of them are on the sheet already.</summary>
    public Exercise? TryPeek(ExerciseUse use)
    {
        var pool = _pools[(int)use];
        for (var i = 0; i < pool.Length; i++)
        {
            var exercise = pool[(turn + i) % pool.Length];
            if (!IsTaken(exercise))
            {
                return exercise;
            }
        }

        return null;
    }

    private bool IsTaken(Exercise exercise)
    {
        foreach (var taken in _taken)
        {
            if (ReferenceEquals(taken, exercise))
            {
                return true;
            }
        }

        return false;
    }
}
