using ClubCycle.Data.Accounts;
using ClubCycle.Data.Backups;
using ClubCycle.Data.Embedded;
using ClubCycle.Data.Links;
using ClubCycle.Data.Plans;
using ClubCycle.Data.Players;
using ClubCycle.Data.Squads;
using ClubCycle.Planning;
using ClubCycle.Planning.Languages;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Squads;
using ClubCycle.TestKit;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace ClubCycle.Data.Tests.Backups;

/// <summary>Each test has a database and a folder of its own, because a backup holds a database as a whole.</summary>
public sealed class BackupTests : IAsyncLifetime
{
    private readonly ClubData data = new();
    private readonly TemporaryFolder folder = TemporaryFolder.ReachableByAll("clubcycle-backups-");
    private TestDatabase empty = null!;

    /// <summary>The day on a paper that a guardian signed.</summary>
    private static readonly LocalDate Paper = new(2026, 2, 1);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        await data.InitializeAsync();
        empty = await TestDatabase.CreateAsync(_ => Task.CompletedTask, "empty");
    }

    public async ValueTask DisposeAsync()
    {
        await data.DisposeAsync();
        await empty.DisposeAsync();
        folder.Dispose();
    }

    [Fact]
    public async Task A_backup_restored_into_an_empty_database_gives_back_every_row_and_plan()
    {
        var (club, squad, _) = await ClubAsync();
        var published = await club.PublishAsync(squad);
        var other = await data.NewClubAsync("Another club");
        var made = await MakeAsync();

        var restored = (await RestoreAsync(empty.OwnerConnectionString, made.Path)).OrThrow();

        Assert.Equal(1, restored.Plans);
        Assert.Equal(2, made.Manifest.Rows["club.clubs"]);
        await using var services = ServicesOf(empty.ConnectionString);
        await using var scope = services.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentClub>().Use(club.Id);
        Assert.Equal(await PlanTextAsync(club.Store<RevisionStore>()), await PlanTextAsync(scope.ServiceProvider.GetRequiredService<RevisionStore>()));
        await using var db = await scope.ServiceProvider.GetRequiredService<IClubDbFactory>().OpenAsync(Cancel);
        Assert.DoesNotContain(await db.Squads.IgnoreQueryFilters().ToListAsync(Cancel), s => s.ClubId == other.Id);

        async Task<string> PlanTextAsync(RevisionStore revisions) => PlanFile.WritePlan((await revisions.FindAsync(squad, published.Number, Cancel)).OrThrow());
    }

    [Fact]
    public async Task A_backup_is_noted_in_every_club_and_its_age_is_known()
    {
        var (club, _, _) = await ClubAsync();
        var other = await data.NewClubAsync("Another club");

        var made = await MakeAsync();

        foreach (var noted in new[] { club, other })
        {
            await using var db = await noted.OpenAsync();
            var note = await db.Audit.SingleAsync(a => a.What == BackupStore.Made, Cancel);
            Assert.Equal((made.Manifest.MadeAt, Path.GetFileName(made.Path)), (note.At, note.Details));
        }

        Assert.Equal(made.Manifest.MadeAt, await data.Services.GetRequiredService<LastBackup>().AtAsync(Cancel));
    }

    [Fact]
    public async Task Row_security_guards_a_restored_database_too()
    {
        await ClubAsync();
        (await RestoreAsync(empty.OwnerConnectionString, (await MakeAsync()).Path)).OrThrow();

        await using var connection = new Npgsql.NpgsqlConnection(empty.ConnectionString);
        await connection.OpenAsync(Cancel);

        Assert.Equal(0, await connection.OneAsync<long>("select count(*) from club.players", Cancel));
    }

    [Fact]
    public async Task Whoever_was_erased_after_the_backup_is_erased_again()
    {
        var (club, squad, player) = await ClubAsync();
        var made = await MakeAsync();
        (await club.Store<PlayerStore>().RemoveAsync(squad, player, ClubData.By, Cancel)).OrThrow();

        Assert.Equal(1, (await RestoreAsync(data.OwnerConnectionString, made.Path, replace: true)).OrThrow().Erased);

        Assert.Empty(await club.Store<PlayerStore>().ListAsync(squad, Cancel));
        await using var db = await club.OpenAsync();
        Assert.Equal(player, Assert.Single(await db.Erasures.ToListAsync(Cancel)).Id);
    }

    [Fact]
    public async Task On_a_new_machine_the_newer_backups_beside_it_tell_who_was_erased_and_what_was_revoked()
    {
        var (club, squad, player) = await ClubAsync();
        var stays = await club.PlayerAsync(squad, "Bo L.");
        var link = (await club.Store<LinkStore>().CreateAsync(squad, stays, "phone", ClubData.By, Cancel)).OrThrow();
        var made = await MakeAsync();
        (await club.Store<PlayerStore>().RemoveAsync(squad, player, ClubData.By, Cancel)).OrThrow();
        (await club.Store<LinkStore>().RevokeAsync(squad, stays, link.Id, ClubData.By, Cancel)).OrThrow();
        await MakeAsync();

        var restored = (await RestoreAsync(empty.OwnerConnectionString, made.Path)).OrThrow();

        Assert.Equal((1, 1), (restored.Erased, restored.Links));
    }

    [Fact]
    public async Task A_link_revoked_after_the_backup_stays_revoked_and_one_that_was_not_still_works()
    {
        var (club, squad, player) = await ClubAsync();
        var links = club.Store<LinkStore>();
        var gone = (await links.CreateAsync(squad, player, "phone", ClubData.By, Cancel)).OrThrow();
        var kept = (await links.CreateAsync(squad, player, "tablet", ClubData.By, Cancel)).OrThrow();
        var made = await MakeAsync();
        (await links.RevokeAsync(squad, player, gone.Id, ClubData.By, Cancel)).OrThrow();

        Assert.Equal(1, (await RestoreAsync(data.OwnerConnectionString, made.Path, replace: true)).OrThrow().Links);

        Assert.False((await links.FindAsync(gone.Token, Cancel))!.Live);
        Assert.True((await links.FindAsync(kept.Token, Cancel))!.Live);
    }

    [Fact]
    public async Task A_player_protected_after_the_backup_stays_protected()
    {
        var (club, squad, player) = await ClubAsync();
        var made = await MakeAsync();
        (await club.Store<WelfareStore>().ProtectAsync(player, true, ClubData.By, Cancel)).OrThrow();

        (await RestoreAsync(data.OwnerConnectionString, made.Path, replace: true)).OrThrow();

        Assert.True(Assert.Single(await club.Store<WelfareStore>().ListAsync(Cancel)).Protected);
        Assert.Empty(await club.Store<PlayerStore>().ListAsync(squad, Cancel));
    }

    /// <summary>Agreed before the backup, or not asked yet by then.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_guardians_no_after_the_backup_stays_a_no(bool agreedBefore)
    {
        var (club, squad, player) = await MinorAsync();
        var guardians = club.Store<GuardianStore>();
        if (agreedBefore)
        {
            await club.AgreeAsync(squad, player);
        }

        var made = await MakeAsync();
        var secret = (await guardians.AskAsync(squad, player, Language.English, ClubData.By, Cancel)).OrThrow();
        await guardians.AnswerAsync((await guardians.FindAsync(secret, Cancel))!, agrees: false, Cancel);

        (await RestoreAsync(data.OwnerConnectionString, made.Path, replace: true)).OrThrow();

        Assert.Equal("guardian.refused", ProblemOf(await guardians.AgreedOnPaperAsync(squad, [player], Paper, ClubData.By, Cancel)));
    }

    [Fact]
    public async Task A_guardian_who_agreed_again_after_the_backup_has_agreed()
    {
        var (club, squad, player) = await MinorAsync();
        var guardians = club.Store<GuardianStore>();
        await club.AgreeAsync(squad, player);
        var made = await MakeAsync();
        var secret = (await guardians.AskAsync(squad, player, Language.English, ClubData.By, Cancel)).OrThrow();
        await guardians.AnswerAsync((await guardians.FindAsync(secret, Cancel))!, agrees: false, Cancel);
        await MakeAsync();
        await guardians.AnswerAsync((await guardians.FindAsync(secret, Cancel))!, agrees: true, Cancel);

        (await RestoreAsync(data.OwnerConnectionString, made.Path, replace: true)).OrThrow();

        Assert.Equal(0, (await guardians.AgreedOnPaperAsync(squad, [player], Paper, ClubData.By, Cancel)).OrThrow());
    }

    [Fact]
    public async Task Every_session_and_sign_in_link_ends_and_an_account_removed_after_the_backup_is_gone()
    {
        var (club, _, _) = await ClubAsync();
        var (stays, leaves) = (await AccountAsync(club), await AccountAsync(club));
        var made = await MakeAsync();
        await using (var before = await club.OpenAsync())
        {
            before.Users.Remove(await before.Users.SingleAsync(u => u.Id == leaves, Cancel));
            await before.SaveChangesAsync(Cancel);
        }

        Assert.Equal(1, (await RestoreAsync(data.OwnerConnectionString, made.Path, replace: true)).OrThrow().Accounts);

        await using var db = await club.OpenAsync();
        var user = await db.Users.SingleAsync(Cancel);
        Assert.Equal(stays, user.Id);
        Assert.NotEqual("stamp", user.SecurityStamp);
        Assert.False(await db.UserTokens.AnyAsync(Cancel));
    }

    [Fact]
    public async Task A_database_with_a_club_is_not_replaced_unless_asked()
    {
        var (club, squad, _) = await ClubAsync();
        var made = await MakeAsync();
        var later = await club.PlayerAsync(squad, "Bo L.");

        Assert.Equal("restore.not-empty", ProblemOf(await RestoreAsync(data.OwnerConnectionString, made.Path)));

        Assert.Contains(await club.Store<PlayerStore>().ListAsync(squad, Cancel), p => p.Id == later);
    }

    [Theory]
    [InlineData("database.dump")]
    [InlineData("manifest.json")]
    public async Task A_backup_of_which_a_byte_changed_is_refused_before_anything_is_touched(string file)
    {
        await ClubAsync();
        var made = await MakeAsync();
        var path = Path.Combine(made.Path, file);
        var bytes = await File.ReadAllBytesAsync(path, Cancel);
        bytes[bytes.Length / 2] ^= 1;
        await File.WriteAllBytesAsync(path, bytes, Cancel);

        Assert.Equal("backup.damaged", ProblemOf(await RestoreAsync(empty.OwnerConnectionString, made.Path)));
    }

    [Fact]
    public async Task A_backup_that_does_not_hold_what_its_manifest_says_leaves_the_database_as_it_was()
    {
        var (club, squad, _) = await ClubAsync();
        var made = await MakeAsync();
        var lies = await BackupFolder.FinishAsync(
            Copy(made.Path), made.Manifest with { MadeAt = made.Manifest.MadeAt + Duration.FromSeconds(1), Rows = made.Manifest.Rows.ToDictionary(r => r.Key, r => r.Key == "club.players" ? r.Value + 1 : r.Value) }, Cancel);
        await club.PlayerAsync(squad, "Bo L.");

        Assert.Equal("restore.counts", ProblemOf(await RestoreAsync(data.OwnerConnectionString, lies.Path, replace: true)));

        Assert.Equal(2, (await club.Store<PlayerStore>().ListAsync(squad, Cancel)).Count);
        Assert.False(await RestoreStore.IsHalfDoneAsync(data.ConnectionString, Cancel));
    }

    [Fact]
    public async Task A_dump_that_breaks_off_leaves_the_database_as_it_was()
    {
        var (club, squad, _) = await ClubAsync();
        var made = await MakeAsync();
        var growing = Copy(made.Path);
        await using (var dump = new FileStream(Path.Combine(growing, BackupFolder.Dump), FileMode.Open))
        {
            dump.SetLength(dump.Length * 9 / 10);
        }

        var half = await BackupFolder.FinishAsync(growing, made.Manifest with { MadeAt = made.Manifest.MadeAt + Duration.FromSeconds(1) }, Cancel);

        await Assert.ThrowsAsync<DatabaseUnavailableException>(() => RestoreAsync(data.OwnerConnectionString, half.Path, replace: true));
        Assert.Single(await club.Store<PlayerStore>().ListAsync(squad, Cancel));
        Assert.False(await RestoreStore.IsHalfDoneAsync(data.ConnectionString, Cancel));
    }

    [Fact]
    public async Task A_backup_that_an_older_version_made_of_a_database_with_the_role_leaves_its_rights_as_they_are()
    {
        await ClubAsync();
        var made = await MakeAsync();
        var (growing, owner) = (BackupFolder.Begin(folder.Path, data.Clock.Now), new Npgsql.NpgsqlConnectionStringBuilder(data.OwnerConnectionString));
        await using (var connection = await PlainSql.OpenEverywhereAsync(data.OwnerConnectionString, Cancel))
        {
            var programs = await DumpPrograms.ChooseAsync(connection.PostgreSqlVersion.Major, Cancel);
            var whole = await ProgramRun.OfAsync(
                PostgresPrograms.In(programs.Folder, "pg_dump"),
                ["--format=custom", "--enable-row-security", "--extension=btree_gist", "--no-owner", "--no-privileges", $"--file={Path.Combine(growing, BackupFolder.Dump)}"], folder.Path, Cancel,
                new Dictionary<string, string> { ["PGHOST"] = owner.Host!, ["PGPORT"] = $"{owner.Port}", ["PGUSER"] = owner.Username!, ["PGDATABASE"] = owner.Database!, ["PGPASSWORD"] = owner.Password!, ["PGOPTIONS"] = "-c app.club=*" });
            Assert.True(whole.Succeeded, whole.Output);
        }

        var manifest = made.Manifest with { MadeAt = data.Clock.Now, Rows = made.Manifest.Rows.ToDictionary(r => r.Key, r => r.Key == "club.audit" ? r.Value + 1 : r.Value) };
        var older = await BackupFolder.FinishAsync(growing, manifest, Cancel);

        (await RestoreAsync(data.OwnerConnectionString, older.Path, replace: true)).OrThrow();

        await MakeAsync();
        await using var app = await PlainSql.OpenEverywhereAsync(data.ConnectionString, Cancel);
        Assert.Equal(2, await app.OneAsync<long>("select count(*) from club.audit where what = 'backup.made'", Cancel));
    }

    [Fact]
    public async Task After_a_restore_that_was_killed_the_next_one_starts_from_what_was_there()
    {
        var (club, squad, player) = await ClubAsync();
        var made = await MakeAsync();
        (await club.Store<PlayerStore>().RemoveAsync(squad, player, ClubData.By, Cancel)).OrThrow();
        await using (var killed = await PlainSql.OpenEverywhereAsync(data.OwnerConnectionString, Cancel))
        {
            await killed.RunAsync(RestoreStore.Aside + "; create schema club", Cancel);
        }

        Assert.True(await RestoreStore.IsHalfDoneAsync(data.ConnectionString, Cancel));

        Assert.Equal(1, (await RestoreAsync(data.OwnerConnectionString, made.Path, replace: true)).OrThrow().Erased);
        Assert.False(await RestoreStore.IsHalfDoneAsync(data.ConnectionString, Cancel));
    }

    [Fact]
    public async Task A_half_written_backup_is_no_backup()
    {
        await ClubAsync();
        var made = await MakeAsync();
        var growing = Copy(made.Path);

        Assert.Equal("backup.not-found", ProblemOf(await RestoreAsync(empty.OwnerConnectionString, growing)));
        Assert.Equal(made.Path, Assert.Single(await BackupFolder.AllAsync(folder.Path, Cancel)).Path);
    }

    [Fact]
    public async Task The_newest_are_kept_and_nothing_else_in_the_folder_is_touched()
    {
        await ClubAsync();
        var first = await MakeAsync();
        var second = await MakeAsync();
        var notes = Directory.CreateDirectory(Path.Combine(folder.Path, "notes")).FullName;

        var third = await MakeAsync(keep: 2);

        Assert.Equal(1, third.Gone);
        Assert.False(Directory.Exists(first.Path));
        Assert.Equal([third.Path, second.Path], (await BackupFolder.AllAsync(folder.Path, Cancel)).Select(b => b.Path));
        Assert.True(Directory.Exists(notes));
    }

    [Fact]
    [System.Runtime.Versioning.UnsupportedOSPlatform("windows")]
    public async Task Only_the_owner_can_look_into_a_backup()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows has no such rights.");
        await ClubAsync();

        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, File.GetUnixFileMode((await MakeAsync()).Path));
    }

    [Fact]
    public async Task A_database_without_a_schema_has_nothing_to_back_up() =>
        Assert.Equal("backup.nothing-there", ProblemOf(await new BackupStore(data.Clock).MakeAsync(empty.ConnectionString, folder.Path, null, Cancel)));

    private async Task<(TestClub Club, Guid Squad, Guid Player)> ClubAsync()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        return (club, squad, await club.PlayerAsync(squad));
    }

    private async Task<(TestClub Club, Guid Squad, Guid Player)> MinorAsync()
    {
        var club = await data.NewClubAsync();
        var squad = (await club.Store<SquadStore>().AddAsync(ClubData.Squad("U14", AgeGroup.Youth(14)), null, ClubData.By, Cancel)).OrThrow();
        return (club, squad, await club.PlayerAsync(squad));
    }

    private static async Task<Guid> AccountAsync(TestClub club)
    {
        await using var db = await club.OpenAsync();
        var user = new ClubUser { Id = NewId.Create(), ClubId = club.Id, DisplayName = "Coach", SecurityStamp = "stamp" };
        db.Users.Add(user);
        db.UserTokens.Add(new IdentityUserToken<Guid> { UserId = user.Id, LoginProvider = "ClubCycle", Name = "sign-in-link", Value = "x" });
        await db.SaveChangesAsync(Cancel);
        return user.Id;
    }

    /// <summary>Each a minute after the one before.</summary>
    private async Task<MadeBackup> MakeAsync(int? keep = null)
    {
        data.Clock.Now += Duration.FromMinutes(1);
        var made = (await new BackupStore(data.Clock).MakeAsync(data.BackupConnectionString, folder.Path, keep, Cancel)).OrThrow();
        data.Clock.Now += Duration.FromSeconds(10);
        return made;
    }

    private Task<Result<RestoredBackup>> RestoreAsync(string connectionString, string path, bool replace = false) =>
        new RestoreStore(data.Clock).RestoreAsync(connectionString, path, replace, Cancel);

    private string Copy(string path)
    {
        var growing = BackupFolder.Begin(folder.Path, data.Clock.Now);
        File.Copy(Path.Combine(path, BackupFolder.Dump), Path.Combine(growing, BackupFolder.Dump));
        return growing;
    }

    private ServiceProvider ServicesOf(string connectionString) =>
        new ServiceCollection().AddSingleton<IClock>(data.Clock).AddLogging().AddClubCycleData(connectionString).BuildServiceProvider();

    private static string ProblemOf<T>(Result<T> result) => Assert.IsType<Result<T>.Failed>(result).First.Code;
}
