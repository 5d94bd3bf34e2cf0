using NodaTime;

namespace ClubCycle.Planning.Rules;

/// <summary>One place where a plan breaks a rule.</summary>
/// <param name="Rule">Id such as <c>R36</c>, or <c>slot-dropped</c> and the like for the engine's own findings.</param>
/// <param name="Week">First day of the week; null when the whole cycle is meant.</param>
/// <param name="Message">What is so, with the figures, and what forced it where the engine knows.</param>
/// <param name="Mend">What a coach can do about it.</param>
/// <param name="Source">Where the rule comes from; says so when it is editorial.</param>
/// <param name="Facts">The same as figures; null when read from a plan file.</param>
public sealed record Finding(string Rule, Strength Strength, LocalDate? Week, string Message, string Mend, string Source, FindingFacts? Facts = null)
{
    /// <summary>What left the planner no better choice; null when nothing did. Of the facts, plan files keep only this.</summary>
    public Cause? ForcedBy { get; init; } = Facts?.ForcedBy;
}
