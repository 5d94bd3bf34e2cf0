namespace ClubCycle.Web.Features.Exercises;

/// <summary>The set-up of one drill, seen from above.</summary>
/// <param name="Exercise">Its name in the exercise library.</param>
/// <param name="Width">Metres across the picture.</param>
/// <param name="Length">Metres down the picture.</param>
/// <param name="Setup">All of it in one sentence, for those who do not see it.</param>
public sealed record Sketch(string Exercise, double Width, double Length, string Setup, IReadOnlyList<SketchItem> Items);
