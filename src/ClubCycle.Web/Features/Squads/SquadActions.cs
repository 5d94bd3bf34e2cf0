using ClubCycle.Data.Plans;
using ClubCycle.Data.Squads;
using ClubCycle.Data.Templates;
using ClubCycle.Planning;
using ClubCycle.Planning.Squads;
using ClubCycle.Web.Account;

namespace ClubCycle.Web.Features.Squads;

/// <summary>What coaches do with squads. Head coaches add and remove them; a squad's own coaches change it.</summary>
public sealed class SquadActions(CurrentCoach coaches, SquadStore squads, TemplateStore templates, PlanStore plans)
{
    public async Task<Result<IReadOnlyList<StoredSquad>>> ListAsync(CancellationToken cancel = default) =>
        (await coaches.FindAsync(cancel)).TryGet(out var coach, out var problems)
            ? new Result<IReadOnlyList<StoredSquad>>.Ok([.. (await squads.ListAsync(cancel)).Where(s => coach.MayTouch(s.Squad.Key))])
            : new Result<IReadOnlyList<StoredSquad>>.Failed(problems);

    public async Task<Result<StoredSquad>> FindAsync(Guid squad, CancellationToken cancel = default) =>
        (await coaches.ForSquadAsync(squad, cancel)).TryGet(out _, out var problems) ? await squads.FindAsync(squad, cancel) : new Result<StoredSquad>.Failed(problems);

    public async Task<Result<Guid>> AddAsync(Squad squad, CancellationToken cancel = default) =>
        (await coaches.HeadAsync(cancel)).TryGet(out var coach, out var problems) ? await squads.AddAsync(squad with { Key = Guid.Empty }, null, coach.UserId, cancel) : new Result<Guid>.Failed(problems);

    public async Task<Result<int>> SaveAsync(Squad squad, int expectedVersion, CancellationToken cancel = default) =>
        (await coaches.ToChangeAsync(squad.Key, cancel)).TryGet(out var coach, out var problems)
            ? await squads.SaveAsync(squad, expectedVersion, coach.UserId, cancel)
            : new Result<int>.Failed(problems);

    /// <summary>Sets where notices of changes go; empty for nowhere.</summary>
    public async Task<Result<int>> SetNoticeAddressAsync(StoredSquad squad, string address, CancellationToken cancel = default) =>
        (await coaches.ToChangeAsync(squad.Squad.Key, cancel)).TryGet(out var coach, out var problems)
            ? await squads.SetNoticeAddressAsync(squad.Squad.Key, address, squad.Version, coach.UserId, cancel)
            : new Result<int>.Failed(problems);

    public async Task<Result<Guid>> RemoveAsync(Guid squad, CancellationToken cancel = default) =>
        (await coaches.HeadAsync(cancel)).TryGet(out var coach, out var problems) ? await squads.RemoveAsync(squad, coach.UserId, cancel) : new Result<Guid>.Failed(problems);

    public async Task<bool> IsHeadCoachAsync(CancellationToken cancel = default) => (await coaches.FindAsync(cancel)).TryGet(out var coach, out _) && coach.IsHeadCoach;

    /// <summary>The library without what is retired, those for the age group first.</summary>
    /// <param name="inUse">Listed even when it is retired.</param>
    public async Task<IReadOnlyList<TemplateSummary>> TemplatesForAsync(AgeGroup ages, Guid? inUse = null, CancellationToken cancel = default)
    {
        if (!(await coaches.FindAsync(cancel)).TryGet(out _, out _))
        {
            return [];
        }

        var usual = Planning.Templates.BuiltInTemplates.For(ages).Name;
        var all = await templates.ListAsync(cancel);
        return [.. all.Where(t => t.RetiredAt is null || t.Id == inUse).OrderBy(t => t.Name != usual).ThenBy(t => t.BuiltIn).ThenBy(t => t.Title, StringComparer.OrdinalIgnoreCase)];
    }

    /// <summary>The squad's year by the latest version of another template. Nothing is saved.</summary>
    public async Task<Result<SquadDraft>> TryTemplateAsync(Guid squad, Guid template, CancellationToken cancel = default)
    {
        if (!(await coaches.ForSquadAsync(squad, cancel)).TryGet(out _, out var problems) || !(await templates.FindAsync(template, null, cancel)).TryGet(out var stored, out problems))
        {
            return new Result<SquadDraft>.Failed(problems);
        }

        return await plans.PreviewAsync(squad, request => request with { Template = stored.Template }, cancel);
    }

    public async Task<Result<int>> UseTemplateAsync(StoredSquad squad, Guid template, CancellationToken cancel = default)
    {
        if (!(await coaches.ToChangeAsync(squad.Squad.Key, cancel)).TryGet(out var coach, out var problems) || !(await templates.FindAsync(template, null, cancel)).TryGet(out var stored, out problems))
        {
            return new Result<int>.Failed(problems);
        }

        return await templates.UseForSquadAsync(squad.Squad.Key, template, stored.Version, squad.Version, coach.UserId, cancel);
    }
}
