using Bunit;
using ClubCycle.Data.Squads;
using ClubCycle.Web.Features.Notices;
using Microsoft.Extensions.DependencyInjection;

namespace ClubCycle.Web.Tests.Notices;

public sealed class NoticePanelTests(TestApp app) : IClassFixture<TestApp>
{
    private static CancellationToken Cancel => Xunit.TestContext.Current.CancellationToken;

    [Fact]
    public async Task Without_a_mail_server_the_notice_can_be_copied_and_nothing_offers_to_send_it()
    {
        var club = await app.NewClubAsync();
        await app.InClubAsync(club.Id, async s => (await s.GetRequiredService<SquadStore>().SetNoticeAddressAsync(club.OwnSquad, "list@example.org", 2, club.Head, Cancel)) is var _);
        await club.PublishAsync();

        await app.AsAsync(club.Head, async services =>
        {
            await using var context = new BunitContext();
            context.Services.AddSingleton(services.GetRequiredService<NoticeActions>());
            var panel = context.Render<NoticePanel>(p => p.Add(c => c.Squad, club.OwnSquad).Add(c => c.Revision, 1));
            panel.WaitForElement("[data-copy]");

            Assert.Equal(panel.Find(".change-notice").Id, panel.Find("[data-copy]").GetAttribute("data-copy"));
            Assert.StartsWith("Blue: what changed", panel.Find(".change-notice").TextContent, StringComparison.Ordinal);
            Assert.Single(panel.FindAll("button"));
            return true;
        });
    }
}
