using ClubCycle.Planning.Squads;
using static ClubCycle.Planning.Workouts.Hardness;
using static ClubCycle.Planning.Workouts.Quality;

namespace ClubCycle.Planning.Workouts;

/// <summary>Every kind of session a template may ask for, with its planned effort (editorial).</summary>
public static class WorkoutCatalogue
{
    public static IReadOnlyList<Workout> All { get; } =
    [
        new("easy-run", "Easy run", [AerobicEndurance], Easy, 3, Outdoor: true, YoungestUnder: 13),
        new("core-and-easy-run", "Core and easy run", [CoreStrength, AerobicEndurance], Easy, 3, Outdoor: true, YoungestUnder: 13),
        new("strength-circuit", "Strength circuit", [MuscularEndurance, CoreStrength], Moderate, 4, YoungestUnder: 15),
        new("core-and-circuit", "Core and circuit", [CoreStrength, MuscularEndurance], Moderate, 4, YoungestUnder: 15),
        new("strength-upkeep", "Strength upkeep", [MuscularEndurance], Moderate, 5, YoungestUnder: 99),
        new("heavy-lift", "Heavy lifting", [Speed], Hard, 7, HeavyLift: true, YoungestUnder: 17),
        new("jumps", "Jumps", [Speed], Hard, 6, Jumps: JumpClass.Medium, YoungestUnder: 15),
        new("lift-and-jump", "Lift and jump", [Speed], Hard, 7, HeavyLift: true, Jumps: JumpClass.Medium, YoungestUnder: 17),
        new("low-jumps", "Low jumps and landing", [Speed, CoreStrength], Moderate, 4, Jumps: JumpClass.Low, YoungestUnder: 11),
        new("sprint-intervals", "Sprint intervals", [Speed], Hard, 8, Sprint: true, Outdoor: true, YoungestUnder: 13),
        new("hill-sprints", "Hill sprints", [Speed], Hard, 8, Sprint: true, Outdoor: true, YoungestUnder: 15),
        new("reactive-agility", "Reactive agility", [Agility], Moderate, 6, Outdoor: true, InsidePractice: true, YoungestUnder: 11),
        new("strides", "Strides", [Speed], Moderate, 4, Outdoor: true, YoungestUnder: 13),
        new("technique-lifting", "Lifting technique", [MuscularEndurance, CoreStrength], Moderate, 4, YoungestUnder: 13),
        new("body-weight", "Body-weight strength", [MuscularEndurance, CoreStrength], Easy, 3, YoungestUnder: 11),
        new("movement-games", "Movement games", [Agility], Easy, 3, InsidePractice: true, OnlyInsidePractice: true),
        new("tag-and-mirror", "Tag and mirror games", [Agility, Speed], Easy, 3, Outdoor: true, InsidePractice: true),
    ];

    private static readonly Dictionary<string, Workout> ByName = All.ToDictionary(w => w.Name, StringComparer.Ordinal);

    /// <summary>Other workouts of the same purpose for an age group: they share a quality; those as hard come first.</summary>
    public static IReadOnlyList<Workout> InsteadOf(Workout workout, AgeGroup ages) =>
    [
        .. All.Where(w => w != workout && w.AllowedFor(ages) && w.Qualities.Intersect(workout.Qualities).Any())
            .OrderBy(w => Math.Abs(w.Hardness - workout.Hardness)),
    ];

    public static Workout? Find(string name) => ByName.GetValueOrDefault(name);
}
