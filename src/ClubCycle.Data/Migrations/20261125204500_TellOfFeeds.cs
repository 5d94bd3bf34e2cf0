using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace ClubCycle.Data.Migrations
{
    /// <summary>Nodes that keep feeds in memory hear of new ones, on a channel of their own: no screen shows them. A link tells of what its calendar shows, too.</summary>
    [DbContext(typeof(ClubCycleDb))]
    [Migration("20261125204500_TellOfFeeds")]
    public class TellOfFeeds : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder) => migrationBuilder.Sql(
            """
            create function club.tell_of_feed() returns trigger language plpgsql as $$
            declare
                feed club.feed_bodies := coalesce(new, old);
            begin
                perform pg_notify('feed_changes', concat_ws(' ', feed.club_id, feed.squad_id, '-'));
                return null;
            end $$;
            create trigger tell_of_feed after insert or update or delete on club.feed_bodies for each row execute function club.tell_of_feed();
            drop trigger tell_of_change on club.links;
            create trigger tell_of_change after insert or delete or update of revoked_at, options on club.links for each row execute function club.tell_of_change();
            """);

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder) => migrationBuilder.Sql(
            """
            drop function club.tell_of_feed() cascade;
            drop trigger tell_of_change on club.links;
            create trigger tell_of_change after insert or delete or update of revoked_at on club.links for each row execute function club.tell_of_change();
            """);
    }
}
