using ClubCycle.Data.Backups;
using Npgsql;

namespace ClubCycle.Data.Embedded;

/// <summary>The role that the app signs in with: it reads and changes rows, and neither makes nor changes nor empties a table, nor takes a fence down.</summary>
public static class AppRole
{
    /// <summary>All that the owner has made, and what its later migrations and restores make. The functions are triggers, which need no right to be run.</summary>
    private const string Grants = """
        with me as (select oid from pg_roles where rolname = current_user)
        select format('alter default privileges grant usage on schemas to %I', $1)
        union all select format('alter default privileges grant select, insert, update, delete on tables to %I', $1)
        union all select format('alter default privileges grant usage, select on sequences to %I', $1)
        union all select format('grant usage on schema %I to %I', nspname, $1) from pg_namespace, me where nspowner = me.oid
        union all select format('grant select, insert, update, delete on %s to %I', c.oid::regclass, $1) from pg_class c, me where relowner = me.oid and relkind in ('r', 'p')
        union all select format('grant usage, select on sequence %s to %I', c.oid::regclass, $1) from pg_class c, me where relowner = me.oid and relkind = 'S'
        union all select format('grant connect on database %I to %I', current_database(), $1)
        union all select format('revoke temporary on database %I from public', current_database())
        union all select 'revoke create on schema public from public'
        """;

    /// <summary>Lets a role at the owner's tables. Once is enough, and again does no harm.</summary>
    /// <exception cref="DatabaseUnavailableException">There is no such role.</exception>
    public static async Task GrantAsync(string ownerConnectionString, string role, CancellationToken cancel = default)
    {
        await using var connection = await PlainSql.OpenEverywhereAsync(ownerConnectionString, cancel);
        var grants = await connection.ListAsync(Grants, row => row.GetString(0), cancel, role);
        try
        {
            await connection.RunAsync(string.Join(";\n", grants), cancel);
        }
        catch (PostgresException unknown) when (unknown.SqlState == PostgresErrorCodes.UndefinedObject)
        {
            throw DatabaseUnavailableException.Because(
                "database.no-app-role", $"The database has no role '{role}' for the app to sign in with. Make it with: create role {role} login password '...' - or correct the user name in ConnectionStrings__ClubCycle.", unknown);
        }
    }
}
