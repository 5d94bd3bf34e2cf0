using ClubCycle.Data.Seasons;
using ClubCycle.Planning;
using ClubCycle.Planning.Seasons;
using ClubCycle.Web.Account;
using NodaTime;

namespace ClubCycle.Web.Features.Seasons;

/// <summary>Season dates of the club and of squads. Head coaches set them; each coach sees those of their squads.</summary>
public sealed class SeasonActions(CurrentCoach coaches, SeasonStore seasons, ClosedDayStore closed, SeasonPreviews previews)
{
    public async Task<Result<IReadOnlyList<StoredSeason>>> ListAsync(CancellationToken cancel = default) =>
        (await coaches.FindAsync(cancel)).TryGet(out var coach, out var problems)
            ? new Result<IReadOnlyList<StoredSeason>>.Ok([.. (await seasons.ListAsync(cancel)).Where(s => s.SquadId is not { } squad || coach.MayTouch(squad))])
            : new Result<IReadOnlyList<StoredSeason>>.Failed(problems);

    /// <summary>What the dates would do to each squad they concern. Nothing is saved.</summary>
    /// <param name="squad">Null for the club's dates; squads with dates of their own are not concerned.</param>
    /// <param name="replaces">The stored season whose dates these would be; null for a new one.</param>
    public async Task<Result<IReadOnlyList<SeasonEffect>>> PreviewAsync(Guid? squad, Season season, Guid? replaces = null, CancellationToken cancel = default)
    {
        if (!(await coaches.HeadAsync(cancel)).TryGet(out _, out var problems))
        {
            return new Result<IReadOnlyList<SeasonEffect>>.Failed(problems);
        }

        var own = (await seasons.ListAsync(cancel)).Where(s => s.SquadId is not null).Select(s => s.SquadId!.Value).ToHashSet();
        var effects = Between(await previews.AsStoredAsync(squad, cancel), await previews.WithSeasonAsync(squad, replaces, season, cancel: cancel));
        return new Result<IReadOnlyList<SeasonEffect>>.Ok([.. effects.Where(e => squad is not null || !own.Contains(e.Squad))]);
    }

    /// <summary>What more closed days would do to each squad they concern. Nothing is saved.</summary>
    /// <param name="squad">Null for the whole club.</param>
    public async Task<Result<IReadOnlyList<SeasonEffect>>> PreviewClosedAsync(Guid? squad, IReadOnlyList<ClosedDays> days, CancellationToken cancel = default)
    {
        if (!(squad is { } one ? await coaches.ForSquadAsync(one, cancel) : await coaches.HeadAsync(cancel)).TryGet(out _, out var problems))
        {
            return new Result<IReadOnlyList<SeasonEffect>>.Failed(problems);
        }

        return new Result<IReadOnlyList<SeasonEffect>>.Ok(Between(await previews.AsStoredAsync(squad, cancel), await previews.WithClosedAsync(squad, days, cancel)));
    }

    /// <summary>What is left of the cycles that the squads concerned are planning now; null without season dates or after the last of them.</summary>
    /// <param name="squad">Null for the whole club.</param>
    public async Task<DateInterval?> PlannedDaysAsync(Guid? squad, CancellationToken cancel = default)
    {
        if (!(squad is { } one ? await coaches.ForSquadAsync(one, cancel) : await coaches.HeadAsync(cancel)).TryGet(out _, out _))
        {
            return null;
        }

        var cycles = (await previews.AsStoredAsync(squad, cancel)).Select(p => p.Season?.Cycle).OfType<DateInterval>().ToList();
        var today = await previews.TodayAsync(cancel);
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
        (await coaches.HeadAsync(cancel)).TryGet(out var coach, out var problems) ? await seasons.RemoveAsync(season.Id, coach.UserId, cancel) : new Result<Guid>.Failed(problems);

    public async Task<IReadOnlyList<StoredClosedDays>> ClosedAsync(CancellationToken cancel = default) =>
        (await coaches.FindAsync(cancel)).TryGet(out var coach, out _) ? [.. (await closed.ListAsync(cancel)).Where(c => c.SquadId is not { } squad || coach.MayTouch(squad))] : [];

    public async Task<Result<Guid>> CloseAsync(Guid? squad, ClosedDays days, CancellationToken cancel = default) =>
        (squad is { } one ? await coaches.ForSquadAsync(one, cancel) : await coaches.HeadAsync(cancel)).TryGet(out var coach, out var problems)
            ? await closed.AddAsync(squad, days, coach.UserId, cancel)
            : new Result<Guid>.Failed(problems);

    /// <summary>Closes many days in one act; those that are closed already are not taken twice.</summary>
    /// <param name="squad">Null for the whole club.</param>
    public async Task<Result<int>> TakeClosedAsync(Guid? squad, IReadOnlyList<ClosedDays> days, CancellationToken cancel = default) =>
        (squad is { } one ? await coaches.ForSquadAsync(one, cancel) : await coaches.HeadAsync(cancel)).TryGet(out var coach, out var problems)
            ? await closed.TakeAsync(squad, days, coach.UserId, cancel)
            : new Result<int>.Failed(problems);

    public async Task<Result<Guid>> OpenAsync(StoredClosedDays days, CancellationToken cancel = default) =>
        (days.SquadId is { } one ? await coaches.ForSquadAsync(one, cancel) : await coaches.HeadAsync(cancel)).TryGet(out var coach, out var problems)
            ? await closed.RemoveAsync(days.SquadId, days.Id, coach.UserId, cancel)
            : new Result<Guid>.Failed(problems);

    private static IReadOnlyList<SeasonEffect> Between(IReadOnlyList<PreviewedYear> before, IReadOnlyList<PreviewedYear> after) =>
        [.. before.Join(after, b => b.SquadId, a => a.SquadId, (b, a) => new SeasonEffect(b.SquadId, b.Name, b.Plan, a.Plan, a.Problems))];
}
