using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace ClubCycle.Data.Migrations
{
    /// <inheritdoc />
    public partial class LetGuidesBeClosed : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<bool>(
                name: "guide_closed",
                schema: "accounts",
                table: "users",
                type: "boolean",
                nullable: false,
                defaultValue: false);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "guide_closed",
                schema: "accounts",
                table: "users");
        }
    }
}
