using ClubCycle.Data.Clubs;
using ClubCycle.Data.Plans;
using ClubCycle.Data.Seasons;
using ClubCycle.Planning;
using ClubCycle.Planning.Seasons;
using ClubCycle.Web.Account;
using NodaTime;

namespace ClubCycle.Web.Features.Seasons;

/// <summary>Season dates of the club and of squads. Head coaches set them; each coach sees those of their squads.</summary>
public sealed class SeasonActions(CurrentCoach coaches, SeasonStore seasons, ClosedDayStore closed, ClubStore clubs, PlanStore plans)
{
    public async Task<Result<IReadOnlyList<StoredSeason>>> ListAsync(CancellationToken cancel = default) =>
        (await coaches.FindAsync(cancel)).TryGet(out var coach, out var problems)
            ? new Result<IReadOnlyList<StoredSeason>>.Ok([.. (await seasons.ListAsync(cancel)).Where(s => s.SquadId is not { } squad || coach.MayTouch(squad))])
            : new Result<IReadOnlyList<StoredSeason>>.Failed(problems);

    /// <summary>What the dates would do to each squad they concern. Nothing is saved.</summary>
    /// <param name="squad">Null for the club's dates; squads with dates of their own are not concerned.</param>
    /// <param name="replaces">The stored season whose dates these would be; null for a new one.</param>
    public async Task<Result<IReadOnlyList<SquadEffect>>> PreviewAsync(Guid? squad, Season season, Guid? replaces = null, IProgress<SquadsDone>? progress = null, CancellationToken cancel = default)
    {
        if (!(await coaches.HeadAsync(cancel)).TryGet(out var coach, out var problems))
        {
            return new Result<IReadOnlyList<SquadEffect>>.Failed(problems);
        }

        IReadOnlyList<Guid> concerned = squad is { } one ? [one] : [.. coach.Squads.Except((await seasons.ListAsync(cancel)).Where(s => s.SquadId is not null).Select(s => s.SquadId!.Value))];
        return new Result<IReadOnlyList<SquadEffect>>.Ok(await plans.PreviewAllAsync(concerned, new InputChange(season, replaces ?? Guid.Empty), progress, cancel));
    }

    /// <summary>What more closed days would do to each squad they concern. Nothing is saved.</summary>
    /// <param name="squad">Null for the whole club.</param>
    public async Task<Result<IReadOnlyList<SquadEffect>>> PreviewClosedAsync(Guid? squad, IReadOnlyList<ClosedDays> days, IProgress<SquadsDone>? progress = null, CancellationToken cancel = default) =>
        (squad is { } one ? await coaches.ForSquadAsync(one, cancel) : await coaches.HeadAsync(cancel)).TryGet(out _, out var problems)
            ? new Result<IReadOnlyList<SquadEffect>>.Ok(await plans.PreviewAllAsync(squad is { } only ? [only] : null, new InputChange(Closed: days), progress, cancel))
            : new Result<IReadOnlyList<SquadEffect>>.Failed(problems);

    /// <summary>What is left of the cycles that the squads concerned are planning now; null without season dates or after the last of them.</summary>
    /// <param name="squad">Null for the whole club.</param>
    public async Task<DateInterval?> PlannedDaysAsync(Guid? squad, CancellationToken cancel = default)
    {
        if (!(squad is { } one ? await coaches.ForSquadAsync(one, cancel) : await coaches.HeadAsync(cancel)).TryGet(out _, out _))
        {
            return null;
        }

        var today = await clubs.TodayAsync(cancel);
        var cycles = await seasons.EffectiveCyclesAsync(squad, today, cancel);
        return cycles.Count == 0 || cycles.Max(c => c.End) < today ? null : new DateInterval(LocalDate.Max(today, cycles.Min(c => c.Start)), cycles.Max(c => c.End));
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
        (await coaches.HeadAsync(cancel)).TryGet(out var coach, out var problems) ? await seasons.RemoveAsync(season.Id, season.Version, coach.UserId, cancel) : new Result<Guid>.Failed(problems);

    public async Task<IReadOnlyList<StoredClosedDays>> ClosedAsync(CancellationToken cancel = default) =>
        (await coaches.FindAsync(cancel)).TryGet(out var coach, out _) ? [.. (await closed.ListAsync(cancel)).Where(c => c.SquadId is not { } squad || coach.MayTouch(squad))] : [];

    public async Task<Result<Guid>> CloseAsync(Guid? squad, ClosedDays days, CancellationToken cancel = default) =>
        (squad is { } one ? await coaches.ToChangeAsync(one, cancel) : await coaches.HeadAsync(cancel)).TryGet(out var coach, out var problems)
            ? await closed.AddAsync(squad, days, coach.UserId, cancel)
            : new Result<Guid>.Failed(problems);

    /// <summary>Closes many days in one act; those that are closed already are not taken twice.</summary>
    /// <param name="squad">Null for the whole club.</param>
    public async Task<Result<int>> TakeClosedAsync(Guid? squad, IReadOnlyList<ClosedDays> days, CancellationToken cancel = default) =>
        coaches.Counted(squad is { } one ? await coaches.ToChangeAsync(one, cancel) : await coaches.HeadAsync(cancel)).TryGet(out var coach, out var problems)
            ? await closed.TakeAsync(squad, days, coach.UserId, cancel)
            : new Result<int>.Failed(problems);

    public async Task<Result<Guid>> OpenAsync(StoredClosedDays days, CancellationToken cancel = default) =>
        (days.SquadId is { } one ? await coaches.ToChangeAsync(one, cancel) : await coaches.HeadAsync(cancel)).TryGet(out var coach, out var problems)
            ? await closed.RemoveAsync(days.SquadId, days.Id, coach.UserId, cancel)
            : new Result<Guid>.Failed(problems);
}
