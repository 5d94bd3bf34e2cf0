using ClubCycle.Data.Plans;
using ClubCycle.Data.Seasons;
using ClubCycle.Planning;
using ClubCycle.Planning.Seasons;
using ClubCycle.Web.Account;
using NodaTime;

namespace ClubCycle.Web.Features.Seasons;

/// <summary>Season dates of the club and of squads. Head coaches set them; each coach sees those of their squads.</summary>
public sealed class SeasonActions(CurrentCoach coaches, SeasonStore seasons, ClosedDayStore closed, PlanStore plans)
{
    public async Task<Result<IReadOnlyList<StoredSeason>>> ListAsync(CancellationToken cancel = default) =>
        (await coaches.FindAsync(cancel)).TryGet(out var coach, out var problems)
            ? new Result<IReadOnlyList<StoredSeason>>.Ok([.. (await seasons.ListAsync(cancel)).Where(s => s.SquadId is not { } squad || coach.MayTouch(squad))])
            : new Result<IReadOnlyList<StoredSeason>>.Failed(problems);

    /// <summary>What the dates would do to each squad they concern. Nothing is saved.</summary>
    /// <param name="squad">Null for the club's dates; squads with dates of their own are not concerned.</param>
    public async Task<Result<IReadOnlyList<SquadEffect>>> PreviewAsync(Guid? squad, Season season, IProgress<SquadsDone>? progress = null, CancellationToken cancel = default)
    {
        if (!(await coaches.HeadAsync(cancel)).TryGet(out var coach, out var problems))
        {
            return new Result<IReadOnlyList<SquadEffect>>.Failed(problems);
        }

        IReadOnlyList<Guid> concerned = squad is { } one ? [one] : [.. coach.Squads.Except((await seasons.ListAsync(cancel)).Where(s => s.SquadId is not null).Select(s => s.SquadId!.Value))];
        return new Result<IReadOnlyList<SquadEffect>>.Ok(await plans.PreviewAllAsync(concerned, request => WithSeason(request, season), progress, cancel));
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
