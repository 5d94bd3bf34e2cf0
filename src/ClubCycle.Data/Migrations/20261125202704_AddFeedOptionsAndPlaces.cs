using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace ClubCycle.Data.Migrations
{
    /// <inheritdoc />
    public partial class AddFeedOptionsAndPlaces : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "place",
                schema: "club",
                table: "sessions",
                type: "character varying(100)",
                maxLength: 100,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "options",
                schema: "club",
                table: "links",
                type: "character varying(20)",
                maxLength: 20,
                nullable: false,
                defaultValue: "spm");

            migrationBuilder.AddColumn<string>(
                name: "place",
                schema: "club",
                table: "fixtures",
                type: "character varying(100)",
                maxLength: 100,
                nullable: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "place",
                schema: "club",
                table: "sessions");

            migrationBuilder.DropColumn(
                name: "options",
                schema: "club",
                table: "links");

            migrationBuilder.DropColumn(
                name: "place",
                schema: "club",
                table: "fixtures");
        }
    }
}
