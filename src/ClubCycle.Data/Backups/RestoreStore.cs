using ClubCycle.Data.Clubs;
using ClubCycle.Data.Embedded;
using ClubCycle.Data.Players;
using ClubCycle.Planning;
using ClubCycle.Planning.PlanFiles;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using NodaTime;

namespace ClubCycle.Data.Backups;

/// <summary>A backup that was restored and checked.</summary>
/// <param name="Erased">Players of the backup who were erased after it and are erased again.</param>
/// <param name="Links">Links of the backup that were revoked after it and stay so.</param>
/// <param name="Accounts">Accounts of the backup that were removed after it and are gone again.</param>
/// <param name="Plans">Published plans that were read.</param>
public sealed record RestoredBackup(BackupManifest Manifest, int Erased, int Links, int Accounts, int Plans);

/// <summary>Puts a backup in a database's place. What was there stays aside until the backup is checked, and comes back when it does not hold.</summary>
public sealed class RestoreStore(IClock clock)
{
    /// <summary>The audit trail's word.</summary>
    public const string Restored = "backup.restored";

    internal const string Aside = """
        do $$ begin
            if to_regnamespace('accounts') is not null then alter schema accounts rename to accounts_replaced; end if;
            if to_regnamespace('club') is not null then alter schema club rename to club_replaced; end if;
            if to_regclass('public."__EFMigrationsHistory"') is not null then alter table public."__EFMigrationsHistory" set schema accounts_replaced; end if;
        end $$
        """;

    private const string Back = """
        do $$ begin
            drop schema if exists accounts, club cascade;
            drop table if exists public."__EFMigrationsHistory";
            if to_regclass('accounts_replaced."__EFMigrationsHistory"') is not null then alter table accounts_replaced."__EFMigrationsHistory" set schema public; end if;
            if to_regnamespace('accounts_replaced') is not null then alter schema accounts_replaced rename to accounts; end if;
            if to_regnamespace('club_replaced') is not null then alter schema club_replaced rename to club; end if;
        end $$
        """;

    private const string Away = "drop schema if exists accounts_replaced, club_replaced cascade";

    /// <summary>True after a restore that was killed: what it replaced is still aside, and what it put there was not checked.</summary>
    public static async Task<bool> IsHalfDoneAsync(string connectionString, CancellationToken cancel = default)
    {
        await using var connection = await PlainSql.OpenEverywhereAsync(connectionString, cancel);
        return await IsHalfDoneAsync(connection, cancel);
    }

    /// <param name="path">A backup's own folder. The others beside it tell what was ended after it.</param>
    /// <param name="replace">Whether a database that holds a club may be replaced.</param>
    /// <exception cref="DatabaseUnavailableException">The database or PostgreSQL's programs refused; it holds what it held.</exception>
    public async Task<Result<RestoredBackup>> RestoreAsync(string connectionString, string path, bool replace, CancellationToken cancel = default)
    {
        if (!(await BackupFolder.ReadAsync(path, cancel)).TryGet(out var backup, out var problems))
        {
            return new Result<RestoredBackup>.Failed(problems);
        }

        await using var services = new ServiceCollection().AddSingleton(clock).AddLogging().AddClubCycleData(new NpgsqlConnectionStringBuilder(connectionString) { Pooling = false }.ConnectionString).BuildServiceProvider();
        await using var connection = await PlainSql.OpenEverywhereAsync(connectionString, cancel);
        if (await RefusalAsync(services, connection, backup.Manifest, replace, cancel) is { } refused)
        {
            return refused;
        }

        List<Endings> ended = [.. (await BackupFolder.AllAsync(Path.GetDirectoryName(Path.GetFullPath(Path.TrimEndingDirectorySeparator(path)))!, cancel)).Where(b => b.Manifest.MadeAt > backup.Manifest.MadeAt).OrderBy(b => b.Manifest.MadeAt).Select(b => b.Manifest.Ended)];
        if (await IsLaterAsync(connection, backup.Manifest.MadeAt, cancel))
        {
            ended.Add(await Endings.ReadAsync(connection, (await connection.SchemaAsync(cancel))!, cancel));
        }

        var programs = await DumpPrograms.ChooseAsync(Math.Max(backup.Manifest.Postgres, connection.PostgreSqlVersion.Major), cancel);
        await programs.RestoreAsync(connectionString, Aside, backup.DumpFile, cancel);
        try
        {
            return await CheckAsync() is { } wrong ? await PutBackAsync(wrong) : await EndAsync();
        }
        catch
        {
            await connection.RunAsync(Back, CancellationToken.None);
            throw;
        }

        async Task<Problem?> CheckAsync() =>
            await CountProblemAsync(connection, backup.Manifest, cancel) ?? await OrphanProblemAsync(connection, cancel);

        async Task<Result<RestoredBackup>> PutBackAsync(Problem wrong)
        {
            await connection.RunAsync(Back, CancellationToken.None);
            return wrong;
        }

        async Task<Result<RestoredBackup>> EndAsync()
        {
            await DataSetup.MigrateAsync(connectionString, cancel);
            var (erased, links, accounts) = await EndAgainAsync(services, connection, ended, cancel);
            if (!(await ReadPlansAsync(services, cancel)).TryGet(out var plans, out var unreadable))
            {
                return await PutBackAsync(unreadable[0]);
            }

            // Migrations and erasures may not have broken what held before them.
            if (await OrphanProblemAsync(connection, cancel) is { } orphan)
            {
                return await PutBackAsync(orphan);
            }

            await connection.RunAsync(
                "insert into club.audit (club_id, id, at, what, details) select club_id, gen_random_uuid(), $1, $2, $3 from club.clubs", cancel,
                clock.GetCurrentInstant().ToDateTimeUtc(), Restored, Path.GetFileName(backup.Path));
            await connection.RunAsync(Away, cancel);
            return new RestoredBackup(backup.Manifest, erased, links, accounts, plans);
        }
    }

