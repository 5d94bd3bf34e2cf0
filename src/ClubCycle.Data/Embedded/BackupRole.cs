using ClubCycle.Data.Backups;

namespace ClubCycle.Data.Embedded;

/// <summary>The role that backups sign in with: it reads, of every club when it asks for that, and writes nothing but the note that a backup was made.</summary>
public static class BackupRole
{
    /// <summary>Setting with the role's name, for whoever migrates and restores.</summary>
    public const string Setting = "Database:BackupRole";

    /// <summary>In a schema of its own, which is in no backup: so it is there whatever version of the tables is.</summary>
    private const string Note = $"""
        create schema if not exists {Schema};
        create or replace function {Schema}.note(made timestamptz, name text) returns void language plpgsql security definer set search_path = '' as $$ begin {BackupStore.Note}; end $$;
        revoke all on function {Schema}.note from public;
        grant execute on function {Schema}.note to %1$I
        """;

    internal const string Schema = "backups";

    /// <summary>Before a backup is read in: one that an older version made may have the schema in it, without its rights.</summary>
    internal const string Aside = "do $$ begin if to_regnamespace('backups') is not null then alter schema backups rename to backups_aside; end if; end $$";

    /// <summary>After it.</summary>
    internal const string Back = "do $$ begin if to_regnamespace('backups_aside') is not null then drop schema if exists backups cascade; alter schema backups_aside rename to backups; end if; end $$";

    /// <summary>Lets a role read the owner's tables. Once is enough, and again does no harm.</summary>
    /// <exception cref="DatabaseUnavailableException">There is no such role.</exception>
    public static Task GrantAsync(string ownerConnectionString, string role, CancellationToken cancel = default) =>
        Grants.RunAsync(ownerConnectionString, role, "Database__BackupRole", tables: "select", sequences: "select", Note, cancel);
}
