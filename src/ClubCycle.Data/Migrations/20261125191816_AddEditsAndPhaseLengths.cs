using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace ClubCycle.Data.Migrations
{
    /// <inheritdoc />
    public partial class AddEditsAndPhaseLengths : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<Instant>(
                name: "retired_at",
                schema: "club",
                table: "templates",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "notice_address",
                schema: "club",
                table: "squads",
                type: "character varying(254)",
                maxLength: 254,
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "restored_from",
                schema: "club",
                table: "squads",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "restored_over",
                schema: "club",
                table: "squads",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "inputs",
                schema: "club",
                table: "revisions",
                type: "jsonb",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "minutes",
                schema: "club",
                table: "pins",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "note",
                schema: "club",
                table: "pins",
                type: "character varying(200)",
                maxLength: 200,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "body",
                schema: "club",
                table: "outbox",
                type: "text",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "edits",
                schema: "club",
                columns: table => new
                {
                    club_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    squad_id = table.Column<Guid>(type: "uuid", nullable: true),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    words = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    changes = table.Column<string>(type: "jsonb", nullable: false),
                    undone_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_edits", x => new { x.club_id, x.id });
                    table.ForeignKey(
                        name: "fk_edits_clubs_club_id",
                        column: x => x.club_id,
                        principalSchema: "club",
                        principalTable: "clubs",
                        principalColumn: "club_id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_edits_squads_club_id_squad_id",
                        columns: x => new { x.club_id, x.squad_id },
                        principalSchema: "club",
                        principalTable: "squads",
                        principalColumns: new[] { "club_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "phase_lengths",
                schema: "club",
                columns: table => new
                {
                    club_id = table.Column<Guid>(type: "uuid", nullable: false),
                    squad_id = table.Column<Guid>(type: "uuid", nullable: false),
                    season_id = table.Column<Guid>(type: "uuid", nullable: false),
                    gap = table.Column<int>(type: "integer", nullable: false),
                    chain = table.Column<string>(type: "character varying(100)", maxLength: 100, nullable: false),
                    phase = table.Column<int>(type: "integer", nullable: false),
                    weeks = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_phase_lengths", x => new { x.club_id, x.squad_id, x.season_id, x.gap, x.chain, x.phase });
                    table.CheckConstraint("ck_phase_lengths_weeks", "weeks between 0 and 60");
                    table.ForeignKey(
                        name: "fk_phase_lengths_clubs_club_id",
                        column: x => x.club_id,
                        principalSchema: "club",
                        principalTable: "clubs",
                        principalColumn: "club_id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_phase_lengths_seasons_club_id_season_id",
                        columns: x => new { x.club_id, x.season_id },
                        principalSchema: "club",
                        principalTable: "seasons",
                        principalColumns: new[] { "club_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_phase_lengths_squads_club_id_squad_id",
                        columns: x => new { x.club_id, x.squad_id },
                        principalSchema: "club",
                        principalTable: "squads",
                        principalColumns: new[] { "club_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.AddCheckConstraint(
                name: "ck_pins_minutes",
                schema: "club",
                table: "pins",
                sql: "minutes between 1 and 1440");

            migrationBuilder.CreateIndex(
                name: "ix_edits_club_id_squad_id_by_number",
                schema: "club",
                table: "edits",
                columns: new[] { "club_id", "squad_id", "by", "number" });

            migrationBuilder.CreateIndex(
                name: "ix_phase_lengths_club_id_season_id",
                schema: "club",
                table: "phase_lengths",
                columns: new[] { "club_id", "season_id" });

            // A season's dates change one after the other; only at the end must they lie apart.
            migrationBuilder.Sql(
                """
                alter table club.stints drop constraint ex_stints_days;
                alter table club.stints add constraint ex_stints_days
                exclude using gist (club_id with =, season_id with =, days with &&) deferrable initially deferred
                """);
            migrationBuilder.ProtectClubTables();
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "edits",
                schema: "club");

            migrationBuilder.DropTable(
                name: "phase_lengths",
                schema: "club");

            migrationBuilder.DropCheckConstraint(
                name: "ck_pins_minutes",
                schema: "club",
                table: "pins");

            migrationBuilder.DropColumn(
                name: "retired_at",
                schema: "club",
                table: "templates");

            migrationBuilder.DropColumn(
                name: "notice_address",
                schema: "club",
                table: "squads");

            migrationBuilder.DropColumn(
                name: "restored_from",
                schema: "club",
                table: "squads");

            migrationBuilder.DropColumn(
                name: "restored_over",
                schema: "club",
                table: "squads");

            migrationBuilder.DropColumn(
                name: "inputs",
                schema: "club",
                table: "revisions");

            migrationBuilder.DropColumn(
                name: "minutes",
                schema: "club",
                table: "pins");

            migrationBuilder.DropColumn(
                name: "note",
                schema: "club",
                table: "pins");

            migrationBuilder.DropColumn(
                name: "body",
                schema: "club",
                table: "outbox");
        }
    }
}
