namespace ClubCycle.Planning.Workouts;

/// <summary>A kind of session that a template can ask for. The catalogue is <see cref="Workouts"/>.</summary>
/// <param name="Name">As templates name it: <c>easy-run</c>.</param>
/// <param name="Title">As players read it: <c>Easy run</c>.</param>
/// <param name="Effort">Planned session-RPE on CR10 (0–10). The table is editorial.</param>
/// <param name="HeavyLift">Lower-body lifting at 80 % of maximum or more: needs 48 h to the next one.</param>
/// <param name="Jumps">Jump class; <see cref="JumpClass.None"/> when there are no jumps.</param>
/// <param name="Sprint">Runs at 95 % of own maximum or faster.</param>
/// <param name="InsidePractice">May take place inside a practice.</param>
/// <param name="YoungestUnder">Smallest youth age group that may be given it (8 for all, 99 for adults only).</param>
/// <param name="OnlyInsidePractice">Games of the youngest, who have no sessions of their own.</param>
public sealed record Workout(
    string Name,
    string Title,
    IReadOnlyList<Quality> Qualities,
    Hardness Hardness,
    int Effort,
    bool HeavyLift = false,
    JumpClass Jumps = JumpClass.None,
    bool Sprint = false,
    bool Outdoor = false,
    bool InsidePractice = false,
    int YoungestUnder = 8,
    bool OnlyInsidePractice = false)
{
    public bool AllowedFor(Squads.AgeGroup group) => group.Under is not { } under || under >= YoungestUnder;
}
