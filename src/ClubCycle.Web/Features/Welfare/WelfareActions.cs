using ClubCycle.Data.Players;
using ClubCycle.Planning;
using ClubCycle.Web.Account;

namespace ClubCycle.Web.Features.Welfare;

/// <summary>The welfare officer's own: nobody else does these, head coaches neither.</summary>
public sealed class WelfareActions(CurrentCoach coaches, WelfareStore welfare)
{
    private const int Shown = 200;

    public async Task<Result<IReadOnlyList<GuardedPlayer>>> PlayersAsync(CancellationToken cancel = default) =>
        (await coaches.WelfareOfficerAsync(cancel)).TryGet(out _, out var problems)
            ? new Result<IReadOnlyList<GuardedPlayer>>.Ok(await welfare.ListAsync(cancel))
            : new Result<IReadOnlyList<GuardedPlayer>>.Failed(problems);

    public async Task<Result<IReadOnlyList<DataAccess>>> AccessAsync(CancellationToken cancel = default) =>
        (await coaches.WelfareOfficerAsync(cancel)).TryGet(out _, out var problems)
            ? new Result<IReadOnlyList<DataAccess>>.Ok(await welfare.AccessAsync(Shown, cancel))
            : new Result<IReadOnlyList<DataAccess>>.Failed(problems);

    public async Task<Result<Guid>> ProtectAsync(Guid player, bool protect, CancellationToken cancel = default) =>
        (await coaches.WelfareOfficerAsync(cancel)).TryGet(out var officer, out var problems)
            ? await welfare.ProtectAsync(player, protect, officer.UserId, cancel)
            : new Result<Guid>.Failed(problems);
}
