using ClubCycle.Data.Clubs;
using ClubCycle.Data.Links;
using ClubCycle.Data.Players;
using ClubCycle.Planning;
using ClubCycle.Planning.Feeds;
using ClubCycle.Planning.Players;
using ClubCycle.Web.Account;

namespace ClubCycle.Web.Features.Players;

/// <summary>A squad's players and their secret links, for the coaches of that squad.</summary>
public sealed class PlayerActions(CurrentCoach coaches, PlayerStore players, TestResultStore tests, WelfareStore welfare, PersonFileStore files, LinkStore links, ClubStore clubs)
{
    public async Task<Result<IReadOnlyList<StoredPlayer>>> ListAsync(Guid squad, CancellationToken cancel = default) =>
        (await coaches.ForSquadAsync(squad, cancel)).TryGet(out _, out var problems)
            ? new Result<IReadOnlyList<StoredPlayer>>.Ok(await players.ListAsync(squad, cancel))
            : new Result<IReadOnlyList<StoredPlayer>>.Failed(problems);

    public async Task<Result<IReadOnlyList<Guid>>> AddAsync(Guid squad, IReadOnlyList<string> names, CancellationToken cancel = default) =>
        (await coaches.ToChangeAsync(squad, cancel)).TryGet(out var coach, out var problems)
            ? await players.AddAsync(squad, names, coach.UserId, cancel)
            : new Result<IReadOnlyList<Guid>>.Failed(problems);

    public async Task<Result<Guid>> RemoveAsync(StoredPlayer player, CancellationToken cancel = default) =>
        (await coaches.ToChangeAsync(player.SquadId, cancel)).TryGet(out var coach, out var problems)
            ? await players.RemoveAsync(player.SquadId, player.Id, coach.UserId, cancel)
            : new Result<Guid>.Failed(problems);

    public async Task<Result<int>> LimitAsync(StoredPlayer player, PlayerLimits limits, CancellationToken cancel = default) =>
        (await coaches.ToChangeAsync(player.SquadId, cancel)).TryGet(out var coach, out var problems)
            ? await players.LimitAsync(player.SquadId, player.Id, limits, player.Version, coach.UserId, cancel)
            : new Result<int>.Failed(problems);

    /// <summary>Reading one player's tests is noted, for the welfare officer to see.</summary>
    public async Task<IReadOnlyList<StoredTestResult>> TestsAsync(StoredPlayer player, CancellationToken cancel = default)
    {
        if (!(await coaches.ForSquadAsync(player.SquadId, cancel)).TryGet(out var coach, out _))
        {
            return [];
        }

        await welfare.NoteReadAsync(player.SquadId, player.Id, coach.UserId, cancel);
        return await tests.ListAsync(player.SquadId, player.Id, cancel);
    }

    /// <summary>All that is stored about one player, and the welfare officer sees who asked for it and why.</summary>
    public async Task<Result<PersonFile>> ExportAsync(Guid squad, Guid player, string reason, CancellationToken cancel = default) =>
        (await coaches.ToChangeAsync(squad, cancel)).TryGet(out var coach, out var problems)
            ? await files.GatherAsync(squad, player, reason, coach.UserId, cancel)
            : new Result<PersonFile>.Failed(problems);

    public async Task<Result<Guid>> AddTestAsync(StoredPlayer player, FieldTestResult result, CancellationToken cancel = default) =>
        (await coaches.ToChangeAsync(player.SquadId, cancel)).TryGet(out var coach, out var problems)
            ? await tests.AddAsync(player.SquadId, player.Id, result, coach.UserId, cancel)
            : new Result<Guid>.Failed(problems);

    public async Task<Result<Guid>> RemoveTestAsync(StoredPlayer player, Guid test, CancellationToken cancel = default) =>
        (await coaches.ToChangeAsync(player.SquadId, cancel)).TryGet(out var coach, out var problems)
            ? await tests.RemoveAsync(player.SquadId, player.Id, test, coach.UserId, cancel)
            : new Result<Guid>.Failed(problems);

    public async Task<IReadOnlyList<StoredLink>> LinksAsync(StoredPlayer player, CancellationToken cancel = default) =>
        (await coaches.ForSquadAsync(player.SquadId, cancel)).TryGet(out _, out _) ? await links.ListAsync(player.SquadId, player.Id, cancel) : [];

    public async Task<Result<NewLink>> NewLinkAsync(StoredPlayer player, string name, FeedOptions options, CancellationToken cancel = default) =>
        coaches.Counted(await coaches.ToChangeAsync(player.SquadId, cancel)).TryGet(out var coach, out var problems)
            ? await links.CreateAsync(player.SquadId, player.Id, name, options, coach.UserId, cancel)
            : new Result<NewLink>.Failed(problems);

    /// <summary>The address stays.</summary>
    /// <param name="player">Whose link it is; a link of anybody else is not there.</param>
    public async Task<Result<Guid>> ChangeLinkAsync(StoredPlayer player, Guid link, string name, FeedOptions options, CancellationToken cancel = default) =>
        (await coaches.ToChangeAsync(player.SquadId, cancel)).TryGet(out var coach, out var problems)
            ? await links.ChangeAsync(player.SquadId, player.Id, link, name, options, coach.UserId, cancel)
            : new Result<Guid>.Failed(problems);

    /// <param name="player">Whose link it is; a link of anybody else is not there.</param>
    public async Task<Result<Guid>> RevokeAsync(StoredPlayer player, Guid link, CancellationToken cancel = default) =>
        (await coaches.ToChangeAsync(player.SquadId, cancel)).TryGet(out var coach, out var problems)
            ? await links.RevokeAsync(player.SquadId, player.Id, link, coach.UserId, cancel)
            : new Result<Guid>.Failed(problems);

    public async Task<Result<int>> RevokeAllAsync(StoredPlayer player, CancellationToken cancel = default) =>
        (await coaches.ToChangeAsync(player.SquadId, cancel)).TryGet(out var coach, out var problems)
            ? await links.RevokeAllAsync(player.SquadId, player.Id, coach.UserId, cancel)
            : new Result<int>.Failed(problems);

    /// <summary>New links for many players, to be printed.</summary>
    /// <param name="everyone">False leaves out whoever has a live link.</param>
    public async Task<Result<LinkSheet>> NewSheetAsync(Guid squad, bool everyone, FeedOptions options, CancellationToken cancel = default) =>
        coaches.Counted(await coaches.ToChangeAsync(squad, cancel)).TryGet(out var coach, out var problems)
            ? await links.CreateSheetAsync(squad, everyone, options, await clubs.TodayAsync(cancel), coach.UserId, cancel)
            : new Result<LinkSheet>.Failed(problems);

    public async Task<Result<IReadOnlyList<StoredSheet>>> SheetsAsync(Guid squad, CancellationToken cancel = default) =>
        (await coaches.ForSquadAsync(squad, cancel)).TryGet(out _, out var problems)
            ? new Result<IReadOnlyList<StoredSheet>>.Ok(await links.SheetsAsync(squad, cancel))
            : new Result<IReadOnlyList<StoredSheet>>.Failed(problems);

    public async Task<Result<int>> RevokeUnusedAsync(Guid squad, string sheet, CancellationToken cancel = default) =>
        (await coaches.ToChangeAsync(squad, cancel)).TryGet(out var coach, out var problems)
            ? await links.RevokeUnusedAsync(squad, sheet, coach.UserId, cancel)
            : new Result<int>.Failed(problems);
}
