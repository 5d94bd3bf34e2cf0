using ClubCycle.Data.Audit;
using ClubCycle.Data.Edits;
using ClubCycle.Data.Squads;
using ClubCycle.Planning;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Rules;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Plans;

/// <summary>What changed from one revision to another.</summary>
/// <param name="NewFindings">Of the later one.</param>
/// <param name="GoneFindings">Of the earlier one.</param>
public sealed record RevisionChanges(PlanChanges Changes, IReadOnlyList<Finding> NewFindings, IReadOnlyList<Finding> GoneFindings);

/// <summary>A squad's published plans, from the first to the latest: list, compare, go back.</summary>
public sealed class RevisionStore(IClubDbFactory contexts, PublishedPlans published, PlanStore plans, IClock clock)
{
    /// <summary>Newest first.</summary>
    public async Task<IReadOnlyList<Revision>> ListAsync(Guid squadId, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await db.Revisions.Where(r => r.SquadId == squadId).OrderByDescending(r => r.Number)
            .Select(r => new Revision(r.Number, r.PublishedAt, r.PublishedBy, r.Note)
            {
                Publisher = db.Users.Where(u => u.Id == r.PublishedBy).Select(u => u.DisplayName).FirstOrDefault(),
            }).ToListAsync(cancel);
    }

    /// <summary>A plan as it was published then.</summary>
    public async Task<Result<SquadPlan>> FindAsync(Guid squadId, int number, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await db.Revisions.Where(r => r.SquadId == squadId && r.Number == number).Select(r => r.Plan).SingleOrDefaultAsync(cancel) is { } text
            ? PlanFile.ReadPlan(text)
            : Refusal.NotFound("revision");
    }

    public async Task<Result<RevisionChanges>> CompareAsync(Guid squadId, int earlier, int later, CancellationToken cancel = default)
    {
        if (!(await FindAsync(squadId, earlier, cancel)).TryGet(out var before, out var problems) || !(await FindAsync(squadId, later, cancel)).TryGet(out var after, out problems))
        {
            return new Result<RevisionChanges>.Failed(problems);
        }

        return new RevisionChanges(PlanDiff.Between(before.Sessions, after.Sessions), after.Findings.Beyond(before.Findings), before.Findings.Beyond(after.Findings));
    }

    /// <summary>The draft as it would be with a revision's inputs and close to its sessions. Nothing is stored.</summary>
    public async Task<Result<SquadDraft>> PreviewAsync(Guid squadId, int number, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        return await PutBackAsync(db, squadId, number, null, cancel) is { } problem ? problem : await plans.DraftAsync(db, squadId, cancel);
    }

    /// <summary>
    /// Makes a revision the draft again: the squad's own matches, decisions, closed days, lengths, times and template become what they were, and its
    /// sessions are kept as far as today allows. One edit, which can be undone; players see it when it is published.
    /// </summary>
    public async Task<Result<SquadDraft>> RestoreAsync(Guid squadId, int number, Guid by, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        await db.LockToChangeAsync(squadId, cancel);
        if (await PutBackAsync(db, squadId, number, by, cancel) is { } problem)
        {
            return problem;
        }

        var draft = await plans.DraftAsync(db, squadId, cancel);
        await transaction.CommitAsync(cancel);
        return draft;
    }

    /// <param name="by">Null for a try, which is not remembered.</param>
    private async Task<Problem?> PutBackAsync(ClubCycleDb db, Guid squadId, int number, Guid? by, CancellationToken cancel)
    {
        var now = clock.GetCurrentInstant();
        if (!(await PlanInputs.LoadOneAsync(db, squadId, now, published, cancel)).TryGet(out var input, out var problems))
        {
            return problems[0];
        }

        if (await db.Revisions.Where(r => r.SquadId == squadId && r.Number == number).Select(r => new { r.Inputs, r.Plan }).SingleOrDefaultAsync(cancel) is not { } revision)
        {
            return Refusal.NotFound("revision");
        }

        var (then, today) = (PlanFile.ReadPlan(revision.Plan).OrThrow().Cycle, input.Request.Season.Cycle);
        if (revision.Inputs is not { } inputs || then.Intersection(today) is null)
        {
            return new Problem("revision.other-year", "This revision belongs to another planning year, or to a time before its inputs were kept. Compare it, and change the draft by hand.");
        }

        var squad = await SquadInputs.PutBackAsync(db, squadId, inputs, new DateInterval(LocalDate.Min(then.Start, today.Start), LocalDate.Max(then.End, today.End)), cancel);
        (squad.RestoredFrom, squad.RestoredOver) = number == input.Revision ? ((int?)null, (int?)null) : (number, input.Revision);
        if (by is { } coach)
        {
            db.Note(now, coach, "revision.restored", squadId, $"revision {number}");
            await db.RememberAsync(now, coach, squadId, $"Go back to revision {number}", cancel);
        }

        return await db.TrySaveAsync(Refusal.Meanwhile("squad"), cancel);
    }
}
