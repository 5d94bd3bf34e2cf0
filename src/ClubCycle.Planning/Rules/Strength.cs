namespace ClubCycle.Planning.Rules;

/// <summary>How binding a rule is: <c>must</c>, <c>should</c>, <c>note</c>.</summary>
public enum Strength
{
    Must,
    Should,
    Note,
}
