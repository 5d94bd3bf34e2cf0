using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace ClubCycle.Data.Migrations
{
    /// <inheritdoc />
    public partial class AddPasskeysAndAskForSecondFactor : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<bool>(
                name: "by_passkey",
                schema: "accounts",
                table: "sign_ins",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<bool>(
                name: "asks_second_factor",
                schema: "club",
                table: "clubs",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.CreateTable(
                name: "user_passkeys",
                schema: "accounts",
                columns: table => new
                {
                    credential_id = table.Column<byte[]>(type: "bytea", maxLength: 1023, nullable: false),
                    user_id = table.Column<Guid>(type: "uuid", nullable: false),
                    data = table.Column<string>(type: "jsonb", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_user_passkeys", x => x.credential_id);
                    table.ForeignKey(
                        name: "fk_user_passkeys_users_user_id",
                        column: x => x.user_id,
                        principalSchema: "accounts",
                        principalTable: "users",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "ix_user_passkeys_user_id",
                schema: "accounts",
                table: "user_passkeys",
                column: "user_id");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "user_passkeys",
                schema: "accounts");

            migrationBuilder.DropColumn(
                name: "by_passkey",
                schema: "accounts",
                table: "sign_ins");

            migrationBuilder.DropColumn(
                name: "asks_second_factor",
                schema: "club",
                table: "clubs");
        }
    }
}
