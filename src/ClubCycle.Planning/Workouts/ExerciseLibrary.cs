using System.Collections.Frozen;
using System.Reflection;
using System.Text;
using ClubCycle.Planning.Squads;

namespace ClubCycle.Planning.Workouts;

/// <summary>Every exercise, drill and game that session sheets draw on: JSON files inside the assembly, read and checked once at first use.</summary>
public static class ExerciseLibrary
{
    private static readonly Lazy<Exercise[]> InOrder = new(() => [.. Read([.. Files()]).OrderBy(exercise => exercise.Name, StringComparer.Ordinal)]);

    private static readonly Lazy<FrozenDictionary<string, Exercise>> ByName = new(() => All.ToFrozenDictionary(exercise => exercise.Name, StringComparer.Ordinal));

    private static readonly Lazy<FrozenDictionary<AgeGroup, Exercise[][][]>> Pools = new(() => AgeGroup.All.ToFrozenDictionary(
        ageGroup => ageGroup,
        ageGroup => Enum.GetValues<TrainingAge>().Select(trainingAge => Enum.GetValues<ExerciseUse>().Select(use => Pool(use, ageGroup, trainingAge)).ToArray()).ToArray()));

    /// <summary>In order of name.</summary>
    public static IReadOnlyList<Exercise> All => InOrder.Value;

    public static Exercise? Find(string name) => ByName.Value.GetValueOrDefault(name);

    /// <summary>The exercises for one place in a session that the youngest of an age group may do with so much training behind them, in a fixed order.</summary>
    public static IReadOnlyList<Exercise> For(ExerciseUse use, AgeGroup ageGroup, TrainingAge trainingAge) => PoolsOf(ageGroup, trainingAge)[(int)use];

    /// <summary>One pool for each <see cref="ExerciseUse"/>, in its order.</summary>
    internal static Exercise[][] PoolsOf(AgeGroup ageGroup, TrainingAge trainingAge) => Pools.Value[ageGroup][(int)trainingAge];

    /// <summary>Reads library files that belong together.</summary>
    /// <exception cref="InvalidDataException">An entry is wrong; the message names file, line and entry.</exception>
    internal static IReadOnlyList<Exercise> Read(params IReadOnlyList<(string File, byte[] Json)> files)
    {
        List<LibraryEntry> entries = [.. files.SelectMany(file => LibraryFile.Read(file.File, file.Json))];
        LibraryChecks.Together(entries);
        return [.. entries.Select(entry => entry.Exercise)];
    }

    private static Exercise[] Pool(ExerciseUse use, AgeGroup ageGroup, TrainingAge trainingAge) =>
        [.. All.Where(exercise => exercise.YoungestAge <= ageGroup.YoungestAge && exercise.YoungestTrainingAge <= trainingAge && exercise.Uses.Contains(use))];

    private static IEnumerable<(string File, byte[] Json)> Files()
    {
        var assembly = Assembly.GetExecutingAssembly();
        foreach (var file in assembly.GetManifestResourceNames().Where(name => name.StartsWith("Workouts/Library/", StringComparison.Ordinal)).Order(StringComparer.Ordinal))
        {
            using StreamReader reader = new(assembly.GetManifestResourceStream(file)!);
            yield return (file, Encoding.UTF8.GetBytes(reader.ReadToEnd()));
        }
    }
}
