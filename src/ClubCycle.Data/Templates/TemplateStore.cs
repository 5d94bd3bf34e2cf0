using ClubCycle.Data.Audit;
using ClubCycle.Data.Edits;
using ClubCycle.Data.Plans;
using ClubCycle.Data.Squads;
using ClubCycle.Planning;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Templates;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Templates;

/// <summary>A line of the club's library.</summary>
/// <param name="SquadsUsing">How many squads plan by it, in any version.</param>
/// <param name="RetiredAt">Since when it is no longer offered; null while it is.</param>
public sealed record TemplateSummary(Guid Id, string Name, string Title, bool BuiltIn, Guid? ParentId, int? ParentVersion, int LatestVersion, int SquadsUsing, Instant? RetiredAt = null);

/// <summary>One version of a template.</summary>
public sealed record StoredTemplate(Guid Id, int Version, Template Template, bool BuiltIn, Guid? ParentId, int? ParentVersion, int LatestVersion, Instant? RetiredAt = null);

public sealed record TemplateVersion(int Number, Instant SavedAt, Guid? SavedBy, string Note);

/// <summary>The club's template library. A saved version never changes; squads keep the version they use until somebody says otherwise.</summary>
public sealed class TemplateStore(IClubDbFactory contexts, IClock clock)
{
    public const int LongestNote = 500;

    public async Task<IReadOnlyList<TemplateSummary>> ListAsync(CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await db.Templates.OrderByDescending(t => t.BuiltIn).ThenBy(t => t.Title).ThenBy(t => t.Id)
            .Select(t => new TemplateSummary(t.Id, t.Name, t.Title, t.BuiltIn, t.ParentId, t.ParentVersion, t.LatestVersion, db.Squads.Count(s => s.TemplateId == t.Id), t.RetiredAt))
            .ToListAsync(cancel);
    }

    /// <param name="version">Null for the latest.</param>
    public async Task<Result<StoredTemplate>> FindAsync(Guid id, int? version = null, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await VersionAsync(db, id, version, cancel) is var (row, saved)
            ? new StoredTemplate(id, saved.Number, TemplateFile.Read(saved.Body).OrThrow(), row.BuiltIn, row.ParentId, row.ParentVersion, row.LatestVersion, row.RetiredAt)
            : Refusal.NotFound("template");
    }

    /// <summary>Newest first.</summary>
    public async Task<IReadOnlyList<TemplateVersion>> VersionsAsync(Guid id, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await db.TemplateVersions.Where(v => v.TemplateId == id).OrderByDescending(v => v.Number)
            .Select(v => new TemplateVersion(v.Number, v.SavedAt, v.SavedBy, v.Note)).ToListAsync(cancel);
    }

    /// <summary>A copy that remembers where it came from.</summary>
    /// <param name="version">Null for the latest.</param>
    public async Task<Result<Guid>> CloneAsync(Guid id, int? version, string title, Guid by, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await VersionAsync(db, id, version, cancel) is var (_, parent)
            ? await AddAsync(db, TemplateFile.Read(parent.Body).OrThrow() with { Title = title }, parent, by, $"Cloned from version {parent.Number}", cancel)
            : Refusal.NotFound("template");
    }

    /// <summary>Adds a template from outside, such as a file.</summary>
    public async Task<Result<Guid>> ImportAsync(Template template, Guid by, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await AddAsync(db, template, null, by, "Imported", cancel);
    }

    /// <summary>Saves a change as the next version. Squads that use an earlier one are not touched.</summary>
    /// <param name="expectedVersion">The latest version the person saw.</param>
    public async Task<Result<int>> SaveVersionAsync(Guid id, Template template, int expectedVersion, Guid by, string note, CancellationToken cancel = default)
    {
        if (TemplateCheck.Check(template) is { Count: > 0 } problems)
        {
            return new Result<int>.Failed(problems);
        }

        if (TypedText.NoteProblem(note, LongestNote, "template.note", "note", "note") is { } unreadable)
        {
            return unreadable;
        }

        await using var db = await contexts.OpenAsync(cancel);
        if (await db.Templates.SingleOrDefaultAsync(t => t.Id == id, cancel) is not { } row)
        {
            return Refusal.NotFound("template");
        }

        if (row.BuiltIn)
        {
            return new Problem("template.built-in", "A built-in template stays as it is, so that it can be gone back to. Clone it and change the copy.");
        }

        if (row.LatestVersion != expectedVersion)
        {
            return Refusal.Meanwhile("template");
        }

        var now = clock.GetCurrentInstant();
        row.LatestVersion++;
        row.Title = TypedText.Tidy(template.Title);
        db.TemplateVersions.Add(TemplateLibrary.VersionOf(row, template with { Name = row.Name, Title = row.Title }, by, now, TypedText.Tidy(note)));
        db.Note(now, by, "template.version-saved", details: $"{row.Name} {row.LatestVersion}");
        return await db.TrySaveAsync(Refusal.Meanwhile("template"), cancel) is { } problem ? problem : row.LatestVersion;
    }

    /// <summary>No longer offers a template; squads that use it go on.</summary>
    public Task<Result<Guid>> RetireAsync(Guid id, Guid by, CancellationToken cancel = default) => OfferAsync(id, false, by, cancel);

