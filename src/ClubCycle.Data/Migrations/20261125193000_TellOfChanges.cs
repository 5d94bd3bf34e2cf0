using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace ClubCycle.Data.Migrations
{
    /// <summary>Tables that screens show tell of each change at its commit: the club, the squad or a dash, and who changed it or a dash.</summary>
    [DbContext(typeof(ClubCycleDb))]
    [Migration("20261125193000_TellOfChanges")]
    public class TellOfChanges : Migration
    {
        // Each table and the column that names its squad; null where it belongs to the whole club.
        private static readonly (string Table, string Squad, string Events)[] Told =
        [
            ("clubs", null, "insert or update or delete"),
            ("squads", "id", "insert or update or delete"),
            ("squad_coaches", "squad_id", "insert or update or delete"),
            ("seasons", "squad_id", "insert or update or delete"),
            ("stints", null, "insert or update or delete"),
            ("closed_days", "squad_id", "insert or update or delete"),
            ("fixtures", "squad_id", "insert or update or delete"),
            ("pins", "squad_id", "insert or update or delete"),
            ("phase_lengths", "squad_id", "insert or update or delete"),
            ("accepted_findings", "squad_id", "insert or update or delete"),
            ("revisions", "squad_id", "insert or update or delete"),
            ("templates", null, "insert or update or delete"),
            ("template_versions", null, "insert or update or delete"),
            ("players", "squad_id", "insert or update or delete"),

            // Not when a phone reads its calendar.
            ("links", null, "insert or delete or update of revoked_at"),
        ];

        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            // PostgreSQL delivers at commit only, and equal messages of one transaction once.
            migrationBuilder.Sql(
                """
                create function club.tell_of_change() returns trigger language plpgsql as $$
                declare
                    tell text := format(
                        'select pg_notify(''club_changes'', concat_ws('' '', ($1).club_id, coalesce(%s::text, ''-''), coalesce(nullif(current_setting(''app.origin'', true), ''''), ''-'')))',
                        coalesce('($1).' || quote_ident(tg_argv[0]), 'null'));
                begin
                    if tg_op <> 'INSERT' then
                        execute tell using old;
                    end if;
                    if tg_op <> 'DELETE' then
                        execute tell using new;
                    end if;
                    return null;
                end $$;
                """);
            foreach (var (table, squad, events) in Told)
            {
                migrationBuilder.Sql($"create trigger tell_of_change after {events} on club.{table} for each row execute function club.tell_of_change({(squad is null ? "" : $"'{squad}'")});");
            }
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder) => migrationBuilder.Sql("drop function club.tell_of_change() cascade;");
    }
}
