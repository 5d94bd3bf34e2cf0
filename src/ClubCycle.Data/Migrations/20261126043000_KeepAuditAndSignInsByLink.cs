using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace ClubCycle.Data.Migrations
{
    /// <summary>The audit trail is only added to; a sign-in says whether it came by a one-time link.</summary>
    [DbContext(typeof(ClubCycleDb))]
    [Migration("20261126043000_KeepAuditAndSignInsByLink")]
    public class KeepAuditAndSignInsByLink : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<bool>(name: "by_link", schema: "accounts", table: "sign_ins", type: "boolean", nullable: false, defaultValue: false);

            // Rows go with their club, and else only by the sweep, which says until when.
            migrationBuilder.Sql(
                """
                create function club.keep_audit() returns trigger language plpgsql as $$
                begin
                    if tg_op = 'DELETE' then
                        if pg_trigger_depth() > 1 or old.at < nullif(current_setting('app.audit_until', true), '')::timestamptz then
                            return old;
                        end if;
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
            migrationBuilder.DropColumn(name: "by_link", schema: "accounts", table: "sign_ins");
        }
    }
}
