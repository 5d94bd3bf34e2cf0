using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace ClubCycle.Data.Migrations
{
    /// <inheritdoc />
    public partial class AddTestResultsAndPlayersLimits : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<bool>(
                name: "asks_health_questions",
                schema: "club",
                table: "players",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<short>(
                name: "birth_year",
                schema: "club",
                table: "players",
                type: "smallint",
                nullable: true);

            migrationBuilder.AddColumn<LocalDate>(
                name: "growing_fast_since",
                schema: "club",
                table: "players",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<LocalDate>(
                name: "health_settled_on",
                schema: "club",
                table: "players",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "workout",
                schema: "club",
                table: "pins",
                type: "character varying(60)",
                maxLength: 60,
                nullable: true);

            migrationBuilder.CreateTable(
                name: "test_results",
                schema: "club",
                columns: table => new
                {
                    club_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    player_id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "character varying(30)", maxLength: 30, nullable: false),
                    taken_on = table.Column<LocalDate>(type: "date", nullable: false),
                    value = table.Column<double>(type: "double precision", nullable: false),
                    second = table.Column<int>(type: "integer", nullable: true),
                    exercise = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: true),
                    entered_by = table.Column<Guid>(type: "uuid", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_test_results", x => new { x.club_id, x.id });
                    table.ForeignKey(
                        name: "fk_test_results_clubs_club_id",
                        column: x => x.club_id,
                        principalSchema: "club",
                        principalTable: "clubs",
                        principalColumn: "club_id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_test_results_players_club_id_player_id",
                        columns: x => new { x.club_id, x.player_id },
                        principalSchema: "club",
                        principalTable: "players",
                        principalColumns: new[] { "club_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.AddCheckConstraint(
                name: "ck_players_birth_year",
                schema: "club",
                table: "players",
                sql: "birth_year between 1900 and 2100");

            migrationBuilder.CreateIndex(
                name: "ix_test_results_club_id_player_id_taken_on",
                schema: "club",
                table: "test_results",
                columns: new[] { "club_id", "player_id", "taken_on" });

            migrationBuilder.ProtectClubTables();
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "test_results",
                schema: "club");

            migrationBuilder.DropCheckConstraint(
                name: "ck_players_birth_year",
                schema: "club",
                table: "players");

            migrationBuilder.DropColumn(
                name: "asks_health_questions",
                schema: "club",
                table: "players");

            migrationBuilder.DropColumn(
                name: "birth_year",
                schema: "club",
                table: "players");

            migrationBuilder.DropColumn(
                name: "growing_fast_since",
                schema: "club",
                table: "players");

            migrationBuilder.DropColumn(
                name: "health_settled_on",
                schema: "club",
                table: "players");

            migrationBuilder.DropColumn(
                name: "workout",
                schema: "club",
                table: "pins");
        }
    }
}