    private static async Task<Problem?> RefusalAsync(IServiceProvider services, NpgsqlConnection connection, BackupManifest manifest, bool replace, CancellationToken cancel)
    {
        await using (var db = await services.GetRequiredService<IDbContextFactory<ClubCycleDb>>().CreateDbContextAsync(cancel))
        {
            if (!db.Database.GetMigrations().Contains(manifest.Schema))
            {
                return new Problem("backup.newer", $"The backup was made by ClubCycle {manifest.App}, whose schema this version ({BackupManifest.AppVersion}) does not know. Use that version or a newer one.");
            }
        }

        if (await connection.OneAsync<bool>("select exists (select from pg_stat_activity where datname = current_database() and pid <> pg_backend_pid() and application_name in ('ClubCycle changes', 'ClubCycle feeds'))", cancel))
        {
            return new Problem("restore.app-running", "ClubCycle is running on this database. Stop it on every machine, then restore.");
        }

        if (await IsHalfDoneAsync(connection, cancel))
        {
            await connection.RunAsync(Back, cancel);
        }

        return !replace && await connection.SchemaAsync(cancel) is not null && await connection.OneAsync<bool>("select exists (select from club.clubs)", cancel)
            ? new Problem("restore.not-empty", "This database holds a club. Back it up first if it may be needed, then say --replace to put the backup in its place.")
            : null;
    }

    private static Task<bool> IsHalfDoneAsync(NpgsqlConnection connection, CancellationToken cancel) =>
        connection.OneAsync<bool>("select to_regnamespace('accounts_replaced') is not null or to_regnamespace('club_replaced') is not null", cancel);

    /// <summary>Whether the database went on after the backup: each backup that is made is noted in what it was made of.</summary>
    private static async Task<bool> IsLaterAsync(NpgsqlConnection connection, Instant backup, CancellationToken cancel) =>
        await connection.SchemaAsync(cancel) is not null && await connection.OneAsync<bool>("select exists (select from club.audit where at >= $1)", cancel, backup.ToDateTimeUtc());

    private static async Task<Problem?> CountProblemAsync(NpgsqlConnection connection, BackupManifest manifest, CancellationToken cancel)
    {
        var counts = await connection.CountsAsync(cancel);
        return manifest.Rows.Keys.Union(counts.Keys).FirstOrDefault(table => manifest.Rows.GetValueOrDefault(table, -1) != counts.GetValueOrDefault(table, -1)) is { } table
            ? new Problem("restore.counts", $"{table} has {counts.GetValueOrDefault(table, 0)} rows after the restore, and the manifest says {manifest.Rows.GetValueOrDefault(table, 0)}. The database was left as it was. Use another backup.")
            : null;
    }

