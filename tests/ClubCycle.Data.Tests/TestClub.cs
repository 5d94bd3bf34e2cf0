using ClubCycle.Data.Plans;
using ClubCycle.Data.Players;
using ClubCycle.Data.Seasons;
using ClubCycle.Data.Squads;
using Microsoft.Extensions.DependencyInjection;

namespace ClubCycle.Data.Tests;

/// <summary>A club with the stores of one scope.</summary>
internal sealed class TestClub(Guid id, IServiceProvider scope)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public Guid Id => id;

    public T Store<T>()
        where T : notnull => scope.GetRequiredService<T>();

    public Task<ClubCycleDb> OpenAsync() => Store<IClubDbFactory>().OpenAsync(Cancel);

    public async Task<Guid> SquadAsync(string name = "Women 1") => (await Store<SquadStore>().AddAsync(ClubData.Squad(name), null, ClubData.By, Cancel)).OrThrow();

    public async Task<Guid> SeasonAsync(Guid? squadId = null) => (await Store<SeasonStore>().AddAsync(squadId, null, ClubData.Stints, ClubData.By, Cancel)).OrThrow();

    /// <summary>A squad with a season, so that it has a draft.</summary>
    public async Task<Guid> PlannedSquadAsync()
    {
        await SeasonAsync();
        return await SquadAsync();
    }

    public async Task<Guid> PlayerAsync(Guid squadId, string name = "Ana P.") => (await Store<PlayerStore>().AddAsync(squadId, [name], ClubData.By, Cancel)).OrThrow()[0];

    /// <summary>Lets a minor have links and results.</summary>
    public async Task AgreeAsync(Guid squadId, params Guid[] players) =>
        (await Store<GuardianStore>().AgreedOnPaperAsync(squadId, players, new NodaTime.LocalDate(2026, 2, 1), ClubData.By, Cancel)).OrThrow();

    public async Task<SquadDraft> DraftAsync(Guid squadId) => (await Store<PlanStore>().DraftAsync(squadId, Cancel)).OrThrow();

    public async Task<Revision> PublishAsync(Guid squadId, int expected = 0) =>
        (await Store<PlanStore>().PublishAsync(squadId, expected, NewId.Create(), ClubData.By, "", Cancel)).OrThrow();
}
