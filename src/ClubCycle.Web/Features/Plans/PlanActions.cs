using ClubCycle.Data.Fixtures;
using ClubCycle.Data.Plans;
using ClubCycle.Planning;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Seasons;
using ClubCycle.Web.Account;
using NodaTime;

namespace ClubCycle.Web.Features.Plans;

/// <summary>What coaches see and do with plans. The right is checked in each call, against the database.</summary>
public sealed class PlanActions(CurrentCoach coaches, PlanStore plans, PinStore pins, PhaseLengthStore lengths, FixtureStore fixtures, AcceptedFindingStore accepted, IClock clock)
{
    /// <summary>Every squad the coach may see, youngest first.</summary>
    public async Task<Result<IReadOnlyList<BoardDraft>>> BoardAsync(IProgress<SquadsDone>? progress = null, CancellationToken cancel = default) =>
        (await coaches.FindAsync(cancel)).TryGet(out var coach, out var problems)
            ? new Result<IReadOnlyList<BoardDraft>>.Ok([.. (await plans.DraftsAsync(progress, cancel)).Where(d => coach.MayTouch(d.SquadId))])
            : new Result<IReadOnlyList<BoardDraft>>.Failed(problems);

    public async Task<Result<SquadDraft>> DraftAsync(Guid squad, CancellationToken cancel = default) =>
        (await coaches.ForSquadAsync(squad, cancel)).TryGet(out _, out var problems) ? await plans.DraftAsync(squad, cancel) : new Result<SquadDraft>.Failed(problems);

    public async Task<Result<Revision>> PublishAsync(Guid squad, int expectedRevision, Guid commandId, string note, CancellationToken cancel = default) =>
        (await coaches.ToChangeAsync(squad, cancel)).TryGet(out var coach, out var problems)
            ? await plans.PublishAsync(squad, expectedRevision, commandId, coach.UserId, note, cancel)
            : new Result<Revision>.Failed(problems);

    /// <summary>Publishes many squads; each has its own answer. Head coaches only.</summary>
    public async Task<Result<IReadOnlyList<SquadOutcome<Revision>>>> PublishAllAsync(
        IReadOnlyList<SquadToPublish> squads, string note, IProgress<SquadsDone>? progress = null, CancellationToken cancel = default) =>
        (await coaches.HeadAsync(cancel)).TryGet(out var coach, out var problems)
            ? new Result<IReadOnlyList<SquadOutcome<Revision>>>.Ok(await plans.PublishManyAsync(squads, coach.UserId, note, progress, cancel))
            : new Result<IReadOnlyList<SquadOutcome<Revision>>>.Failed(problems);

    /// <summary>Fixes a session's day and time inside its week.</summary>
    /// <param name="seen">What the coach saw decided about the session; null for nothing.</param>
    public Task<Result<Pin>> MoveAsync(Guid squad, LocalDate weekFirst, string slot, LocalDate date, LocalTime? start, Pin? seen, CancellationToken cancel = default) =>
        PinAsync(squad, new Pin(weekFirst, slot, date, start), seen, cancel);

    /// <param name="seen">What the coach saw decided about the session; null for nothing.</param>
    public Task<Result<Pin>> SkipAsync(Guid squad, LocalDate weekFirst, string slot, Pin? seen, CancellationToken cancel = default) =>
        PinAsync(squad, new Pin(weekFirst, slot, null, null, true), seen, cancel);

    /// <summary>Makes the session another workout this week; null for the template's again.</summary>
    /// <param name="seen">What the coach saw decided about the session; null for nothing.</param>
    public async Task<Result<Pin>> SwapAsync(Guid squad, LocalDate weekFirst, string slot, string? workout, Pin? seen, CancellationToken cancel = default) =>
        (await coaches.ToChangeAsync(squad, cancel)).TryGet(out var coach, out var problems)
            ? await pins.WhoSaw(seen).SwapAsync(squad, weekFirst, slot, workout, coach.UserId, cancel)
            : new Result<Pin>.Failed(problems);

