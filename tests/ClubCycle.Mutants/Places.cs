using System.Runtime.CompilerServices;

namespace ClubCycle.Mutants;

/// <param name="Planning">The sources.</param>
/// <param name="Generated">What the build adds to the sources.</param>
/// <param name="Tests">The built tests.</param>
internal sealed record Places(string Planning, string Generated, string Tests)
{
    public static Places Here([CallerFilePath] string file = "")
    {
        var root = Path.GetFullPath(Path.Combine(Path.GetDirectoryName(file)!, "..", ".."));
        var configuration = Path.GetFileName(Path.TrimEndingDirectorySeparator(AppContext.BaseDirectory));
        return new(
            Path.Combine(root, "src", "ClubCycle.Planning"),
            Path.Combine(root, "artifacts", "obj", "ClubCycle.Planning", configuration),
            Path.Combine(root, "artifacts", "bin", "ClubCycle.Planning.Tests", configuration));
    }
}
