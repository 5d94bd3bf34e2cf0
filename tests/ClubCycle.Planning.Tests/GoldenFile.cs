using System.Runtime.CompilerServices;

namespace ClubCycle.Planning.Tests;

/// <summary>Approved files. <c>CLUBCYCLE_WRITE_GOLDENS=1</c> writes them again: read the diff before committing it.</summary>
internal static class GoldenFile
{
    public static string Folder { get; } = SourceFolder();

    public static void Matches(string relativePath, string actual)
    {
        var path = Path.Combine(Folder, relativePath);
        if (Environment.GetEnvironmentVariable("CLUBCYCLE_WRITE_GOLDENS") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, actual);
        }

        Assert.True(File.Exists(path), $"{relativePath} is missing; run with CLUBCYCLE_WRITE_GOLDENS=1 and read what it writes");
        Assert.Equal(File.ReadAllText(path), actual);
    }

    private static string SourceFolder([CallerFilePath] string here = "") => Path.GetDirectoryName(here)!;
}
