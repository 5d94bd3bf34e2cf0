using System.Buffers;

namespace ClubCycle.Planning.Rules;

/// <summary>Jumps down from a height that rebound at once. The library holds none; a step from elsewhere is known by its name.</summary>
internal static class ShockJump
{
    private static readonly SearchValues<string> Names = SearchValues.Create(["depth jump", "drop jump", "shock jump"], StringComparison.OrdinalIgnoreCase);

    public static bool IsNamedBy(string step) => step.AsSpan().ContainsAny(Names);
}
