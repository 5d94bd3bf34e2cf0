using ClubCycle.Data.Demo;
using ClubCycle.Data.Plans;
using ClubCycle.Planning;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Rules;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Text;

namespace ClubCycle.Data.Tests.Demo;

public sealed class DemoClubTests : IAsyncLifetime
{
    private readonly ClubData data = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync() => data.InitializeAsync();

    public ValueTask DisposeAsync() => data.DisposeAsync();

    [Theory]
    [InlineData("2026-11-25")]
    [InlineData("2027-02-28")]
    [InlineData("2028-02-29")]
    [InlineData("2027-06-15")]
    public async Task On_any_day_every_squad_is_in_the_middle_of_a_published_year_and_one_has_a_change_that_is_not(string today)
    {
        var date = LocalDatePattern.Iso.Parse(today).Value;
        var club = await FilledAsync(date);

        var board = await club.Store<PlanStore>().DraftsAsync(cancel: Cancel);

        Assert.Equal(DemoSquads.All.Count, board.Count);
        Assert.All(board, b => Assert.True(b.Draft.OrThrow().Plan.Cycle.Contains(date), b.Name));
        Assert.All(board, b => Assert.Equal(1, b.Draft.OrThrow().Revision));
        Assert.Equal(1, board.Count(b => b.Draft.OrThrow().HasUnpublishedChanges));
        Assert.All(board, b => Assert.DoesNotContain(b.Draft.OrThrow().Plan.Findings, f => f.Strength == Strength.Must));
    }

    [Fact]
    public async Task A_squads_draft_is_what_the_planner_makes_of_the_same_inputs()
    {
        var club = await FilledAsync(new LocalDate(2026, 11, 25));

        foreach (var row in await club.Store<PlanStore>().DraftsAsync(cancel: Cancel))
        {
            var draft = row.Draft.OrThrow();
            Assert.Equal(PlanFile.WritePlan(AnnualPlanner.Plan(draft.Request).OrThrow()), PlanFile.WritePlan(draft.Plan));
        }
    }

    [Fact]
    public async Task Filling_it_twice_is_filling_it_once()
    {
        var club = await FilledAsync(new LocalDate(2026, 11, 25));
        var once = await CountsAsync(club);

        await FilledAsync(new LocalDate(2026, 11, 26));

        Assert.Equal(once, await CountsAsync(club));
        Assert.True(once.Players > 50);
    }

    [Fact]
    public async Task A_year_later_the_next_seasons_are_added()
    {
        await FilledAsync(new LocalDate(2026, 11, 25));

        var club = await FilledAsync(new LocalDate(2027, 11, 25));

        Assert.All(await club.Store<PlanStore>().DraftsAsync(cancel: Cancel), b => Assert.True(b.Draft.OrThrow().Plan.Cycle.Contains(new LocalDate(2027, 11, 25)), b.Name));
    }

    private async Task<TestClub> FilledAsync(LocalDate today)
    {
        _ = data.ConnectionString;
        data.Clock.Now = today.At(LocalTime.Noon).InUtc().ToInstant();
        var demo = new DemoClub(data.Contexts, data.Clock);
        await demo.CreateAsync(Cancel);
        await demo.FillAsync(ClubData.By, null, Cancel);
        return data.TestClub(DemoClub.ClubId);
    }

    private static async Task<(int Squads, int Players, int Fixtures, int Revisions, int Sessions, int Seasons, int Closed, int Outbox)> CountsAsync(TestClub club)
    {
        await using var db = await club.OpenAsync();
        return (
            await db.Squads.CountAsync(Cancel), await db.Players.CountAsync(Cancel), await db.Fixtures.CountAsync(Cancel), await db.Revisions.CountAsync(Cancel),
            await db.Sessions.CountAsync(Cancel), await db.Seasons.CountAsync(Cancel), await db.ClosedDays.CountAsync(Cancel), await db.Outbox.CountAsync(Cancel));
    }
}
