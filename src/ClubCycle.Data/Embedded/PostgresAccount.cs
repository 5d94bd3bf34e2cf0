namespace ClubCycle.Data.Embedded;

/// <summary>Who runs PostgreSQL's programs. It refuses root, so root hands over to an ordinary account.</summary>
/// <param name="UserId">Null: we are an ordinary user and run them ourselves.</param>
internal sealed record PostgresAccount(string? UserId, string? GroupId)
{
    private static readonly PostgresAccount Ourselves = new(null, null);

    /// <summary>The owner of an existing cluster, else <c>postgres</c>, else <c>nobody</c>; then gives it the folder.</summary>
    public static async Task<PostgresAccount> ForAsync(ClusterFolder folder, PostgresPrograms programs, CancellationToken cancel)
    {
        if (OperatingSystem.IsWindows() || !Environment.IsPrivilegedProcess)
            return Ourselves;

        var account = await OwnerAsync(folder.Cluster, cancel) ?? await NamedAsync("postgres", cancel) ?? await NamedAsync("nobody", cancel)
            ?? throw DatabaseUnavailableException.Because(
                "database.no-account", "PostgreSQL may not run as root, and there is no user 'postgres' or 'nobody'. Start ClubCycle as an ordinary user.");
        await account.OwnAsync(folder, cancel);

        // The folders above belong to others: root's home, for one, is closed.
        if (!(await account.RunAsync("test", ["-w", folder.Root], "/", cancel)).Succeeded)
        {
            throw DatabaseUnavailableException.Because(
                "database.folder-not-reachable",
                $"Started by root, PostgreSQL runs as the unprivileged user {account.UserId}, who cannot reach {folder.Root}. " +
                "Name a folder that every user can enter, such as /var/lib/clubcycle, with CLUBCYCLE_DATA, or start ClubCycle as an ordinary user.");
        }

        return (await account.RunAsync("test", ["-x", programs.Postgres], "/", cancel)).Succeeded
            ? account
            : throw DatabaseUnavailableException.Because(
                "database.programs-not-reachable",
                $"Started by root, PostgreSQL runs as the unprivileged user {account.UserId}, who cannot reach {programs.Folder}. " +
                $"Start ClubCycle as an ordinary user, or install PostgreSQL for everyone with: {InstallLine.Here}");
    }

    public async Task<ProgramRun> RunAsync(string program, IReadOnlyList<string> arguments, string folder, CancellationToken cancel)
    {
        if (UserId is null)
            return await ProgramRun.OfAsync(program, arguments, folder, cancel);
        var run = await ProgramRun.OfAsync(
            "setpriv", [$"--reuid={UserId}", $"--regid={GroupId}", "--clear-groups", "--inh-caps=-all", "--", program, .. arguments], folder, cancel);
        return run.WasFound
            ? run
            : throw DatabaseUnavailableException.Because(
                "database.no-setpriv", "PostgreSQL may not run as root, and the program setpriv (package util-linux) is missing. Start ClubCycle as an ordinary user.");
    }

    /// <summary>Makes a file of ours this account's.</summary>
    public async Task GiveAsync(string path, CancellationToken cancel)
    {
        if (UserId is null)
            return;
        var changed = await ProgramRun.OfAsync("chown", ["-R", $"{UserId}:{GroupId}", path], "/", cancel);
        if (!changed.Succeeded)
            throw ClusterFolder.NotWritable(path, new IOException(changed.Output));
    }

    /// <summary>Gives the folder away before the cluster is made, and again when root copied a backup into it.</summary>
    private async Task OwnAsync(ClusterFolder folder, CancellationToken cancel)
    {
        if (folder.HasCluster && await OwnerAsync(folder.Cluster, cancel) is not null)
            return;
        await GiveAsync(folder.Root, cancel);
    }

    /// <summary>Null when there is nothing yet, or when it is root's.</summary>
    private static async Task<PostgresAccount?> OwnerAsync(string path, CancellationToken cancel)
    {
        var owner = await ProgramRun.OfAsync("stat", ["-c", "%u %g", path], "/", cancel);
        return owner.Succeeded && owner.Output.Trim().Split(' ') is [var user, var group] && user != "0" ? new PostgresAccount(user, group) : null;
    }

    private static async Task<PostgresAccount?> NamedAsync(string name, CancellationToken cancel)
    {
        var user = await ProgramRun.OfAsync("id", ["-u", name], "/", cancel);
        var group = await ProgramRun.OfAsync("id", ["-g", name], "/", cancel);
        return user.Succeeded && group.Succeeded ? new PostgresAccount(user.Output.Trim(), group.Output.Trim()) : null;
    }
}
