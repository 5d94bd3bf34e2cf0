using ClubCycle.Data.Players;
using ClubCycle.Planning;
using ClubCycle.Web.Account;
using NodaTime;

namespace ClubCycle.Web.Features.Welfare;

/// <summary>Exports of a player's data are told to a second adult: the welfare officers, or the other head coaches when there is none.</summary>
public sealed class ExportActions(CurrentCoach coaches, WelfareStore welfare)
{
    private const int Shown = 100;

    /// <summary>Somebody has seen them: what stands out may go.</summary>
    public event Func<Task>? OnSeen;

    /// <summary>Those by others that this person is told and has not seen yet.</summary>
    public async Task<Result<IReadOnlyList<DataAccess>>> UnseenAsync(CancellationToken cancel = default) =>
        !(await coaches.FindAsync(cancel)).TryGet(out var coach, out var problems) ? new Result<IReadOnlyList<DataAccess>>.Failed(problems)
        : new Result<IReadOnlyList<DataAccess>>.Ok(await IsToldAsync(coach, cancel) ? await welfare.UnseenExportsAsync(coach.UserId, Shown, cancel) : []);

    /// <param name="upTo">Of the latest that was shown.</param>
    public async Task<Result<Guid>> SeenAsync(Instant upTo, CancellationToken cancel = default)
    {
        if (!(await coaches.FindAsync(cancel)).TryGet(out var coach, out var problems))
        {
            return new Result<Guid>.Failed(problems);
        }

        if (!await IsToldAsync(coach, cancel))
        {
            return new Problem("account.not-told", "Exports are told to the welfare officers, and to head coaches where the club has none.");
        }

        await welfare.ExportsSeenAsync(coach.UserId, upTo, cancel);
        if (OnSeen is { } told)
        {
            await told();
        }

        return coach.UserId;
    }

    private async Task<bool> IsToldAsync(Coach coach, CancellationToken cancel) => coach.IsWelfareOfficer || (coach.IsHeadCoach && !await welfare.HasOfficerAsync(cancel));
}