    /// <summary>Leaves day and time to the planner again, and brings back what was skipped.</summary>
    /// <param name="seen">What the coach saw decided about the session; null for nothing.</param>
    public async Task<Result<Pin>> ReleaseAsync(Guid squad, LocalDate weekFirst, string slot, Pin? seen, CancellationToken cancel = default) =>
        (await coaches.ToChangeAsync(squad, cancel)).TryGet(out var coach, out var problems)
            ? await pins.WhoSaw(seen).UnpinAsync(squad, weekFirst, slot, coach.UserId, cancel)
            : new Result<Pin>.Failed(problems);

    public async Task<Result<Pin>> AddSessionAsync(Guid squad, LocalDate date, LocalTime? start, string workout, int minutes, string? note, CancellationToken cancel = default) =>
        (await coaches.ToChangeAsync(squad, cancel)).TryGet(out var coach, out var problems)
            ? await pins.AddAsync(squad, date, start, workout, minutes, note, coach.UserId, cancel)
            : new Result<Pin>.Failed(problems);

    /// <summary>All that the coach decides about a session; what is null is the planner's again.</summary>
    /// <param name="seen">What the coach saw decided about the session; null for nothing.</param>
    public async Task<Result<Pin>> EditSessionAsync(Guid squad, Pin pin, Pin? seen, CancellationToken cancel = default) =>
        (await coaches.ToChangeAsync(squad, cancel)).TryGet(out var coach, out var problems)
            ? await pins.WhoSaw(seen).EditAsync(squad, pin, coach.UserId, cancel)
            : new Result<Pin>.Failed(problems);

    /// <param name="seen">What the coach saw decided about the session; null for nothing.</param>
    public async Task<Result<Guid>> RemoveSessionAsync(Guid squad, LocalDate weekFirst, string slot, Pin? seen, CancellationToken cancel = default) =>
        (await coaches.ToChangeAsync(squad, cancel)).TryGet(out var coach, out var problems)
            ? await pins.WhoSaw(seen).RemoveAddedAsync(squad, weekFirst, slot, coach.UserId, cancel)
            : new Result<Guid>.Failed(problems);

    /// <summary>Moves the boundary between two phases.</summary>
    /// <param name="boundary">As the coach saw it.</param>
    /// <param name="weeks">Weeks that the phase before it gets.</param>
    public async Task<Result<Guid>> MoveBoundaryAsync(Guid squad, PhaseBoundary boundary, int weeks, CancellationToken cancel = default)
    {
        if (!(await coaches.ToChangeAsync(squad, cancel)).TryGet(out var coach, out var problems) || !(await plans.DraftAsync(squad, cancel)).TryGet(out var draft, out problems))
        {
            return new Result<Guid>.Failed(problems);
        }

        if (PhaseBoundary.Of(draft.Request, draft.Plan).FirstOrDefault(b => b.Index == boundary.Index) is not { } now || now.Before != boundary.Before || now.After != boundary.After)
        {
            return new Problem("phase.changed-meanwhile", "The phases changed after you opened this page. Look at them again, and move the boundary if you still want to.", "boundary");
        }

        return PhaseBoundary.Move(draft.Request, draft.Plan, boundary.Index, weeks).TryGet(out var moved, out problems)
            ? await lengths.WhoSaw(draft.Request.Lengths ?? []).SetAsync(squad, boundary.Gap, moved, coach.UserId, cancel)
            : new Result<Guid>.Failed(problems);
    }

    /// <summary>Leaves the lengths of a gap's phases to the planner again.</summary>
    /// <param name="seen">What was set when the coach looked.</param>
    public async Task<Result<Guid>> ClearLengthsAsync(Guid squad, int gap, IReadOnlyList<PhaseLength> seen, CancellationToken cancel = default) =>
        (await coaches.ToChangeAsync(squad, cancel)).TryGet(out var coach, out var problems)
            ? await lengths.WhoSaw(seen).SetAsync(squad, gap, [], coach.UserId, cancel)
            : new Result<Guid>.Failed(problems);

    public async Task<Result<IReadOnlyList<StoredFixture>>> FixturesAsync(Guid squad, CancellationToken cancel = default) =>
        (await coaches.ForSquadAsync(squad, cancel)).TryGet(out _, out var problems) ? await fixtures.ListAsync(squad, cancel) : new Result<IReadOnlyList<StoredFixture>>.Failed(problems);

