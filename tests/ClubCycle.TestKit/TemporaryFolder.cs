namespace ClubCycle.TestKit;

/// <summary>A folder that goes with its test.</summary>
public sealed class TemporaryFolder : IDisposable
{
    private TemporaryFolder(string path) => Path = path;

    public string Path { get; }

    /// <summary>Started by root, PostgreSQL runs as another user, who must be able to enter.</summary>
    public static TemporaryFolder ReachableByAll(string prefix = "clubcycle-")
    {
        var folder = Directory.CreateTempSubdirectory(prefix).FullName;
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(folder, (UnixFileMode)0b111_101_101);
        return new TemporaryFolder(folder);
    }

    public void Dispose()
    {
        if (Directory.Exists(Path))
            Directory.Delete(Path, recursive: true);
    }
}
