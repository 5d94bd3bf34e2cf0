using Bunit;
using ClubCycle.Data.Seasons;
using ClubCycle.Data.Squads;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using ClubCycle.Web.Features.Seasons;
using ClubCycle.Web.Features.Squads;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace ClubCycle.Web.Tests.Features.Seasons;

/// <summary>The panels of the season dates page over the real actions.</summary>
public sealed class SeasonPanelTests(TestApp app) : IClassFixture<TestApp>
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private static CancellationToken Cancel => Xunit.TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_next_season_is_proposed_shown_for_each_squad_and_saved_with_what_was_ticked()
    {
        var club = await app.NewClubAsync();
        await club.PublishAsync();

        await ShowAsync(club, club.Head, async (services, context) =>
        {
            var panel = await NextSeasonAsync(services, context, head: true, open: "club");
            panel.WaitForAssertion(() => Assert.Equal(["Blue", "Red"], panel.FindAll("h3").Select(h => h.TextContent).Where(t => t is "Blue" or "Red")), Patience);
            Assert.Equal("2027-09-30", panel.Find("#next-first-0").GetAttribute("value"));

            // Only Blue has a published year behind it.
            panel.FindAll("input[type=checkbox]").Single().Change(true);
            panel.WaitForState(() => panel.FindAll("button").Any(b => b.TextContent.StartsWith("Save", StringComparison.Ordinal) && !b.HasAttribute("disabled")), Patience);
            panel.FindAll("button").Single(b => b.TextContent.StartsWith("Save", StringComparison.Ordinal)).Click();
            panel.WaitForState(() => panel.FindAll("[role=status]").Any(s => s.TextContent.Contains("Saved", StringComparison.Ordinal)), Patience);
        });

        await app.InClubAsync(club.Id, async services =>
        {
            var seasons = await services.GetRequiredService<SeasonStore>().ListAsync(Cancel);
            Assert.Equal([new LocalDate(2027, 2, 28), new LocalDate(2028, 2, 27)], seasons.Select(s => s.Season.Cycle.End));
            Assert.Equal(TrainingAge.Trained, (await services.GetRequiredService<SquadStore>().FindAsync(club.OwnSquad, Cancel)).OrThrow().Squad.TrainingAge);
            return true;
        });
    }

    [Fact]
    public async Task A_squad_coach_sees_the_next_year_and_cannot_save_it()
    {
        var club = await app.NewClubAsync();

        await ShowAsync(club, club.Coach, async (services, context) =>
        {
            var panel = await NextSeasonAsync(services, context, head: false, open: club.OwnSquad.ToString());
            panel.WaitForAssertion(() => Assert.Contains("Only a head coach can save season dates.", panel.Markup, StringComparison.Ordinal), Patience);
            Assert.DoesNotContain(panel.FindAll("button"), b => b.TextContent.StartsWith("Save", StringComparison.Ordinal));
        });
    }

    [Fact]
    public async Task Ticked_holidays_show_their_effect_and_are_closed_in_one_act()
    {
        var club = await app.NewClubAsync();

        await ShowAsync(club, club.Head, async (services, context) =>
        {
            var panel = await ClosedDaysAsync(services, context, head: true);
            panel.WaitForElement("#holiday-country", Patience).Change("Ireland");
            panel.WaitForElement("ul.tick-list li", Patience);
            panel.Find("label.check input").Change(true);
            panel.WaitForAssertion(() => Assert.Equal(["Blue", "Red"], panel.FindAll(".effect summary strong").Select(h => h.TextContent).Order()), Patience);
            panel.FindAll("button").Single(b => b.TextContent.StartsWith("Close", StringComparison.Ordinal)).Click();
            panel.WaitForElement("[role=status]", Patience);
        });

        await app.InClubAsync(club.Id, async services =>
        {
            var closed = await services.GetRequiredService<ClosedDayStore>().ListAsync(Cancel);
            Assert.Equal((new LocalDate(2026, 3, 17), new LocalDate(2027, 2, 1), 10), (closed[0].Days.First, closed[^1].Days.Last, closed.Count));
            Assert.All(closed, c => Assert.Null(c.SquadId));
            return true;
        });
    }

    [Fact]
    public async Task Days_entered_by_hand_for_a_squad_are_that_squads()
    {
        var club = await app.NewClubAsync();

        await ShowAsync(club, club.Coach, async (services, context) =>
        {
            var panel = await ClosedDaysAsync(services, context, head: false);
            panel.WaitForElement("#closed-how", Patience).Change("hand");
            panel.WaitForElement("#closed-first", Patience).Change("2026-10-10");
            panel.WaitForElement("#closed-why", Patience).Change(" Fair ");
            panel.WaitForState(() => panel.FindAll("button").Any(b => b.TextContent.Contains("Fair", StringComparison.Ordinal) && !b.HasAttribute("disabled")), Patience);
            panel.FindAll("button").Single(b => b.TextContent.Contains("Fair", StringComparison.Ordinal)).Click();
            panel.WaitForElement("[role=status]", Patience);
        });

        var stored = await app.InClubAsync(club.Id, services => services.GetRequiredService<ClosedDayStore>().ListAsync(Cancel));
        Assert.Equal((club.OwnSquad, new ClosedDays(new(2026, 10, 10), new(2026, 10, 10), "Fair")), (stored.Single().SquadId!.Value, stored.Single().Days));
    }

    private Task<TestClub> ShowAsync(TestClub club, Guid person, Func<IServiceProvider, BunitContext, Task> look) => app.AsAsync(person, async services =>
    {
        await using var context = new BunitContext();
        context.Services.AddSingleton(services.GetRequiredService<SeasonActions>());
        context.Services.AddSingleton(services.GetRequiredService<NextSeasonActions>());
        await look(services, context);
        return club;
    });

    private static async Task<IRenderedComponent<NextSeasonPanel>> NextSeasonAsync(IServiceProvider services, BunitContext context, bool head, string open)
    {
        var squads = (await services.GetRequiredService<SquadActions>().ListAsync(Cancel)).OrThrow();
        var seasons = (await services.GetRequiredService<SeasonActions>().ListAsync(Cancel)).OrThrow();
        return context.Render<NextSeasonPanel>(p => p.Add(c => c.Head, head).Add(c => c.Squads, squads).Add(c => c.Seasons, seasons).Add(c => c.Open, open));
    }

    private static async Task<IRenderedComponent<ClosedDaysPanel>> ClosedDaysAsync(IServiceProvider services, BunitContext context, bool head)
    {
        var squads = (await services.GetRequiredService<SquadActions>().ListAsync(Cancel)).OrThrow();
        return context.Render<ClosedDaysPanel>(p => p.Add(c => c.Head, head).Add(c => c.Squads, squads));
    }
}