    /// <summary>Adds a match; the usual ones stay.</summary>
    public async Task<Result<Guid>> AddMatchAsync(Guid squad, LocalDate date, LocalTime? start, string? opponent, string? place, CancellationToken cancel = default) =>
        (await coaches.ToChangeAsync(squad, cancel)).TryGet(out var coach, out var problems)
            ? await fixtures.AddAsync(squad, date, start, opponent, place, coach.UserId, cancel)
            : new Result<Guid>.Failed(problems);

    /// <summary>Entered matches as files are compared with.</summary>
    public async Task<Result<IReadOnlyList<(StoredFixture Match, string? SourceKey)>>> EnteredMatchesAsync(Guid squad, CancellationToken cancel = default) =>
        (await coaches.ForSquadAsync(squad, cancel)).TryGet(out _, out var problems)
            ? new Result<IReadOnlyList<(StoredFixture, string?)>>.Ok(await fixtures.EnteredAsync(squad, cancel))
            : new Result<IReadOnlyList<(StoredFixture, string?)>>.Failed(problems);

    /// <summary>A squad's year as it is and as it would be with these matches. Nothing is saved.</summary>
    public async Task<Result<SquadDraft>> TryMatchesAsync(Guid squad, IReadOnlyList<Fixture> matches, CancellationToken cancel = default) =>
        (await coaches.ForSquadAsync(squad, cancel)).TryGet(out _, out var problems)
            ? await plans.PreviewAsync(squad, request => request with { Fixtures = matches.Count == 0 ? request.Fixtures : [.. matches.Where(m => request.Season.Cycle.Contains(m.Date))] }, cancel)
            : new Result<SquadDraft>.Failed(problems);

    public async Task<Result<int>> TakeFileAsync(Guid squad, IReadOnlyList<FixtureFromFile> matches, IReadOnlyList<(Guid Id, int Version)> calledOff, CancellationToken cancel = default) =>
        coaches.Counted(await coaches.ToChangeAsync(squad, cancel)).TryGet(out var coach, out var problems)
            ? await fixtures.TakeFileAsync(squad, matches, calledOff, coach.UserId, cancel)
            : new Result<int>.Failed(problems);

    public async Task<Result<int>> SaveMatchAsync(StoredFixture match, LocalDate date, LocalTime? start, string? opponent, string? place, CancellationToken cancel = default) =>
        (await coaches.ToChangeAsync(match.SquadId, cancel)).TryGet(out var coach, out var problems)
            ? await fixtures.SaveAsync(match.SquadId, match.Id, date, start, opponent, place, match.Version, coach.UserId, cancel)
            : new Result<int>.Failed(problems);

    public async Task<Result<Guid>> RemoveMatchAsync(StoredFixture match, CancellationToken cancel = default) =>
        (await coaches.ToChangeAsync(match.SquadId, cancel)).TryGet(out var coach, out var problems)
            ? await fixtures.RemoveAsync(match.SquadId, match.Id, match.Version, coach.UserId, cancel)
            : new Result<Guid>.Failed(problems);

    /// <summary>Takes responsibility for a binding finding. Head coaches only; the reason is kept.</summary>
    public async Task<Result<AcceptedFinding>> AcceptAsync(Guid squad, Finding finding, string reason, CancellationToken cancel = default) =>
        (await coaches.HeadAsync(cancel)).TryGet(out var coach, out var problems)
            ? await accepted.AcceptAsync(squad, finding.Rule, finding.Week, reason, coach.UserId, cancel)
            : new Result<AcceptedFinding>.Failed(problems);

    public LocalDate Today(DateTimeZone zone) => clock.GetCurrentInstant().InZone(zone).Date;

    private async Task<Result<Pin>> PinAsync(Guid squad, Pin pin, Pin? seen, CancellationToken cancel) =>
        (await coaches.ToChangeAsync(squad, cancel)).TryGet(out var coach, out var problems) ? await pins.WhoSaw(seen).PinAsync(squad, pin, coach.UserId, cancel) : new Result<Pin>.Failed(problems);
}
