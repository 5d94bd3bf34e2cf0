using ClubCycle.Data.Accounts;
using ClubCycle.Data.Players;
using ClubCycle.Web.Features.Welfare;
using Microsoft.Extensions.DependencyInjection;

namespace ClubCycle.Web.Tests.Features.Welfare;

public sealed class ExportNoticeTests(TestApp app) : IClassFixture<TestApp>
{
    private const string Notice = "The data of a player was exported.";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task It_stands_out_on_every_screen_of_the_welfare_officer_until_it_is_seen()
    {
        var club = await app.NewClubAsync();
        var officer = await club.NewCoachAsync(ClubRole.WelfareOfficer);
        var browser = await club.SignedInAsync(officer);
        await ExportAsync(club, club.Coach);

        Assert.Contains(Notice, await browser.GetStringAsync("/squads", Cancel), StringComparison.Ordinal);
        Assert.Contains("The mother asked for it", await browser.GetStringAsync("/exports", Cancel), StringComparison.Ordinal);
        await app.AsAsync(officer, async s => (await s.GetRequiredService<ExportActions>().SeenAsync(app.Clock.Now, Cancel)).OrThrow());

        Assert.DoesNotContain(Notice, await browser.GetStringAsync("/squads", Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_a_welfare_officer_the_other_head_coaches_are_told_and_not_the_one_who_did_it()
    {
        var club = await app.NewClubAsync();
        var other = await club.NewCoachAsync(ClubRole.HeadCoach);
        await ExportAsync(club, club.Head);

        Assert.Contains(Notice, await (await club.SignedInAsync(other)).GetStringAsync("/squads", Cancel), StringComparison.Ordinal);
        Assert.DoesNotContain(Notice, await (await club.SignedInAsync(club.Head)).GetStringAsync("/squads", Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Squad_coaches_are_not_told_of_each_other()
    {
        var club = await app.NewClubAsync();
        await ExportAsync(club, club.Head);

        Assert.DoesNotContain(Notice, await (await club.SignedInAsync(club.Coach)).GetStringAsync("/squads", Cancel), StringComparison.Ordinal);
    }

    private Task<PersonFile> ExportAsync(TestClub club, Guid by) => app.InClubAsync(club.Id, async s =>
        (await s.GetRequiredService<PersonFileStore>().GatherAsync(club.OwnSquad, club.Player, "The mother asked for it", by, Cancel)).OrThrow());
}
