using ClubCycle.Planning.Rules;

namespace ClubCycle.Web.Parts;

/// <summary>How much a finding weighs, in a word.</summary>
internal static class StrengthText
{
    public static string Of(Strength strength) => strength switch
    {
        Strength.Must => Say("must"),
        Strength.Should => Say("should"),
        Strength.Note => Say("note"),
        _ => throw new ArgumentOutOfRangeException(nameof(strength), strength, "Unknown strength"),
    };
}
