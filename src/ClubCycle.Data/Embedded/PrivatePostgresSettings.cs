namespace ClubCycle.Data.Embedded;

/// <summary>Where a private PostgreSQL lives and how careful it is.</summary>
public sealed record PrivatePostgresSettings
{
    /// <summary>Made when missing. Only what is inside its <c>postgres</c> folder is ours.</summary>
    public required string DataFolder { get; init; }

    /// <summary>Folders to look for programs in; null means the usual ones.</summary>
    public IReadOnlyList<string>? ProgramFolders { get; init; }

    /// <summary>Null for any free one, another at each start.</summary>
    public int? Port { get; init; }

    /// <summary>False only for tests: a power cut may then lose everything.</summary>
    public bool Durable { get; init; } = true;

    /// <summary><c>CLUBCYCLE_DATA</c>, else the user's data folder. Root's home is closed to the unprivileged user, so root gets a system folder.</summary>
    public static string DefaultDataFolder()
    {
        if (Environment.GetEnvironmentVariable("CLUBCYCLE_DATA") is { Length: > 0 } named)
            return Path.GetFullPath(named);
        return Environment.IsPrivilegedProcess && !OperatingSystem.IsWindows()
            ? "/var/lib/clubcycle"
            : Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify), "clubcycle");
    }
}
