using ClubCycle.Data.Backups;
using Npgsql;

namespace ClubCycle.Data.Tests.Schema;

/// <summary>ASVS 13.2.2: what the role of backups may not do. That it may make a backup that can be restored is shown by <c>BackupTests</c>.</summary>
public sealed class BackupRoleTests(ClubData data) : IClassFixture<ClubData>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("insert into club.audit (club_id, id, at, what) select club_id, gen_random_uuid(), now(), 'club.changed' from club.clubs")]
    [InlineData("insert into accounts.users select * from accounts.users")]
    [InlineData("update club.players set name = 'mine'")]
    [InlineData("update accounts.users set role = role")]
    [InlineData("delete from club.players")]
    [InlineData("delete from public.\"__EFMigrationsHistory\"")]
    [InlineData("merge into club.players p using club.clubs c on p.club_id = c.club_id when matched then delete")]
    [InlineData("select * from club.players for update")]
    [InlineData("copy club.players from stdin")]
    [InlineData("begin; lock table club.players in exclusive mode")]
    [InlineData("truncate club.outbox")]
    [InlineData("truncate club.audit")]
    [InlineData("create table club.mine (word text)")]
    [InlineData("create table public.mine (word text)")]
    [InlineData("create table backups.mine (word text)")]
    [InlineData("create temporary table mine (word text)")]
    [InlineData("create schema mine")]
    [InlineData("create role mine")]
    [InlineData("create function backups.mine() returns int language sql as 'select 1'")]
    [InlineData("create or replace function backups.note(made timestamptz, name text) returns void language sql as ''")]
    [InlineData("create trigger mine before insert on club.audit for each row execute function club.keep_audit()")]
    [InlineData("alter table club.players add mine text")]
    [InlineData("alter table club.players no force row level security")]
    [InlineData("alter function backups.note security invoker")]
    [InlineData("alter role current_user bypassrls")]
    [InlineData("drop table club.outbox")]
    [InlineData("drop schema club cascade")]
    [InlineData("set session_replication_role = replica")]
    [InlineData("set row_security = off; select * from club.players")]
    [InlineData("copy club.players to program 'cat'")]
    public async Task It_is_refused(string sql)
    {
        await using var backup = await OpenAsync();

        var refused = await Assert.ThrowsAsync<PostgresException>(() => backup.RunAsync(sql, Cancel));

        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, refused.SqlState);
    }

    [Fact]
    public async Task It_owns_nothing_is_nobody_else_s_member_and_is_bound_by_row_security()
    {
        await using var backup = await OpenAsync();

        Assert.False(await backup.OneAsync<bool>(
            """
            with me as (select * from pg_roles where rolname = current_user)
            select rolsuper or rolbypassrls or rolcreaterole or rolcreatedb or rolreplication
                or exists (select from pg_shdepend where refclassid = 'pg_authid'::regclass and refobjid = me.oid and deptype = 'o')
                or exists (select from pg_auth_members where member = me.oid)
            from me
            """,
            Cancel));
    }

    [Fact]
    public async Task It_reads_what_a_later_migration_makes_and_does_not_write_there()
    {
        await using var owner = await PlainSql.OpenEverywhereAsync(data.OwnerConnectionString, Cancel);
        await owner.RunAsync("create schema later; create table later.notes (id serial, word text); insert into later.notes (word) values ('one')", Cancel);
        await using var backup = await OpenAsync();

        Assert.Equal("one 1", await backup.OneAsync<string>("select concat_ws(' ', word, last_value) from later.notes, later.notes_id_seq", Cancel));
        foreach (var sql in new[] { "insert into later.notes (id, word) values (2, 'two')", "update later.notes set word = 'two'", "delete from later.notes", "select nextval('later.notes_id_seq')" })
        {
            var refused = await Assert.ThrowsAsync<PostgresException>(() => backup.RunAsync(sql, Cancel));
            Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, refused.SqlState);
        }
    }

    [Fact]
    public async Task The_one_right_that_it_has_to_write_is_to_note_a_backup()
    {
        await using var backup = await OpenAsync();

        var others = await backup.ListAsync(
            """
            select c.oid::regclass::text from pg_class c join pg_namespace n on n.oid = c.relnamespace
            where n.nspname in ('club', 'accounts', 'backups', 'public') and c.relkind in ('r', 'p') and has_table_privilege(c.oid, 'insert, update, delete, truncate, references, trigger')
            union all select p.oid::regprocedure::text from pg_proc p
            where p.prosecdef and has_function_privilege(p.oid, 'execute')
            """,
            row => row.GetString(0), Cancel);

        Assert.Equal(["backups.note(timestamp with time zone,text)"], others);
    }

    [Fact]
    public async Task Its_note_says_that_a_backup_was_made_and_reaches_no_club_that_it_did_not_ask_for()
    {
        var (club, other) = (await data.NewClubAsync(), await data.NewClubAsync());
        await using var backup = await OpenAsync();
        await backup.RunAsync("select set_config('app.club', $1, false)", Cancel, club.Id.ToString());

        await backup.RunAsync("select backups.note(now(), 'clubcycle-mine')", Cancel);

        await backup.RunAsync("select set_config('app.club', '*', false)", Cancel);
        Assert.Equal(
            [$"{club.Id} backup.made clubcycle-mine"],
            await backup.ListAsync("select concat_ws(' ', club_id, what, details, by) from club.audit where club_id in ($1, $2) and details = 'clubcycle-mine'", row => row.GetString(0), Cancel, club.Id, other.Id));
    }

    private async Task<NpgsqlConnection> OpenAsync()
    {
        Assert.SkipWhen(
            new NpgsqlConnectionStringBuilder(data.BackupConnectionString).Username == new NpgsqlConnectionStringBuilder(data.OwnerConnectionString).Username, "The role of CLUBCYCLE_TEST_DATABASE may make no other");
        return await PlainSql.OpenEverywhereAsync(data.BackupConnectionString, Cancel);
    }
}
