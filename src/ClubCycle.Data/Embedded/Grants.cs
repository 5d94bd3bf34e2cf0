using ClubCycle.Data.Backups;
using Npgsql;

namespace ClubCycle.Data.Embedded;

/// <summary>What the owner of a database lets another role do. Once is enough, and again does no harm.</summary>
internal static class Grants
{
    /// <summary>On all that the owner has made, and what its later migrations and restores make. The functions there are triggers, which need no right to be run.</summary>
    private const string Statements = """
        with me as (select oid from pg_roles where rolname = current_user)
        select format('alter default privileges grant usage on schemas to %I', $1)
        union all select format('alter default privileges grant %s on tables to %I', $2, $1)
        union all select format('alter default privileges grant %s on sequences to %I', $3, $1)
        union all select format('grant usage on schema %I to %I', nspname, $1) from pg_namespace, me where nspowner = me.oid
        union all select format('grant %s on %s to %I', $2, c.oid::regclass, $1) from pg_class c, me where relowner = me.oid and relkind in ('r', 'p')
        union all select format('grant %s on sequence %s to %I', $3, c.oid::regclass, $1) from pg_class c, me where relowner = me.oid and relkind = 'S'
        union all select format('grant connect on database %I to %I', current_database(), $1)
        union all select format('revoke temporary on database %I from public', current_database())
        union all select 'revoke create on schema public from public'
        """;

    /// <param name="setting">Where the role's name comes from, for people.</param>
    /// <param name="tables">Rights to these, and <paramref name="sequences"/>.</param>
    /// <param name="more">Statements to follow, with <c>%1$I</c> for the role.</param>
    /// <exception cref="DatabaseUnavailableException">There is no such role.</exception>
    public static async Task RunAsync(string ownerConnectionString, string role, string setting, string tables, string sequences, string more, CancellationToken cancel)
    {
        await using var connection = await PlainSql.OpenEverywhereAsync(ownerConnectionString, cancel);
        var statements = await connection.ListAsync(Statements, row => row.GetString(0), cancel, role, tables, sequences);
        var last = await connection.OneAsync<string>("select format($2, $1)", cancel, role, more);
        try
        {
            await connection.RunAsync(string.Join(";\n", [.. statements, last]), cancel);
        }
        catch (PostgresException unknown) when (unknown.SqlState == PostgresErrorCodes.UndefinedObject)
        {
            throw DatabaseUnavailableException.Because(
                "database.no-role", $"The database has no role '{role}' to sign in with. Make it with: create role {role} login password '...' - or correct the name in {setting}.", unknown);
        }
    }
}
