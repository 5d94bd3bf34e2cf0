using ClubCycle.Data.Feeds;
using ClubCycle.Data.Links;
using ClubCycle.Planning.Squads;
using NodaTime;

namespace ClubCycle.Data.Tests.Feeds;

public sealed class FeedVariantsTests(ClubData data) : IClassFixture<ClubData>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_live_links_of_the_squad_ask_for_lies_ready_beside_the_usual()
    {
        var club = await data.NewClubAsync();
        var (squad, other) = (await club.SquadAsync(), await club.SquadAsync("Women 2"));
        await LinkAsync(club, squad, "m-r60");
        await LinkAsync(club, squad, "m-r60");
        await LinkAsync(club, squad, "smld");
        await LinkAsync(club, squad, "pd", revoked: true);
        await LinkAsync(club, other, "p");

        var adults = await club.Store<FeedVariants>().InUseAsync(squad, AgeGroup.Senior, Cancel);
        var children = await club.Store<FeedVariants>().InUseAsync(squad, AgeGroup.Youth(14), Cancel);

        Assert.Equal(["m-r60", "smld", "spm", "spml"], adults.Select(o => o.Code));
        Assert.Equal(["m-r60", "smld", "spm"], children.Select(o => o.Code));
    }

    [Fact]
    public async Task What_nobody_renders_any_more_is_removed_for_that_squad_alone()
    {
        var club = await data.NewClubAsync();
        var (squad, other) = (await club.SquadAsync(), await club.SquadAsync("Women 2"));
        var feeds = club.Store<FeedStore>();
        foreach (var (of, variant) in new[] { (squad, "spm"), (squad, "m"), (other, "m") })
        {
            await feeds.SaveAsync(of, variant, new FeedBody("a", [1], [1], 1, ClubData.Start), Cancel);
        }

        await club.Store<FeedVariants>().KeepOnlyAsync(squad, ["spm"], Cancel);

        Assert.Equal((true, false, true), (await feeds.FindAsync(squad, "spm", Cancel) is not null, await feeds.FindAsync(squad, "m", Cancel) is not null, await feeds.FindAsync(other, "m", Cancel) is not null));
    }

    private static async Task LinkAsync(TestClub club, Guid squad, string options, bool revoked = false)
    {
        var player = await club.PlayerAsync(squad);
        await using var db = await club.OpenAsync();
        db.Links.Add(new LinkRow
        {
            ClubId = club.Id, Id = NewId.Create(), PlayerId = player, TokenHash = LinkToken.HashOf(LinkToken.Create())!, Name = "phone", Options = options,
            CreatedAt = ClubData.Start, RevokedAt = revoked ? ClubData.Start : (Instant?)null,
        });
        await db.SaveChangesAsync(Cancel);
    }
}