    /// <summary>Rows whose foreign key leads nowhere, table by table.</summary>
    private static async Task<Problem?> OrphanProblemAsync(NpgsqlConnection connection, CancellationToken cancel)
    {
        var checks = await connection.ListAsync(
            """
            select k.conname, format('select exists (select from %s child where %s and not exists (select from %s parent where %s))', k.conrelid::regclass,
                string_agg(format('child.%I is not null', child.attname), ' and '), k.confrelid::regclass, string_agg(format('child.%I = parent.%I', child.attname, parent.attname), ' and '))
            from pg_constraint k
            cross join lateral unnest(k.conkey, k.confkey) as pair(child, parent)
            join pg_attribute child on child.attrelid = k.conrelid and child.attnum = pair.child
            join pg_attribute parent on parent.attrelid = k.confrelid and parent.attnum = pair.parent
            where k.contype = 'f' and k.connamespace in (to_regnamespace('club'), to_regnamespace('accounts'))
            group by k.oid, k.conname, k.conrelid, k.confrelid order by k.conname
            """, row => (Name: row.GetString(0), Sql: row.GetString(1)), cancel);
        foreach (var (name, sql) in checks)
        {
            if (await connection.OneAsync<bool>(sql, cancel))
            {
                return new Problem("restore.orphans", $"A row of the backup refers to one that is not in it ({name}). The database was left as it was. Use another backup.");
            }
        }

        return null;
    }

    /// <summary>Ends again what was ended after the backup, as far as it is known, and everybody's session.</summary>
    private static async Task<(int Erased, int Links, int Accounts)> EndAgainAsync(IServiceProvider services, NpgsqlConnection connection, List<Endings> ended, CancellationToken cancel)
    {
        var (links, accounts, erased) = (0, 0, 0);
        foreach (var later in ended)
        {
            foreach (var player in later.Erased)
            {
                await connection.RunAsync(
                    "insert into club.erasures (club_id, id, at) select club_id, $2, $3 from club.clubs where club_id = $1 on conflict do nothing", cancel, player.Club, player.Player, player.At.ToDateTimeUtc());
            }

            links += await connection.RunAsync("update club.links set revoked_at = now() where id = any($1) and revoked_at is null", cancel, later.Links.ToArray());
            await connection.RunAsync("update club.players set protected = true where id = any($1) and not protected", cancel, later.Protected.ToArray());
            accounts += await connection.RunAsync("delete from accounts.users where club_id = any($1) and not id = any($2)", cancel, later.Clubs.ToArray(), later.Accounts.ToArray());
        }

        // Guardians may change their mind: the last that is known counts.
        foreach (var no in ended.LastOrDefault()?.Guardians ?? [])
        {
            await connection.RunAsync(
                """
                insert into club.guardian_consents (club_id, player_id, language, link_used, answer, answered_on)
                select club_id, id, 'English', false, $3, $4 from club.players where club_id = $1 and id = $2
                on conflict (club_id, player_id) do update set answer = excluded.answer, answered_on = excluded.answered_on
                """,
                cancel, no.Club, no.Player, no.Answer, no.On.ToDateOnly());
        }

        await connection.RunAsync("update accounts.users set security_stamp = gen_random_uuid()::text", cancel);
        await connection.RunAsync("delete from accounts.user_tokens where login_provider = 'ClubCycle'", cancel);

        // Notices of then were sent or are stale by now.
        await connection.RunAsync("delete from club.outbox where kind = 'send-notice'", cancel);
        foreach (var club in await ClubsAsync(services, cancel))
        {
            await using var scope = OfClub(services, club);
            erased += await scope.ServiceProvider.GetRequiredService<RetentionStore>().EraseAgainAsync(cancel);
        }

        return (erased, links, accounts);
    }

    /// <summary>Reads each squad's latest published plan; says how many there are.</summary>
    private static async Task<Result<int>> ReadPlansAsync(IServiceProvider services, CancellationToken cancel)
    {
        var read = 0;
        foreach (var club in await ClubsAsync(services, cancel))
        {
            await using var scope = OfClub(services, club);
            await using var db = await scope.ServiceProvider.GetRequiredService<IClubDbFactory>().OpenAsync(cancel);
            var latest = db.Revisions.Where(r => r.Number == db.Revisions.Where(o => o.SquadId == r.SquadId).Max(o => o.Number)).Select(r => new { r.SquadId, r.Number, r.Plan });
            await foreach (var plan in latest.AsAsyncEnumerable().WithCancellation(cancel))
            {
                if (!PlanFile.ReadPlan(plan.Plan).TryGet(out _, out var problems))
                {
                    return new Problem("restore.plan-unreadable", $"Revision {plan.Number} of squad {plan.SquadId} in the backup cannot be read: {problems[0].Message} The database was left as it was. Use another backup.");
                }

                read++;
            }
        }

        return read;
    }

    private static async Task<IReadOnlyList<Guid>> ClubsAsync(IServiceProvider services, CancellationToken cancel)
    {
        await using var scope = services.CreateAsyncScope();
        return await scope.ServiceProvider.GetRequiredService<ClubStore>().AllIdsAsync(cancel);
    }

    private static AsyncServiceScope OfClub(IServiceProvider services, Guid club)
    {
        var scope = services.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentClub>().Use(club);
        return scope;
    }
}
