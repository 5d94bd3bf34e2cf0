using ClubCycle.Planning;

namespace ClubCycle.Data;

/// <summary>The two answers every store has: it is not there (or not yours: the same answer), or somebody else saved first.</summary>
internal static class Refusal
{
    /// <param name="thing">Lower case, as in the problem's code: <c>squad</c>.</param>
    public static Problem NotFound(string thing) =>
        new($"{thing}.not-found", $"There is no such {thing}. It may have been removed; go back and reload the list.");

    /// <param name="thing">Lower case, as in the problem's code: <c>squad</c>.</param>
    public static Problem Meanwhile(string thing) =>
        new($"{thing}.changed-meanwhile", $"Somebody else changed this {thing} after you opened it. Reload it, look at their change, and make yours again.");
}
