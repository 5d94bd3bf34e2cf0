using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace ClubCycle.Data.Migrations
{
    /// <inheritdoc />
    public partial class ProtectPlayersAndKeepErasures : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<LocalDate>(
                name: "added_on",
                schema: "club",
                table: "players",
                type: "date",
                nullable: false,
                defaultValueSql: "current_date");

            migrationBuilder.AddColumn<bool>(
                name: "protected",
                schema: "club",
                table: "players",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.CreateTable(
                name: "erasures",
                schema: "club",
                columns: table => new
                {
                    club_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_erasures", x => new { x.club_id, x.id });
                    table.ForeignKey(
                        name: "fk_erasures_clubs_club_id",
                        column: x => x.club_id,
                        principalSchema: "club",
                        principalTable: "clubs",
                        principalColumn: "club_id",
                        onDelete: ReferentialAction.Cascade);
                });
            migrationBuilder.ProtectClubTables();
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "erasures",
                schema: "club");

            migrationBuilder.DropColumn(
                name: "added_on",
                schema: "club",
                table: "players");

            migrationBuilder.DropColumn(
                name: "protected",
                schema: "club",
                table: "players");
        }
    }
}
