using ClubCycle.Data.Plans;
using ClubCycle.Planning;
using ClubCycle.Web.Account;

namespace ClubCycle.Web.Features.Plans;

/// <summary>A squad's publishing history: list, compare, go back.</summary>
public sealed class RevisionActions(CurrentCoach coaches, RevisionStore revisions)
{
    public async Task<IReadOnlyList<Revision>> ListAsync(Guid squad, CancellationToken cancel = default) =>
        (await coaches.ForSquadAsync(squad, cancel)).TryGet(out _, out _) ? await revisions.ListAsync(squad, cancel) : [];

    public async Task<Result<RevisionChanges>> CompareAsync(Guid squad, int earlier, int later, CancellationToken cancel = default) =>
        (await coaches.ForSquadAsync(squad, cancel)).TryGet(out _, out var problems) ? await revisions.CompareAsync(squad, earlier, later, cancel) : new Result<RevisionChanges>.Failed(problems);

    /// <summary>The draft as it would be after going back. Nothing is saved.</summary>
    public async Task<Result<SquadDraft>> PreviewAsync(Guid squad, int number, CancellationToken cancel = default) =>
        (await coaches.ForSquadAsync(squad, cancel)).TryGet(out _, out var problems) ? await revisions.PreviewAsync(squad, number, cancel) : new Result<SquadDraft>.Failed(problems);

    public async Task<Result<SquadDraft>> RestoreAsync(Guid squad, int number, CancellationToken cancel = default) =>
        (await coaches.ToChangeAsync(squad, cancel)).TryGet(out var coach, out var problems) ? await revisions.RestoreAsync(squad, number, coach.UserId, cancel) : new Result<SquadDraft>.Failed(problems);
}
