namespace ClubCycle.Planning.Measures;

/// <summary>The sex an equation was fitted for. Null where it is not known.</summary>
public enum Sex
{
    Female,
    Male,
}
