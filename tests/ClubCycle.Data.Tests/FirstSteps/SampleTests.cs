using ClubCycle.Data.FirstSteps;
using ClubCycle.Data.Plans;
using ClubCycle.Data.Players;
using ClubCycle.Data.Seasons;
using ClubCycle.Data.Squads;
using ClubCycle.Planning.Rules;
using Microsoft.EntityFrameworkCore;

namespace ClubCycle.Data.Tests.FirstSteps;

public sealed class SampleTests : IAsyncLifetime
{
    private readonly ClubData data = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync() => data.InitializeAsync();

    public ValueTask DisposeAsync() => data.DisposeAsync();

    [Fact]
    public async Task A_new_club_gets_squads_with_years_players_and_nothing_published()
    {
        var club = await data.NewClubAsync();

        Assert.Equal(3, (await club.Store<SampleStore>().AddAsync(ClubData.By, Cancel)).OrThrow());

        var drafts = await club.Store<PlanStore>().DraftsAsync(cancel: Cancel);
        Assert.Equal(3, drafts.Count);
        Assert.All(drafts, d => Assert.DoesNotContain(d.Draft.OrThrow().Plan.Findings, f => f.Strength == Strength.Must));
        Assert.All(drafts, d => Assert.Equal(0, d.Draft.OrThrow().Revision));
        Assert.All(drafts, d => Assert.Contains("(sample)", d.Name, StringComparison.Ordinal));
        Assert.True(await club.Store<SampleStore>().IsThereAsync(Cancel));
    }

    [Fact]
    public async Task A_club_with_squads_of_its_own_gets_none()
    {
        var club = await data.NewClubAsync();
        await club.SquadAsync();

        Problems.AssertProblem("sample.squads-there", await club.Store<SampleStore>().AddAsync(ClubData.By, Cancel));
        Assert.Single(await club.Store<SquadStore>().ListAsync(Cancel));
    }

    [Fact]
    public async Task Clearing_it_leaves_an_empty_club()
    {
        var club = await data.NewClubAsync();
        await club.Store<SampleStore>().AddAsync(ClubData.By, Cancel);
        var squad = (await club.Store<SquadStore>().ListAsync(Cancel))[0].Squad.Key;
        await club.PublishAsync(squad);

        Assert.Equal(3, (await club.Store<SampleStore>().ClearAsync(ClubData.By, Cancel)).OrThrow());

        Assert.Empty(await club.Store<SquadStore>().ListAsync(Cancel));
        Assert.Empty(await club.Store<SeasonStore>().ListAsync(Cancel));
        await using var db = await club.OpenAsync();
        Assert.Equal(0, await db.Players.CountAsync(Cancel) + await db.Fixtures.CountAsync(Cancel) + await db.Revisions.CountAsync(Cancel));
        Assert.False(await club.Store<SampleStore>().IsThereAsync(Cancel));
    }

    [Fact]
    public async Task Clearing_it_leaves_what_the_club_made_itself()
    {
        var club = await data.NewClubAsync();
        await club.Store<SampleStore>().AddAsync(ClubData.By, Cancel);
        var own = await club.SquadAsync("Our own");
        var player = await club.PlayerAsync(own);

        await club.Store<SampleStore>().ClearAsync(ClubData.By, Cancel);

        Assert.Equal([own], (await club.Store<SquadStore>().ListAsync(Cancel)).Select(s => s.Squad.Key));
        Assert.Equal([player], (await club.Store<PlayerStore>().ListAsync(own, Cancel)).Select(p => p.Id));
        Assert.Single(await club.Store<SeasonStore>().ListAsync(Cancel));
    }

    [Fact]
    public async Task Steps_tick_themselves_off_by_what_is_there()
    {
        var club = await data.NewClubAsync();
        Assert.Equal(new Data.FirstSteps.FirstSteps(false, false, false, false, false, false, false), await club.Store<FirstStepsStore>().LookAsync(ClubData.By, Cancel));

        await club.PublishAsync(await club.PlannedSquadAsync());

        Assert.Equal(new Data.FirstSteps.FirstSteps(true, true, false, true, false, false, false), await club.Store<FirstStepsStore>().LookAsync(ClubData.By, Cancel));
    }
}
