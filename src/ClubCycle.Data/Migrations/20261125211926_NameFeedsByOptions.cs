using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace ClubCycle.Data.Migrations
{
    /// <inheritdoc />
    public partial class NameFeedsByOptions : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            // Feeds that lie ready go on being sent until the next publishing. Without a club set, row security shows none of them.
            migrationBuilder.Sql(
                """
                select set_config('app.club', '*', true);
                update club.feed_bodies set variant = case variant when 'full' then 'spm' else 'spm-w' end where variant in ('full', 'waiting');
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql(
                """
                select set_config('app.club', '*', true);
                update club.feed_bodies set variant = case variant when 'spm' then 'full' else 'waiting' end where variant in ('spm', 'spm-w');
                """);
        }
    }
}
