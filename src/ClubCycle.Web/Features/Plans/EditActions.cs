using ClubCycle.Data.Edits;
using ClubCycle.Planning;
using ClubCycle.Web.Account;

namespace ClubCycle.Web.Features.Plans;

/// <summary>Each coach's own last edits, taken back and done again. Those of the whole club are head coaches'.</summary>
public sealed class EditActions(CurrentCoach coaches, EditStore edits)
{
    /// <param name="squad">Null for the whole club.</param>
    public async Task<EditState> StateAsync(Guid? squad, CancellationToken cancel = default) =>
        (await CoachAsync(squad, cancel)).TryGet(out var coach, out _) ? await edits.StateAsync(squad, coach.UserId, cancel) : new EditState(null, null);

    /// <param name="squad">Null for the whole club.</param>
    public async Task<Result<Edit>> UndoAsync(Guid? squad, Guid edit, CancellationToken cancel = default) =>
        (await ToChangeAsync(squad, cancel)).TryGet(out var coach, out var problems) ? await edits.UndoAsync(squad, edit, coach.UserId, cancel) : new Result<Edit>.Failed(problems);

    /// <param name="squad">Null for the whole club.</param>
    public async Task<Result<Edit>> RedoAsync(Guid? squad, Guid edit, CancellationToken cancel = default) =>
        (await ToChangeAsync(squad, cancel)).TryGet(out var coach, out var problems) ? await edits.RedoAsync(squad, edit, coach.UserId, cancel) : new Result<Edit>.Failed(problems);

    private Task<Result<Coach>> CoachAsync(Guid? squad, CancellationToken cancel) =>
        squad is { } one ? coaches.ForSquadAsync(one, cancel) : coaches.HeadAsync(cancel);

    private Task<Result<Coach>> ToChangeAsync(Guid? squad, CancellationToken cancel) =>
        squad is { } one ? coaches.ToChangeAsync(one, cancel) : coaches.HeadAsync(cancel);
}
