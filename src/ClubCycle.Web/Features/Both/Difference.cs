namespace ClubCycle.Web.Features.Both;

/// <summary>One thing of a form in which what was typed and what somebody else saved are not the same.</summary>
/// <param name="What">As the form labels it.</param>
public sealed record Difference(string What, string Mine, string Theirs)
{
    /// <summary>Those of the pairs that differ, in order; an empty field is called so.</summary>
    public static IReadOnlyList<Difference> Of(params IEnumerable<(string What, string Mine, string Theirs)> fields) =>
        [.. fields.Where(f => f.Mine != f.Theirs).Select(f => new Difference(f.What, Told(f.Mine), Told(f.Theirs)))];

    private static string Told(string text) => text.Length == 0 ? Say("nothing") : text;
}
