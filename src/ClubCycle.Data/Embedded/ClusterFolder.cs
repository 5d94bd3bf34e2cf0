using System.Globalization;

namespace ClubCycle.Data.Embedded;

/// <summary>The folder of one private cluster, held by one app at a time. The lock ends with the process, however it ends.</summary>
internal sealed class ClusterFolder : IDisposable
{
    private readonly FileStream hold;

    private ClusterFolder(string root, FileStream hold)
    {
        Root = root;
        this.hold = hold;
    }

    public string Root { get; }

    public string Cluster => Path.Combine(Root, "cluster");

    /// <summary>initdb works here; renamed when done, so that a half-made cluster is never taken for a whole one.</summary>
    public string Unfinished => Path.Combine(Root, "cluster.unfinished");

    public string Log => Path.Combine(Root, "postgres.log");

    public string Passwords => Path.Combine(Root, "pgpass");

    public bool HasCluster => File.Exists(Path.Combine(Cluster, "PG_VERSION"));

    /// <summary>The major version that made the cluster; null before there is one.</summary>
    public int? Major => HasCluster ? int.Parse(File.ReadAllText(Path.Combine(Cluster, "PG_VERSION")).Trim(), CultureInfo.InvariantCulture) : null;

    /// <summary>The server that says it runs here; null when none does. It may be long dead.</summary>
    public int? NamedServer
    {
        get
        {
            var file = Path.Combine(Cluster, "postmaster.pid");
            return File.Exists(file) && int.TryParse(File.ReadLines(file).FirstOrDefault(), CultureInfo.InvariantCulture, out var id) ? id : null;
        }
    }

    /// <exception cref="DatabaseUnavailableException">The folder cannot be written, or another app holds it.</exception>
    public static ClusterFolder Take(string dataFolder)
    {
        var root = Path.Combine(Path.GetFullPath(dataFolder), "postgres");
        try
        {
            Directory.CreateDirectory(root);
            return new ClusterFolder(root, new FileStream(Path.Combine(root, "lock"), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None));
        }
        catch (IOException held) when (IsHeld(held))
        {
            throw DatabaseUnavailableException.Because(
                "database.folder-in-use",
                $"Another ClubCycle is already running on {dataFolder}. Stop it first, or name another folder with CLUBCYCLE_DATA.",
                held);
        }
        catch (Exception refused) when (refused is IOException or UnauthorizedAccessException)
        {
            throw NotWritable(dataFolder, refused);
        }
    }

    public static DatabaseUnavailableException NotWritable(string folder, Exception? inner = null) => DatabaseUnavailableException.Because(
        "database.folder-not-writable",
        $"The data folder {folder} cannot be written. Make it writable for this user, or name another folder with CLUBCYCLE_DATA.",
        inner);

    public string LastLogLines()
    {
        if (!File.Exists(Log))
            return "";
        using var log = new StreamReader(new FileStream(Log, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete));
        var text = log.ReadToEnd();
        return text.Length <= 4000 ? text : text[^4000..];
    }

    public void Dispose() => hold.Dispose();

    // Windows' sharing violation; EWOULDBLOCK of flock on Linux and on macOS.
    private static bool IsHeld(IOException failure) => failure.HResult is unchecked((int)0x80070020) or 11 or 35;
}
