using System.Security.Cryptography;
using System.Text.RegularExpressions;
using ClubCycle.Planning;
using NodaTime;
using NodaTime.Text;

namespace ClubCycle.Data.Backups;

/// <summary>A folder with one whole backup: a dump, its manifest, and the checksums of both.</summary>
internal sealed partial record BackupFolder(string Path, BackupManifest Manifest)
{
    public const string Dump = "database.dump";

    private const string ManifestFile = "manifest.json";

    /// <summary>In the form that <c>sha256sum --check</c> reads.</summary>
    private const string ChecksumFile = "SHA256SUMS";
    private const string Unfinished = ".unfinished-";
    private const UnixFileMode OwnersFolder = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;

    private static readonly InstantPattern NamePattern = InstantPattern.CreateWithInvariantCulture("'clubcycle-'uuuuMMdd'T'HHmmss'Z'");

    public string DumpFile => System.IO.Path.Combine(Path, Dump);

    /// <summary>Where a backup grows until it is whole: under a name that nobody takes for one.</summary>
    public static string Begin(string folder, Instant now)
    {
        var growing = System.IO.Path.Combine(folder, Unfinished + NamePattern.Format(now));
        Directory.CreateDirectory(folder);

        // Children's names lie in it.
        if (OperatingSystem.IsWindows())
        {
            Directory.CreateDirectory(growing);
        }
        else
        {
            Directory.CreateDirectory(growing, OwnersFolder);
        }

        return growing;
    }

    /// <summary>Writes manifest and checksums, waits until all is on disk, and gives the folder its name.</summary>
    public static async Task<BackupFolder> FinishAsync(string growing, BackupManifest manifest, CancellationToken cancel)
    {
        await File.WriteAllTextAsync(System.IO.Path.Combine(growing, ManifestFile), manifest.Write(), cancel);
        List<string> sums = [];
        foreach (var file in new[] { Dump, ManifestFile })
        {
            sums.Add($"{await ChecksumAsync(System.IO.Path.Combine(growing, file), cancel)}  {file}");
        }

        await File.WriteAllTextAsync(System.IO.Path.Combine(growing, ChecksumFile), string.Join('\n', sums) + "\n", cancel);
        foreach (var file in Directory.EnumerateFiles(growing))
        {
            await using var written = new FileStream(file, FileMode.Open, FileAccess.Write);
            written.Flush(flushToDisk: true);
        }

        var whole = System.IO.Path.Combine(System.IO.Path.GetDirectoryName(growing)!, NamePattern.Format(manifest.MadeAt));
        Directory.Move(growing, whole);
        return new BackupFolder(whole, manifest);
    }

    /// <summary>A backup whose files are what they were when it was made.</summary>
    public static async Task<Result<BackupFolder>> ReadAsync(string path, CancellationToken cancel)
    {
        if (!File.Exists(System.IO.Path.Combine(path, ChecksumFile)) || System.IO.Path.GetFileName(System.IO.Path.TrimEndingDirectorySeparator(path)).StartsWith(Unfinished, StringComparison.Ordinal))
        {
            return new Problem("backup.not-found", $"{path} is not a whole backup. Name a folder like clubcycle-20270228T030000Z that the backup command made.");
        }

        var sums = (await File.ReadAllLinesAsync(System.IO.Path.Combine(path, ChecksumFile), cancel)).Select(line => ChecksumLine().Match(line)).Where(m => m.Success)
            .ToDictionary(m => m.Groups[2].Value, m => m.Groups[1].Value, StringComparer.Ordinal);
        foreach (var file in new[] { Dump, ManifestFile })
        {
            var full = System.IO.Path.Combine(path, file);
            if (!File.Exists(full) || !sums.TryGetValue(file, out var sum) || sum != await ChecksumAsync(full, cancel))
            {
                return new Problem("backup.damaged", $"{file} in {path} is not what it was when the backup was made. Nothing was changed. Use another backup.");
            }
        }

        return BackupManifest.Read(await File.ReadAllTextAsync(System.IO.Path.Combine(path, ManifestFile), cancel)) is { } manifest
            ? new BackupFolder(path, manifest)
            : new Problem("backup.unknown-form", $"The backup in {path} was made by a version of ClubCycle that this one ({BackupManifest.AppVersion}) does not know. Use a newer version.");
    }

    /// <summary>Whole backups in a folder, newest first; what cannot be read is left out.</summary>
    public static async Task<IReadOnlyList<BackupFolder>> AllAsync(string folder, CancellationToken cancel)
    {
        List<BackupFolder> found = [];
        foreach (var path in Directory.Exists(folder) ? Directory.EnumerateDirectories(folder) : [])
        {
            var file = System.IO.Path.Combine(path, ManifestFile);
            if (NamePattern.Parse(System.IO.Path.GetFileName(path)).Success && File.Exists(file) && BackupManifest.Read(await File.ReadAllTextAsync(file, cancel)) is { } manifest)
            {
                found.Add(new BackupFolder(path, manifest));
            }
        }

        return [.. found.OrderByDescending(backup => backup.Manifest.MadeAt)];
    }

    /// <summary>Deletes all but the newest, and what broke off more than a day ago; says how many backups went.</summary>
    public static async Task<int> KeepAsync(string folder, int keep, Instant now, CancellationToken cancel)
    {
        var old = (await AllAsync(folder, cancel)).Skip(keep).ToList();
        old.ForEach(backup => Directory.Delete(backup.Path, recursive: true));
        foreach (var broken in Directory.EnumerateDirectories(folder, Unfinished + "clubcycle-*"))
        {
            if (NamePattern.Parse(System.IO.Path.GetFileName(broken)[Unfinished.Length..]) is { Success: true, Value: var begun } && now - begun > Duration.FromDays(1))
            {
                Directory.Delete(broken, recursive: true);
            }
        }

        return old.Count;
    }

    private static async Task<string> ChecksumAsync(string file, CancellationToken cancel)
    {
        await using var bytes = File.OpenRead(file);
        return Convert.ToHexStringLower(await SHA256.HashDataAsync(bytes, cancel));
    }

    [GeneratedRegex("^([0-9a-f]{64})  (.+)$")]
    private static partial Regex ChecksumLine();
}
