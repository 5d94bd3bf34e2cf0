using System;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace ClubCycle.Data.Migrations
{
    /// <summary>A row for each browser that is signed in, so that signing out ends it on the server; and an audit trail that is only added to.</summary>
    [DbContext(typeof(ClubCycleDb))]
    [Migration("20261126040000_KeepSignIns")]
    public class KeepSignIns : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "sign_ins",
                schema: "accounts",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    user_id = table.Column<Guid>(type: "uuid", nullable: false),
                    started_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    seen_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    by_link = table.Column<bool>(type: "boolean", nullable: false),
                    browser = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_sign_ins", x => x.id);
                    table.ForeignKey(
                        name: "fk_sign_ins_users_user_id",
                        column: x => x.user_id,
                        principalSchema: "accounts",
                        principalTable: "users",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });
            migrationBuilder.CreateIndex(name: "ix_sign_ins_user_id", schema: "accounts", table: "sign_ins", column: "user_id");

            // Rows go with their club, and else only by the sweep, which says until when.
            migrationBuilder.Sql(
                """
                create function club.keep_audit() returns trigger language plpgsql as $$
                begin
                    if tg_op = 'DELETE' and (pg_trigger_depth() > 1
                        or old.at < nullif(current_setting('app.audit_until', true), '')::timestamptz) then
                        return old;
                    end if;
                    raise exception 'The audit trail is only added to.';
                end $$;
                create trigger keep_audit before update or delete on club.audit for each row execute function club.keep_audit();
                create trigger keep_audit_whole before truncate on club.audit for each statement execute function club.keep_audit();
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("drop trigger keep_audit on club.audit; drop trigger keep_audit_whole on club.audit; drop function club.keep_audit();");
            migrationBuilder.DropTable(name: "sign_ins", schema: "accounts");
        }
    }
}
