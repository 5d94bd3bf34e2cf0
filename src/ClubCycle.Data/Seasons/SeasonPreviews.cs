using ClubCycle.Data.Plans;
using ClubCycle.Planning;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Seasons;

/// <summary>A squad's year as it would be.</summary>
/// <param name="Plan">Null where the inputs have problems.</param>
/// <param name="Season">The dates it is planned by now; null without any.</param>
public sealed record PreviewedYear(Guid SquadId, string Name, AgeGroup AgeGroup, SquadPlan? Plan, IReadOnlyList<Problem> Problems, Season? Season);

/// <summary>Plans squads' years by dates and closed days that are not saved. Usual matches follow them.</summary>
public sealed class SeasonPreviews(IClubDbFactory contexts, PublishedPlans published, IClock clock)
{
    /// <summary>In the club's zone.</summary>
    public async Task<LocalDate> TodayAsync(CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return clock.GetCurrentInstant().InZone(DateTimeZoneProviders.Tzdb[await db.Clubs.Select(c => c.TimeZone).SingleAsync(cancel)]).Date;
    }

    /// <summary>As it is stored.</summary>
    /// <param name="squadId">Null for every squad.</param>
    public Task<IReadOnlyList<PreviewedYear>> AsStoredAsync(Guid? squadId, CancellationToken cancel = default) => PlanAsync(squadId, null, null, cancel);

    /// <param name="seasonId">The stored season whose dates these replace; null for a new one.</param>
    public Task<IReadOnlyList<PreviewedYear>> WithSeasonAsync(Guid? squadId, Guid? seasonId, Season season, Func<PlanRequest, PlanRequest>? change = null, CancellationToken cancel = default) =>
        PlanAsync(squadId, new InputChange(season, seasonId ?? Guid.Empty), change, cancel);

    public Task<IReadOnlyList<PreviewedYear>> WithClosedAsync(Guid? squadId, IReadOnlyList<ClosedDays> days, CancellationToken cancel = default) =>
        PlanAsync(squadId, new InputChange(Closed: days), null, cancel);

    private async Task<IReadOnlyList<PreviewedYear>> PlanAsync(Guid? squadId, InputChange? inputs, Func<PlanRequest, PlanRequest>? change, CancellationToken cancel)
    {
        await using var db = await contexts.OpenAsync(cancel);
        var ages = AgeGroup.All.ToList();
        return
        [
            .. (await PlanInputs.LoadAsync(db, squadId, clock.GetCurrentInstant(), published, cancel, inputs))
                .Select(i =>
                {
                    var squad = i.Squad.ToSquad();
                    var input = i.Input.TryGet(out var loaded, out var problems) ? loaded : null;
                    var plan = input is not null && AnnualPlanner.Plan(change is null ? input.Request : change(input.Request)).TryGet(out var planned, out problems) ? planned : null;
                    return new PreviewedYear(squad.Key, squad.Name, squad.AgeGroup, plan, problems, input?.Request.Season);
                })
                .OrderBy(p => ages.IndexOf(p.AgeGroup)).ThenBy(p => p.Name, StringComparer.OrdinalIgnoreCase),
        ];
    }
}
