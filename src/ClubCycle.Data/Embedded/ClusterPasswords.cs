using System.Security.Cryptography;

namespace ClubCycle.Data.Embedded;

/// <summary>The generated passwords of a private cluster, kept in a file only its owner reads, in the form that psql and pg_dump take as PGPASSFILE.</summary>
internal sealed record ClusterPasswords(string Superuser, string Owner, string App, string Backup)
{
    public const string SuperuserName = "postgres";

    /// <exception cref="DatabaseUnavailableException">The cluster is there, but its passwords are not.</exception>
    public static ClusterPasswords ReadOrMake(ClusterFolder folder)
    {
        if (File.Exists(folder.Passwords))
        {
            var lines = File.ReadAllLines(folder.Passwords).Select(line => line.Split(':')).Where(parts => parts.Length == 5).ToLookup(parts => parts[3], parts => parts[4]);
            if (lines[SuperuserName].FirstOrDefault() is { } superuser && lines[PrivatePostgres.Owner].FirstOrDefault() is { } owner)
                return new ClusterPasswords(superuser, owner, Known(PrivatePostgres.App), Known(PrivatePostgres.Backup));

            string Known(string role) => lines[role].FirstOrDefault() ?? Add(folder, role);
        }

        if (folder.HasCluster)
        {
            throw DatabaseUnavailableException.Because(
                "database.passwords-lost", $"The passwords of the database are missing from {folder.Passwords}. Restore that file from a backup of the folder.");
        }

        var made = new ClusterPasswords(NewPassword(), NewPassword(), NewPassword(), NewPassword());
        WriteForOwner(folder.Passwords, Line(SuperuserName, made.Superuser) + Line(PrivatePostgres.Owner, made.Owner) + Line(PrivatePostgres.App, made.App) + Line(PrivatePostgres.Backup, made.Backup));
        return made;
    }

    public static void WriteForOwner(string path, string text)
    {
        File.Delete(path);
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        using var writer = new StreamWriter(path, options);
        writer.Write(text);
    }

    /// <summary>In a folder of a version that did not know this role.</summary>
    private static string Add(ClusterFolder folder, string role)
    {
        var password = NewPassword();
        File.AppendAllText(folder.Passwords, "\n" + Line(role, password));
        return password;
    }

    private static string NewPassword() => RandomNumberGenerator.GetHexString(48, lowercase: true);

    private static string Line(string role, string password) => $"*:*:*:{role}:{password}\n";
}
