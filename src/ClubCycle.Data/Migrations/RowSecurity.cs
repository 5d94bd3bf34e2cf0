using Microsoft.EntityFrameworkCore.Migrations;

namespace ClubCycle.Data.Migrations;

/// <summary>The second fence around club data, for a day when a query forgets the first.</summary>
internal static class RowSecurity
{
    /// <summary>Protects every table of schema <c>club</c> that is not protected yet. The last step of a migration that adds one.</summary>
    /// <remarks>FORCE binds the owner too. A setting that was used before reads as an empty string, not as null, and neither that nor <c>*</c> is a UUID.</remarks>
    public static void ProtectClubTables(this MigrationBuilder migration) => migration.Sql(
        """
        do $$
        declare name text;
        begin
            for name in
                select c.relname from pg_class c join pg_namespace n on n.oid = c.relnamespace
                where n.nspname = 'club' and c.relkind in ('r', 'p') and not c.relforcerowsecurity
            loop
                execute format('alter table club.%I enable row level security', name);
                execute format('alter table club.%I force row level security', name);
                execute format(
                    'create policy own_club on club.%I using (club_id = nullif(nullif(current_setting(''app.club'', true), ''''), ''*'')::uuid or current_setting(''app.club'', true) = ''*'')',
                    name);
            end loop;
        end $$;
        """);
}
