using ClubCycle.Data.Edits;
using ClubCycle.Planning;

namespace ClubCycle.Web.Features.Both;

/// <summary>What somebody else saved while a form was open.</summary>
public sealed record Meanwhile<T>(T Theirs, LastSave? Last)
    where T : class
{
    /// <summary>Theirs, when a save was refused because they were first; null when it was refused for another reason.</summary>
    /// <param name="theirs">Fetches what is saved now; null when it is gone.</param>
    public static async Task<Meanwhile<T>?> OfAsync(IReadOnlyList<Problem> refused, Func<Task<T?>> theirs, Func<Task<LastSave?>> last) =>
        refused.Any(p => p.Code.EndsWith(".changed-meanwhile", StringComparison.Ordinal)) && await theirs() is { } saved ? new Meanwhile<T>(saved, await last()) : null;
}
