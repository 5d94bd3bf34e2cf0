using ClubCycle.Data.Players;
using ClubCycle.Planning;
using ClubCycle.Planning.Languages;
using ClubCycle.Web.Account;
using NodaTime;

namespace ClubCycle.Web.Features.Guardian;

/// <summary>Asking players' guardians, for the coaches of their squad. What a guardian answers comes from the guardian's own page.</summary>
public sealed class GuardianActions(CurrentCoach coaches, GuardianStore guardians)
{
    /// <summary>The secret of a new address, shown once; an earlier address ends.</summary>
    public async Task<Result<string>> AskAsync(StoredPlayer player, Language language, CancellationToken cancel = default) =>
        (await coaches.ToChangeAsync(player.SquadId, cancel)).TryGet(out var coach, out var problems)
            ? await guardians.AskAsync(player.SquadId, player.Id, language, coach.UserId, cancel)
            : new Result<string>.Failed(problems);

    public async Task<Result<Guid>> EndLinkAsync(StoredPlayer player, CancellationToken cancel = default) =>
        (await coaches.ToChangeAsync(player.SquadId, cancel)).TryGet(out var coach, out var problems)
            ? await guardians.EndLinkAsync(player.SquadId, player.Id, coach.UserId, cancel)
            : new Result<Guid>.Failed(problems);

    /// <summary>States that a guardian of each agreed on paper.</summary>
    /// <param name="on">The day on the paper.</param>
    public async Task<Result<int>> AgreedOnPaperAsync(Guid squad, IReadOnlyCollection<Guid> players, LocalDate on, CancellationToken cancel = default) =>
        (await coaches.ToChangeAsync(squad, cancel)).TryGet(out var coach, out var problems)
            ? await guardians.AgreedOnPaperAsync(squad, players, on, coach.UserId, cancel)
            : new Result<int>.Failed(problems);
}
