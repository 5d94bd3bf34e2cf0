using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace ClubCycle.Data.Migrations
{
    /// <inheritdoc />
    public partial class AskGuardiansAndTellOfExports : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<Instant>(
                name: "exports_seen_at",
                schema: "accounts",
                table: "users",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "guardian_age",
                schema: "club",
                table: "clubs",
                type: "integer",
                nullable: false,
                defaultValue: 16);

            migrationBuilder.CreateTable(
                name: "guardian_consents",
                schema: "club",
                columns: table => new
                {
                    club_id = table.Column<Guid>(type: "uuid", nullable: false),
                    player_id = table.Column<Guid>(type: "uuid", nullable: false),
                    token_hash = table.Column<byte[]>(type: "bytea", nullable: true),
                    language = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    asked_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    link_used = table.Column<bool>(type: "boolean", nullable: false),
                    answer = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: true),
                    answered_on = table.Column<LocalDate>(type: "date", nullable: true),
                    ended_on = table.Column<LocalDate>(type: "date", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_guardian_consents", x => new { x.club_id, x.player_id });
                    table.CheckConstraint("ck_guardian_consents_answered_on", "(answer is null) = (answered_on is null)");
                    table.CheckConstraint("ck_guardian_consents_token_hash", "octet_length(token_hash) = 32");
                    table.ForeignKey(
                        name: "fk_guardian_consents_clubs_club_id",
                        column: x => x.club_id,
                        principalSchema: "club",
                        principalTable: "clubs",
                        principalColumn: "club_id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_guardian_consents_players_club_id_player_id",
                        columns: x => new { x.club_id, x.player_id },
                        principalSchema: "club",
                        principalTable: "players",
                        principalColumns: new[] { "club_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.AddCheckConstraint(
                name: "ck_clubs_guardian_age",
                schema: "club",
                table: "clubs",
                sql: "guardian_age between 13 and 18");

            migrationBuilder.CreateIndex(
                name: "ix_guardian_consents_club_id_token_hash",
                schema: "club",
                table: "guardian_consents",
                columns: new[] { "club_id", "token_hash" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_guardian_consents_token_hash",
                schema: "club",
                table: "guardian_consents",
                column: "token_hash");

            migrationBuilder.Sql("create trigger tell_of_change after insert or update or delete on club.guardian_consents for each row execute function club.tell_of_change();");
            migrationBuilder.ProtectClubTables();
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "guardian_consents",
                schema: "club");

            migrationBuilder.DropCheckConstraint(
                name: "ck_clubs_guardian_age",
                schema: "club",
                table: "clubs");

            migrationBuilder.DropColumn(
                name: "exports_seen_at",
                schema: "accounts",
                table: "users");

            migrationBuilder.DropColumn(
                name: "guardian_age",
                schema: "club",
                table: "clubs");
        }
    }
}
