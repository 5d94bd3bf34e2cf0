using ClubCycle.Data.Links;
using ClubCycle.Data.Players;
using ClubCycle.Planning;
using ClubCycle.Planning.Players;
using ClubCycle.Web.Account;

namespace ClubCycle.Web.Features.Players;

/// <summary>A squad's players and their secret links, for the coaches of that squad.</summary>
public sealed class PlayerActions(CurrentCoach coaches, PlayerStore players, TestResultStore tests, LinkStore links)
{
    public async Task<Result<IReadOnlyList<StoredPlayer>>> ListAsync(Guid squad, CancellationToken cancel = default) =>
        (await coaches.ForSquadAsync(squad, cancel)).TryGet(out _, out var problems)
            ? new Result<IReadOnlyList<StoredPlayer>>.Ok(await players.ListAsync(squad, cancel))
            : new Result<IReadOnlyList<StoredPlayer>>.Failed(problems);

    public async Task<Result<IReadOnlyList<Guid>>> AddAsync(Guid squad, IReadOnlyList<string> names, CancellationToken cancel = default) =>
        (await coaches.ForSquadAsync(squad, cancel)).TryGet(out var coach, out var problems)
            ? await players.AddAsync(squad, names, coach.UserId, cancel)
            : new Result<IReadOnlyList<Guid>>.Failed(problems);

    public async Task<Result<Guid>> RemoveAsync(StoredPlayer player, CancellationToken cancel = default) =>
        (await coaches.ForSquadAsync(player.SquadId, cancel)).TryGet(out var coach, out var problems)
            ? await players.RemoveAsync(player.SquadId, player.Id, coach.UserId, cancel)
            : new Result<Guid>.Failed(problems);

    public async Task<Result<int>> LimitAsync(StoredPlayer player, PlayerLimits limits, CancellationToken cancel = default) =>
        (await coaches.ForSquadAsync(player.SquadId, cancel)).TryGet(out var coach, out var problems)
            ? await players.LimitAsync(player.SquadId, player.Id, limits, player.Version, coach.UserId, cancel)
            : new Result<int>.Failed(problems);

    public async Task<IReadOnlyList<StoredTestResult>> TestsAsync(StoredPlayer player, CancellationToken cancel = default) =>
        (await coaches.ForSquadAsync(player.SquadId, cancel)).TryGet(out _, out _) ? await tests.ListAsync(player.SquadId, player.Id, cancel) : [];

    public async Task<Result<Guid>> AddTestAsync(StoredPlayer player, FieldTestResult result, CancellationToken cancel = default) =>
        (await coaches.ForSquadAsync(player.SquadId, cancel)).TryGet(out var coach, out var problems)
            ? await tests.AddAsync(player.SquadId, player.Id, result, coach.UserId, cancel)
            : new Result<Guid>.Failed(problems);

    public async Task<Result<Guid>> RemoveTestAsync(StoredPlayer player, Guid test, CancellationToken cancel = default) =>
        (await coaches.ForSquadAsync(player.SquadId, cancel)).TryGet(out var coach, out var problems)
            ? await tests.RemoveAsync(player.SquadId, player.Id, test, coach.UserId, cancel)
            : new Result<Guid>.Failed(problems);

    public async Task<IReadOnlyList<StoredLink>> LinksAsync(StoredPlayer player, CancellationToken cancel = default) =>
        (await coaches.ForSquadAsync(player.SquadId, cancel)).TryGet(out _, out _) ? await links.ListAsync(player.SquadId, player.Id, cancel) : [];

    public async Task<Result<NewLink>> NewLinkAsync(StoredPlayer player, string name, CancellationToken cancel = default) =>
        (await coaches.ForSquadAsync(player.SquadId, cancel)).TryGet(out var coach, out var problems)
            ? await links.CreateAsync(player.SquadId, player.Id, name, coach.UserId, cancel)
            : new Result<NewLink>.Failed(problems);

    /// <param name="player">Whose link it is; a link of anybody else is not there.</param>
    public async Task<Result<Guid>> RevokeAsync(StoredPlayer player, Guid link, CancellationToken cancel = default) =>
        (await coaches.ForSquadAsync(player.SquadId, cancel)).TryGet(out var coach, out var problems)
            ? await links.RevokeAsync(player.SquadId, player.Id, link, coach.UserId, cancel)
            : new Result<Guid>.Failed(problems);
}
