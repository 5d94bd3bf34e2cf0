using System.Collections.Frozen;

namespace ClubCycle.Web.Features.Exercises;

/// <summary>Set-ups of the exercise library's drills. Measures of agility drills and games are our suggestions (editorial); those of sprints span what session sheets ask for.</summary>
public static partial class Sketches
{
    public static IReadOnlyList<Sketch> All { get; } = [.. Agility, .. Sprints, .. Games];

    private static readonly FrozenDictionary<string, Sketch> ByExercise = All.ToFrozenDictionary(sketch => sketch.Exercise, StringComparer.Ordinal);

    /// <summary>Null for an exercise without a sketch.</summary>
    public static Sketch? Find(string exercise) => ByExercise.GetValueOrDefault(exercise);
}
