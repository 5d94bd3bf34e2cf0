using ClubCycle.Data.Audit;
using ClubCycle.Planning;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Plans;

/// <summary>Findings that people accept with a reason, so that a plan can be published in spite of them.</summary>
public sealed class AcceptedFindingStore(IClubDbFactory contexts, IClock clock)
{
    public const int LongestReason = 500;

    public async Task<IReadOnlyList<AcceptedFinding>> ListAsync(Guid squadId, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        var rows = await db.AcceptedFindings.AsNoTracking().Where(a => a.SquadId == squadId).OrderBy(a => a.Week).ThenBy(a => a.Rule).ToListAsync(cancel);
        return rows.ConvertAll(AcceptedFinding.Of);
    }

    /// <remarks>Only rules of a plan can be accepted. Lightning (R49) and health questions (R50) are none: nobody takes responsibility for those.</remarks>
    /// <param name="week">As in the finding.</param>
    public async Task<Result<AcceptedFinding>> AcceptAsync(Guid squadId, string rule, LocalDate? week, string reason, Guid by, CancellationToken cancel = default)
    {
        if (string.IsNullOrWhiteSpace(reason))
        {
            return new Problem("finding.reason", $"Say why this is acceptable, in {LongestReason} characters at most. The reason is kept with your name.", "reason");
        }

        if (TypedText.NoteProblem(reason, LongestReason, "finding.reason", "reason", "reason") is { } unreadable)
        {
            return unreadable with { Code = "finding.reason" };
        }

        if (!Planning.Rules.PlanRules.All.Any(r => r.Id == rule) || (week is { } given && PlanDates.Problem(given, "finding", "week") is not null))
        {
            return Refusal.NotFound("finding");
        }

        await using var db = await contexts.OpenAsync(cancel);
        if (!await db.Squads.AnyAsync(s => s.Id == squadId, cancel))
        {
            return Refusal.NotFound("squad");
        }

        var row = await db.AcceptedFindings.SingleOrDefaultAsync(a => a.SquadId == squadId && a.Rule == rule && a.Week == week, cancel);
        if (row is null)
        {
            db.AcceptedFindings.Add(row = new AcceptedFindingRow { ClubId = db.ClubId, Id = NewId.Create(), SquadId = squadId, Rule = rule, Week = week });
        }

        (row.Reason, row.AcceptedBy, row.AcceptedAt) = (TypedText.Tidy(reason), by, clock.GetCurrentInstant());
        db.Note(row.AcceptedAt, by, "finding.accepted", squadId, rule);
        await db.SaveChangesAsync(cancel);
        return AcceptedFinding.Of(row);
    }

    public async Task<Result<Guid>> WithdrawAsync(Guid squadId, string rule, LocalDate? week, Guid by, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        if (await db.AcceptedFindings.SingleOrDefaultAsync(a => a.SquadId == squadId && a.Rule == rule && a.Week == week, cancel) is not { } row)
        {
            return Refusal.NotFound("finding");
        }

        db.AcceptedFindings.Remove(row);
        db.Note(clock.GetCurrentInstant(), by, "finding.acceptance-withdrawn", squadId, rule);
        await db.SaveChangesAsync(cancel);
        return squadId;
    }
}
