using System.Globalization;
using ClubCycle.Data.Embedded;
using Npgsql;

namespace ClubCycle.Data.Backups;

/// <summary>pg_dump, pg_restore and psql of one major version, found where the server's programs are looked for.</summary>
internal sealed record DumpPrograms(string Folder, int Major)
{
    private static readonly string[] Programs = ["pg_dump", "pg_restore", "psql"];

    /// <summary>The oldest that knows this server or dump: older ones refuse, much newer ones may write what it does not understand.</summary>
    /// <exception cref="DatabaseUnavailableException">There are none.</exception>
    public static async Task<DumpPrograms> ChooseAsync(int major, CancellationToken cancel)
    {
        List<DumpPrograms> found = [];
        foreach (var folder in PostgresPrograms.UsualFolders().Where(IsComplete).Distinct(StringComparer.Ordinal))
        {
            var version = await ProgramRun.OfAsync(PostgresPrograms.In(folder, "pg_dump"), ["--version"], folder, cancel);
            if (version.Succeeded && PostgresPrograms.MajorOf(version.Output) is { } known)
            {
                found.Add(new DumpPrograms(folder, known));
            }
        }

        return found.Where(programs => programs.Major >= major).MinBy(programs => programs.Major) ?? throw DatabaseUnavailableException.Because(
            "backup.no-programs",
            $"pg_dump, pg_restore and psql of PostgreSQL {major} or newer were not found{(found.Count == 0 ? "" : $" (found: {found.Max(programs => programs.Major)})")}. Install them with: {InstallLine.Here}");
    }

    /// <summary>Writes one file with everything a snapshot sees.</summary>
    public async Task DumpAsync(string connectionString, string snapshot, string file, CancellationToken cancel)
    {
        using var to = new Target(connectionString);

        // The policies bind the owner too: pg_dump gives up at them unless it is let through as what it is, and then sees every club.
        var run = await ProgramRun.OfAsync(
            PostgresPrograms.In(Folder, "pg_dump"),
            [.. to.Arguments, "--format=custom", $"--snapshot={snapshot}", "--enable-row-security", "--extension=btree_gist", $"--exclude-schema={BackupRole.Schema}", "--no-owner", "--no-privileges", "--no-comments", "--no-password", $"--file={file}"],
            Path.GetDirectoryName(file)!, cancel, to.Environment);
        if (!run.Succeeded)
        {
            throw DatabaseUnavailableException.Because("backup.not-dumped", $"pg_dump could not read the database: {run.Output} See that there is room on the disk, then try again.");
        }
    }

    /// <summary>Runs a statement and then all that the file holds, in one transaction.</summary>
    public async Task RestoreAsync(string connectionString, string before, string file, CancellationToken cancel)
    {
        using var to = new Target(connectionString);
        using var reader = ProgramRun.Start(PostgresPrograms.In(Folder, "pg_restore"), ["--no-owner", "--no-privileges", "--no-comments", "--file=-", file], Path.GetDirectoryName(file)!);
        using var writer = ProgramRun.Start(
            PostgresPrograms.In(Folder, "psql"), [.. to.Arguments, "--no-password", "--no-psqlrc", "--quiet", "--set=ON_ERROR_STOP=1", "--single-transaction", "--output=" + Nowhere, $"--command={before}; {BackupRole.Aside}", "--file=-", $"--command={BackupRole.Back}"], "/", to.Environment);
        reader.StandardInput.Close();
        var said = Task.WhenAll(reader.StandardError.ReadToEndAsync(cancel), writer.StandardError.ReadToEndAsync(cancel), writer.StandardOutput.ReadToEndAsync(cancel));
        try
        {
            await reader.StandardOutput.BaseStream.CopyToAsync(writer.StandardInput.BaseStream, cancel);
            await reader.WaitForExitAsync(cancel);

            // A dump that breaks off must not look like one that ends: without its end psql would commit half of it.
            if (reader.ExitCode != 0)
            {
                writer.Kill();
            }

            writer.StandardInput.Close();
        }
        catch (IOException)
        {
            // psql stopped at an error; what it said tells.
            reader.Kill();
        }
        catch (OperationCanceledException)
        {
            reader.Kill();
            writer.Kill();
            throw;
        }

        await reader.WaitForExitAsync(cancel);
        await writer.WaitForExitAsync(cancel);
        if (reader.ExitCode != 0 || writer.ExitCode != 0)
        {
            throw DatabaseUnavailableException.Because("restore.failed", $"The backup could not be read into the database, which was left as it was: {string.Join(' ', await said)}");
        }
    }

    private static string Nowhere => OperatingSystem.IsWindows() ? "NUL" : "/dev/null";

    private static bool IsComplete(string folder) => Path.IsPathRooted(folder) && Array.TrueForAll(Programs, program => File.Exists(PostgresPrograms.In(folder, program)));

    /// <summary>A connection string in the words of PostgreSQL's programs. The password goes into a file that only its owner reads, never onto a command line.</summary>
    private sealed class Target : IDisposable
    {
        private readonly string _passwords = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());

        public Target(string connectionString)
        {
            var address = new NpgsqlConnectionStringBuilder(connectionString);
            ClusterPasswords.WriteForOwner(_passwords, $"*:*:*:*:{(address.Password ?? "").Replace("\\", "\\\\", StringComparison.Ordinal).Replace(":", "\\:", StringComparison.Ordinal)}\n");
            Arguments = [$"--host={address.Host}", $"--port={address.Port.ToString(CultureInfo.InvariantCulture)}", $"--username={address.Username}", $"--dbname={address.Database ?? address.Username}"];
            Environment = new Dictionary<string, string>
            {
                ["PGPASSFILE"] = _passwords,
                ["PGOPTIONS"] = "-c app.club=*",
                ["PGAPPNAME"] = "ClubCycle backup",
                ["PGSSLMODE"] = address.SslMode switch { SslMode.VerifyCA => "verify-ca", SslMode.VerifyFull => "verify-full", var mode => mode.ToString().ToLowerInvariant() },
            };
            if (address.SslMode is SslMode.VerifyCA or SslMode.VerifyFull)
            {
                Environment["PGSSLROOTCERT"] = address.RootCertificate ?? "system";
            }
        }

        public IReadOnlyList<string> Arguments { get; }

        public Dictionary<string, string> Environment { get; }

        public void Dispose() => File.Delete(_passwords);
    }
}
