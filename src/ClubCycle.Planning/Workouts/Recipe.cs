namespace ClubCycle.Planning.Workouts;

/// <summary>How a workout's sheet is put together.</summary>
/// <param name="Prepare">The last step of the warm-up.</param>
/// <param name="Main">The main part for so many minutes.</param>
/// <param name="CoreShare">Share of the time between warm-up and cool-down that goes to the trunk.</param>
/// <param name="CoreFirst">Trunk before the main part: only where the main part is steady running, which comes last.</param>
internal sealed record Recipe(ExerciseUse Prepare, Func<DoseContext, Picker, int, List<Step>> Main, double CoreShare = 0, bool CoreFirst = false);
