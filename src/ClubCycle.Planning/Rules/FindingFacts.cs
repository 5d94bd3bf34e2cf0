namespace ClubCycle.Planning.Rules;

/// <summary>The figures behind a finding.</summary>
/// <param name="Measured">What the plan has, in <paramref name="Unit"/>.</param>
/// <param name="Limit">What the rule asks for, in the same unit.</param>
/// <param name="Unit">As people write it: <c>h</c>, <c>days</c>, <c>weeks</c>, <c>AU</c>, <c>%</c>, <c>sessions</c>, <c>m</c>, <c>contacts</c>.</param>
/// <param name="Sessions">Uids of the sessions involved; empty when a week, a phase or the year as a whole is meant.</param>
/// <param name="ForcedBy">What left the planner no better choice; null when nothing did.</param>
public sealed record FindingFacts(double Measured, double Limit, string Unit, IReadOnlyList<Guid> Sessions, Cause? ForcedBy);

/// <summary>What can force a plan to break a rule.</summary>
public enum Cause
{
    /// <summary>Practices and matches, whose number and length the planner does not choose.</summary>
    Contacts,

    /// <summary>The dates of matches.</summary>
    Fixtures,

    /// <summary>First and last match days, which leave a gap too short or too long.</summary>
    SeasonDates,

    /// <summary>Closed days.</summary>
    ClosedDays,

    /// <summary>A coach fixed, left out or fixed the length of something.</summary>
    Coach,

    /// <summary>What the template asks for.</summary>
    Template,

    /// <summary>A limit that protects the age group, which is the stricter rule here.</summary>
    AgeGroup,

    /// <summary>The squad's times and free days have no better place.</summary>
    Times,

    /// <summary>Sessions are as short as is still worth it.</summary>
    ShortestSessions,

    /// <summary>The squad joined in the middle of the cycle.</summary>
    JoinedLate,

    /// <summary>An unloading week, a taper or a gentle return, which is the stricter rule here.</summary>
    EasierWeek,

    /// <summary>It is history: what players did or were told stays as it was.</summary>
    Past,
}
