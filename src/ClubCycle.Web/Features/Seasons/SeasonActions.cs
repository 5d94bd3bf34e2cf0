using ClubCycle.Data.Plans;
using ClubCycle.Data.Seasons;
using ClubCycle.Planning;
using ClubCycle.Planning.Seasons;
using ClubCycle.Web.Account;
using NodaTime;

namespace ClubCycle.Web.Features.Seasons;

/// <summary>What one squad's year would become with other season dates.</summary>
/// <param name="Before">Null when there was no plan.</param>
/// <param name="After">Null when the new dates give none; then there are problems.</param>
public sealed record SeasonEffect(Guid Squad, string Name, SquadPlan? Before, SquadPlan? After, IReadOnlyList<Problem> Problems);

/// <summary>Season dates of the club and of squads. Head coaches set them; each coach sees those of their squads.</summary>
public sealed class SeasonActions(CurrentCoach coaches, SeasonStore seasons, ClosedDayStore closed, PlanStore plans)
{
    public async Task<Result<IReadOnlyList<StoredSeason>>> ListAsync(CancellationToken cancel = default) =>
        (await coaches.FindAsync(cancel)).TryGet(out var coach, out var problems)
            ? new Result<IReadOnlyList<StoredSeason>>.Ok([.. (await seasons.ListAsync(cancel)).Where(s => s.SquadId is not { } squad || coach.MayTouch(squad))])
            : new Result<IReadOnlyList<StoredSeason>>.Failed(problems);

    /// <summary>What the dates would do to each squad they concern. Nothing is saved.</summary>
    /// <param name="squad">Null for the club's dates; squads with dates of their own are not concerned.</param>
    public async Task<Result<IReadOnlyList<SeasonEffect>>> PreviewAsync(Guid? squad, Season season, CancellationToken cancel = default)
    {
        if (!(await coaches.HeadAsync(cancel)).TryGet(out _, out var problems))
        {
            return new Result<IReadOnlyList<SeasonEffect>>.Failed(problems);
        }

        var own = (await seasons.ListAsync(cancel)).Where(s => s.SquadId is not null).Select(s => s.SquadId!.Value).ToHashSet();
        var before = await plans.DraftsAsync(cancel);
        var after = await plans.PreviewAllAsync(request => WithSeason(request, season), cancel);
        return new Result<IReadOnlyList<SeasonEffect>>.Ok(
        [
            .. before.Join(after, b => b.SquadId, a => a.SquadId, (b, a) => (Before: b, After: a))
                .Where(pair => squad is { } only ? pair.Before.SquadId == only : !own.Contains(pair.Before.SquadId))
                .Select(pair => new SeasonEffect(
                    pair.Before.SquadId, pair.Before.Name,
                    pair.Before.Draft.TryGet(out var was, out _) ? was.Plan : null,
                    pair.After.Draft.TryGet(out var will, out var found) ? will.Plan : null,
                    found)),
        ]);
    }

    public async Task<Result<Guid>> AddAsync(Guid? squad, LocalDate? previousLastDay, IReadOnlyList<Stint> stints, CancellationToken cancel = default) =>
        (await coaches.HeadAsync(cancel)).TryGet(out var coach, out var problems)
            ? await seasons.AddAsync(squad, previousLastDay, stints, coach.UserId, cancel)
            : new Result<Guid>.Failed(problems);

    public async Task<Result<int>> SaveAsync(StoredSeason season, LocalDate? previousLastDay, IReadOnlyList<Stint> stints, CancellationToken cancel = default) =>
        (await coaches.HeadAsync(cancel)).TryGet(out var coach, out var problems)
            ? await seasons.SaveAsync(season.Id, previousLastDay, stints, season.Version, coach.UserId, cancel)
            : new Result<int>.Failed(problems);

    public async Task<Result<Guid>> RemoveAsync(StoredSeason season, CancellationToken cancel = default) =>
        (await coaches.HeadAsync(cancel)).TryGet(out var coach, out var problems) ? await seasons.RemoveAsync(season.Id, coach.UserId, cancel) : new Result<Guid>.Failed(problems);

    public async Task<IReadOnlyList<StoredClosedDays>> ClosedAsync(CancellationToken cancel = default) =>
        (await coaches.FindAsync(cancel)).TryGet(out var coach, out _) ? [.. (await closed.ListAsync(cancel)).Where(c => c.SquadId is not { } squad || coach.MayTouch(squad))] : [];

    public async Task<Result<Guid>> CloseAsync(Guid? squad, ClosedDays days, CancellationToken cancel = default) =>
        (squad is { } one ? await coaches.ForSquadAsync(one, cancel) : await coaches.HeadAsync(cancel)).TryGet(out var coach, out var problems)
            ? await closed.AddAsync(squad, days, coach.UserId, cancel)
            : new Result<Guid>.Failed(problems);

    public async Task<Result<Guid>> OpenAsync(StoredClosedDays days, CancellationToken cancel = default) =>
        (days.SquadId is { } one ? await coaches.ForSquadAsync(one, cancel) : await coaches.HeadAsync(cancel)).TryGet(out var coach, out var problems)
            ? await closed.RemoveAsync(days.SquadId, days.Id, coach.UserId, cancel)
            : new Result<Guid>.Failed(problems);

    // Matches outside the new dates would be a problem of their own; the preview is about the dates.
    private static Result<PlanRequest> WithSeason(PlanRequest request, Season season) =>
        request with { Season = season, Fixtures = request.Fixtures?.Where(f => season.Cycle.Contains(f.Date)).ToList() };
}
