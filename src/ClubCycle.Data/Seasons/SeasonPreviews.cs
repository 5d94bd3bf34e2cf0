using ClubCycle.Data.Plans;
using ClubCycle.Planning;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using NodaTime;

namespace ClubCycle.Data.Seasons;

/// <summary>A squad's year as it would be.</summary>
/// <param name="Plan">Null where the inputs have problems.</param>
public sealed record PreviewedYear(Guid SquadId, string Name, AgeGroup AgeGroup, SquadPlan? Plan, IReadOnlyList<Problem> Problems);

/// <summary>Plans squads' years by a season that is not saved. Usual matches follow it.</summary>
public sealed class SeasonPreviews(IClubDbFactory contexts, PublishedPlans published, IClock clock)
{
    /// <param name="squadId">Null for every squad.</param>
    public async Task<IReadOnlyList<PreviewedYear>> WithSeasonAsync(Guid? squadId, Season season, Func<PlanRequest, PlanRequest>? change = null, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        var ages = AgeGroup.All.ToList();
        return
        [
            .. (await PlanInputs.LoadAsync(db, squadId is { } one ? [one] : null, clock.GetCurrentInstant(), published, cancel, new InputChange(season)))
                .Select(i =>
                {
                    var squad = i.Squad.ToSquad();
                    var input = i.Input.TryGet(out var loaded, out var problems) ? loaded : null;
                    var plan = input is not null && AnnualPlanner.Plan(change is null ? input.Request : change(input.Request)).TryGet(out var planned, out problems) ? planned : null;
                    return new PreviewedYear(squad.Key, squad.Name, squad.AgeGroup, plan, problems);
                })
                .OrderBy(p => ages.IndexOf(p.AgeGroup)).ThenBy(p => p.Name, StringComparer.OrdinalIgnoreCase),
        ];
    }
}