    /// <summary>Offers a retired template again.</summary>
    public Task<Result<Guid>> BringBackAsync(Guid id, Guid by, CancellationToken cancel = default) => OfferAsync(id, true, by, cancel);

    /// <summary>Plans a squad by a version of a template from now on.</summary>
    /// <param name="expectedVersion">Of the squad.</param>
    public async Task<Result<int>> UseForSquadAsync(Guid squadId, Guid templateId, int version, int expectedVersion, Guid by, CancellationToken cancel = default) =>
        (await UseForSquadsAsync([(squadId, expectedVersion)], templateId, version, by, cancel))[0].Result;

    /// <summary>
    /// Plans squads by a version of a template from now on; answers each squad's new version. A squad that somebody changed meanwhile, or that the
    /// template does not suit, is left out with the reason, and the others go through together.
    /// </summary>
    /// <param name="squads">Each squad once, with its expected version.</param>
    public async Task<IReadOnlyList<SquadOutcome<int>>> UseForSquadsAsync(
        IReadOnlyList<(Guid Squad, int ExpectedVersion)> squads, Guid templateId, int version, Guid by, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        await db.LockSquadsAsync(squads.Select(s => s.Squad), cancel);
        var ids = squads.Select(s => s.Squad).ToList();
        var rows = await db.Squads.Where(s => ids.Contains(s.Id)).ToDictionaryAsync(s => s.Id, cancel);
        var found = await VersionAsync(db, templateId, version, cancel);
        var template = found is var (_, saved) ? TemplateFile.Read(saved.Body).OrThrow() : null;
        var now = clock.GetCurrentInstant();
        var refused = squads.ToDictionary(s => s.Squad, s => Refused(s.Squad, s.ExpectedVersion));
        foreach (var squad in rows.Values.Where(r => refused[r.Id].Count == 0))
        {
            (squad.TemplateId, squad.TemplateVersion) = (templateId, version);
            db.Note(now, by, "squad.template-set", squad.Id, $"{found!.Value.Row.Name} {version}");
            await db.RememberAsync(now, by, squad.Id, $"Use template {found.Value.Row.Title}, version {version}", cancel);
        }

        await db.SaveChangesAsync(cancel);
        await transaction.CommitAsync(cancel);
        return [.. squads.Select(s => new SquadOutcome<int>(s.Squad, refused[s.Squad] is { Count: > 0 } problems ? new Result<int>.Failed(problems) : rows[s.Squad].Version))];

        IReadOnlyList<Problem> Refused(Guid squad, int expectedVersion) =>
            !rows.TryGetValue(squad, out var row) ? [Refusal.NotFound("squad")]
            : row.Version != expectedVersion ? [Refusal.Meanwhile("squad")]
            : template is null ? [Refusal.NotFound("template")]
            : found!.Value.Row.RetiredAt is not null && row.TemplateId != templateId ? [TemplateLibrary.Retired]
            : TemplateCheck.CheckFor(template, row.ToSquad().AgeGroup);
    }

    private async Task<Result<Guid>> OfferAsync(Guid id, bool offered, Guid by, CancellationToken cancel)
    {
        await using var db = await contexts.OpenAsync(cancel);
        if (await db.Templates.SingleOrDefaultAsync(t => t.Id == id, cancel) is not { } row)
        {
            return Refusal.NotFound("template");
        }

        if (offered == row.RetiredAt is null)
        {
            return id;
        }

        var now = clock.GetCurrentInstant();
        row.RetiredAt = offered ? null : now;
        db.Note(now, by, offered ? "template.brought-back" : "template.retired", details: row.Name);
        return await db.TrySaveAsync(Refusal.Meanwhile("template"), cancel) is { } problem ? problem : id;
    }

    private async Task<Result<Guid>> AddAsync(ClubCycleDb db, Template template, TemplateVersionRow? parent, Guid by, string note, CancellationToken cancel)
    {
        if (TemplateCheck.Check(template) is { Count: > 0 } problems)
        {
            return new Result<Guid>.Failed(problems);
        }

        var title = TypedText.Tidy(template.Title);
        var name = TemplateLibrary.NameFrom(title, await db.Templates.Select(t => t.Name).ToListAsync(cancel));
        var now = clock.GetCurrentInstant();
        var row = TemplateLibrary.Add(db, template with { Name = name, Title = title }, builtIn: false, parent, by, now, note);
        db.Note(now, by, "template.added", details: name);
        return await db.TrySaveAsync(Refusal.Meanwhile("template"), cancel) is { } problem ? problem : row.Id;
    }

    private static async Task<(TemplateRow Row, TemplateVersionRow Version)?> VersionAsync(ClubCycleDb db, Guid id, int? version, CancellationToken cancel)
    {
        if (await db.Templates.AsNoTracking().SingleOrDefaultAsync(t => t.Id == id, cancel) is not { } row)
        {
            return null;
        }

        var number = version ?? row.LatestVersion;
        var saved = await db.TemplateVersions.AsNoTracking().SingleOrDefaultAsync(v => v.TemplateId == id && v.Number == number, cancel);
        return saved is null ? null : (row, saved);
    }
}
