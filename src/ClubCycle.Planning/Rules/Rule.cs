namespace ClubCycle.Planning.Rules;

/// <summary>A checkable statement about a plan, with where it comes from.</summary>
/// <param name="Id">As in the trade reference: <c>R36</c>.</param>
/// <param name="Sentence">What holds when the rule holds, as a coach would say it.</param>
/// <param name="Threshold">The numbers, for the rules list.</param>
/// <param name="Scope">Whom and when it concerns.</param>
/// <param name="Mend">What to do when it does not hold.</param>
/// <param name="Source">Publication, or a plain word that the number is editorial.</param>
/// <param name="Check">One finding for each place where the plan breaks it.</param>
public sealed record Rule(
    string Id,
    Strength Strength,
    string Sentence,
    string Threshold,
    string Scope,
    string Mend,
    string Source,
    PlanRule Check)
{
    internal Finding Finding(NodaTime.LocalDate? week, string message, FindingFacts facts, Strength? strength = null) => new(Id, strength ?? Strength, week, message, Mend, Source, facts);
}

/// <summary>Finds the places where a plan breaks a rule.</summary>
public delegate IEnumerable<Finding> PlanRule(Rule rule, CheckedPlan plan);
