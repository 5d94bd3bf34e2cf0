namespace ClubCycle.NothingLost.Upgrades;

/// <summary>The programs of one version.</summary>
/// <param name="Web">ClubCycle.Web.dll.</param>
/// <param name="Editor">ClubCycle.NothingLost.dll over that version's stores.</param>
internal sealed record Build(string Web, string Editor)
{
    /// <param name="folder">Where a release build puts each program: <c>artifacts/bin</c>.</param>
    public static Build In(string folder) => new(Program(folder, "ClubCycle.Web"), Program(folder, "ClubCycle.NothingLost"));

    private static string Program(string folder, string name) => Path.GetFullPath(Path.Combine(folder, name, "release", $"{name}.dll"));
}
