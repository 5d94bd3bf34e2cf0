using ClubCycle.Data.Plans;
using ClubCycle.Data.Squads;
using ClubCycle.Data.Templates;
using ClubCycle.Planning;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Templates;
using ClubCycle.Web.Account;

namespace ClubCycle.Web.Features.Templates;

/// <summary>The club's template library. Every coach reads and clones; a template is changed by head coaches and by coaches of all squads that use it.</summary>
public sealed class TemplateActions(CurrentCoach coaches, TemplateStore templates, SquadStore squads, PlanStore plans)
{
    public async Task<Result<IReadOnlyList<TemplateSummary>>> ListAsync(CancellationToken cancel = default) =>
        (await coaches.FindAsync(cancel)).TryGet(out _, out var problems)
            ? new Result<IReadOnlyList<TemplateSummary>>.Ok(await templates.ListAsync(cancel))
            : new Result<IReadOnlyList<TemplateSummary>>.Failed(problems);

    public async Task<Result<StoredTemplate>> FindAsync(Guid id, int? version, CancellationToken cancel = default) =>
        (await coaches.FindAsync(cancel)).TryGet(out _, out var problems) ? await templates.FindAsync(id, version, cancel) : new Result<StoredTemplate>.Failed(problems);

    public async Task<IReadOnlyList<TemplateVersion>> VersionsAsync(Guid id, CancellationToken cancel = default) =>
        (await coaches.FindAsync(cancel)).TryGet(out _, out _) ? await templates.VersionsAsync(id, cancel) : [];

    public async Task<Result<Guid>> CloneAsync(Guid id, int? version, string title, CancellationToken cancel = default) =>
        (await coaches.ToChangeAsync(cancel)).TryGet(out var coach, out var problems) ? await templates.CloneAsync(id, version, title, coach.UserId, cancel) : new Result<Guid>.Failed(problems);

    /// <summary>No longer offers a template; squads that use it go on. Head coaches only.</summary>
    public async Task<Result<Guid>> RetireAsync(Guid id, CancellationToken cancel = default) =>
        (await coaches.HeadAsync(cancel)).TryGet(out var coach, out var problems) ? await templates.RetireAsync(id, coach.UserId, cancel) : new Result<Guid>.Failed(problems);

    /// <summary>Offers a retired template again. Head coaches only.</summary>
    public async Task<Result<Guid>> BringBackAsync(Guid id, CancellationToken cancel = default) =>
        (await coaches.HeadAsync(cancel)).TryGet(out var coach, out var problems) ? await templates.BringBackAsync(id, coach.UserId, cancel) : new Result<Guid>.Failed(problems);

    /// <summary>Adds a template from a file's text. Refused with the place when it is wrong.</summary>
    public async Task<Result<Guid>> ImportAsync(string json, CancellationToken cancel = default)
    {
        if (!coaches.Counted(await coaches.ToChangeAsync(cancel)).TryGet(out var coach, out var problems) || !TemplateFile.Read(json).TryGet(out var template, out problems))
        {
            return new Result<Guid>.Failed(problems);
        }

        return await templates.ImportAsync(template, coach.UserId, cancel);
    }

    public async Task<Result<int>> SaveAsync(StoredTemplate stored, Template changed, string note, CancellationToken cancel = default)
    {
        if (!(await coaches.ToChangeAsync(cancel)).TryGet(out var coach, out var problems))
        {
            return new Result<int>.Failed(problems);
        }

        if (!coach.IsHeadCoach && (await squads.ListAsync(cancel)).Any(s => s.TemplateId == stored.Id && !coach.MayTouch(s.Squad.Key)))
        {
            return new Problem("template.used-by-others", "Squads that you do not coach use this template. Clone it and change the clone, or ask a head coach.");
        }

        return await templates.SaveVersionAsync(stored.Id, changed, stored.LatestVersion, coach.UserId, note, cancel);
    }

    /// <summary>The squads the coach may touch.</summary>
    public async Task<IReadOnlyList<StoredSquad>> SquadsAsync(CancellationToken cancel = default) =>
        (await coaches.FindAsync(cancel)).TryGet(out var coach, out _) ? [.. (await squads.ListAsync(cancel)).Where(s => coach.MayTouch(s.Squad.Key))] : [];

    public async Task<Result<int>> UseAsync(StoredSquad squad, Guid template, int version, CancellationToken cancel = default) =>
        (await coaches.ToChangeAsync(squad.Squad.Key, cancel)).TryGet(out var coach, out var problems)
            ? await templates.UseForSquadAsync(squad.Squad.Key, template, version, squad.Version, coach.UserId, cancel)
            : new Result<int>.Failed(problems);

    /// <summary>Plans squads by a version from now on, in one act: those of them that the coach may touch. A squad changed meanwhile is left out with the reason.</summary>
    public async Task<Result<IReadOnlyList<SquadOutcome<int>>>> UseForAllAsync(IReadOnlyList<StoredSquad> chosen, Guid template, int version, CancellationToken cancel = default)
    {
        if (!(await coaches.ToChangeAsync(cancel)).TryGet(out var coach, out var problems))
        {
            return new Result<IReadOnlyList<SquadOutcome<int>>>.Failed(problems);
        }

        return new Result<IReadOnlyList<SquadOutcome<int>>>.Ok(await templates.UseForSquadsAsync(
            [.. chosen.Where(s => coach.MayTouch(s.Squad.Key)).Select(s => (s.Squad.Key, s.Version))], template, version, coach.UserId, cancel));
    }

    /// <summary>What the changed template would do to each squad that uses it, in whatever version, of those the coach may touch. Nothing is saved.</summary>
    public async Task<Result<IReadOnlyList<SquadEffect>>> PreviewAsync(Guid template, Template changed, IProgress<SquadsDone>? progress = null, CancellationToken cancel = default)
    {
        if (!(await coaches.FindAsync(cancel)).TryGet(out var coach, out var problems))
        {
            return new Result<IReadOnlyList<SquadEffect>>.Failed(problems);
        }

        List<Guid> users = [.. (await squads.ListAsync(cancel)).Where(s => s.TemplateId == template && coach.MayTouch(s.Squad.Key)).Select(s => s.Squad.Key)];
        return new Result<IReadOnlyList<SquadEffect>>.Ok(await plans.PreviewAllAsync(users, request => request with { Template = changed }, progress, cancel));
    }

    /// <summary>A squad's year as it is and as it would be by this template. Nothing is saved.</summary>
    public async Task<Result<(SquadDraft Now, SquadDraft Then)>> TryAsync(Guid squad, Template template, CancellationToken cancel = default)
    {
        if (!(await coaches.ForSquadAsync(squad, cancel)).TryGet(out _, out var problems)
            || !(await plans.DraftAsync(squad, cancel)).TryGet(out var now, out problems)
            || !(await plans.PreviewAsync(squad, request => request with { Template = template }, cancel)).TryGet(out var then, out problems))
        {
            return new Result<(SquadDraft, SquadDraft)>.Failed(problems);
        }

        return (now, then);
    }
}
