namespace ClubCycle.Planning.Workouts;

/// <summary>One exercise's dose at the height of the phase, in this week if it were a loading week, and today.</summary>
/// <param name="Lighter">This week steps back: where the dose alone barely does, exercises are left out.</param>
internal sealed record SetPlan(SetDose Fullest, SetDose Loading, SetDose Today, bool Lighter);
