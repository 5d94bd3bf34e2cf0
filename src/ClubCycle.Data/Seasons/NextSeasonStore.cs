using ClubCycle.Data.Audit;
using ClubCycle.Data.Edits;
using ClubCycle.Data.Squads;
using ClubCycle.Planning;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Templates;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Seasons;

/// <summary>What a squad takes with it into its next cycle.</summary>
/// <param name="Version">Of the squad, as the coach saw it.</param>
/// <param name="TrainingAge">Null leaves it.</param>
/// <param name="NewestTemplate">Plans by the newest version of its template from now on.</param>
public sealed record SquadStep(Guid SquadId, int Version, TrainingAge? TrainingAge, bool NewestTemplate);

/// <summary>A squad as it stands before its next cycle.</summary>
/// <param name="TemplateVersion">The version it is planned by.</param>
/// <param name="NewestVersion">Of its template.</param>
/// <param name="Newest">The newest version itself; null when the squad has it already.</param>
/// <param name="Published">Something was published of the year that ends.</param>
public sealed record StandingSquad(Guid SquadId, int Version, TrainingAge TrainingAge, string TemplateTitle, int TemplateVersion, int NewestVersion, Template? Newest, bool Published);

/// <summary>Takes squads into their next cycle.</summary>
public sealed class NextSeasonStore(IClubDbFactory contexts, IClock clock)
{
    /// <summary>Squads that follow the dates.</summary>
    /// <param name="squadId">Null for all that follow the club's.</param>
    public async Task<IReadOnlyList<StandingSquad>> StandingAsync(Guid? squadId, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        var own = await db.Seasons.Where(s => s.SquadId != null).Select(s => s.SquadId!.Value).Distinct().ToListAsync(cancel);
        var squads = await db.Squads.AsNoTracking().Where(s => squadId == null ? !own.Contains(s.Id) : s.Id == squadId).ToListAsync(cancel);
        var ids = squads.Select(s => s.TemplateId).Distinct().ToList();
        var templates = await db.Templates.AsNoTracking().Where(t => ids.Contains(t.Id)).ToDictionaryAsync(t => t.Id, cancel);
        var published = await db.Revisions.Select(r => r.SquadId).Distinct().ToListAsync(cancel);
        List<StandingSquad> standing = [];
        foreach (var squad in squads)
        {
            var template = templates[squad.TemplateId];
            standing.Add(new StandingSquad(
                squad.Id, squad.Version, squad.TrainingAge, template.Title, squad.TemplateVersion, template.LatestVersion,
                squad.TemplateVersion < template.LatestVersion ? await NewestAsync(db, squad, cancel) : null,
                published.Contains(squad.Id)));
        }

        return standing;
    }

    /// <summary>Adds the season and takes the squads along, all or nothing.</summary>
    /// <param name="squadId">Null for the club's dates.</param>
    public async Task<Result<Guid>> SaveAsync(Guid? squadId, LocalDate previousLastDay, IReadOnlyList<Stint> stints, IReadOnlyList<SquadStep> steps, Guid by, CancellationToken cancel = default)
    {
        if (!Season.Create(previousLastDay, stints).TryGet(out var season, out var problems))
        {
            return new Result<Guid>.Failed(problems);
        }

        await using var db = await contexts.OpenAsync(cancel);
        if (squadId is not null && !await db.Squads.AnyAsync(s => s.Id == squadId, cancel))
        {
            return Refusal.NotFound("squad");
        }

        // A first season of its own would take the running one of the club's away from the squad.
        if (squadId is not null && !await db.Seasons.AnyAsync(s => s.SquadId == squadId, cancel))
        {
            return new Problem("season.follows-club", "This squad follows the club's dates. Save the club's next season, or give the squad dates of its own first.", "season");
        }

        if (await db.Seasons.Where(s => s.SquadId == squadId).SelectMany(s => s.Stints).AnyAsync(s => s.Days.End >= season.Stints[0].First && s.Days.Start <= season.Cycle.End, cancel))
        {
            return new Problem("season.there-already", "There is a season with matches in these weeks already. Look at it under Match dates, and change it there.", "season.stints");
        }

        var now = clock.GetCurrentInstant();
        var row = new SeasonRow { ClubId = db.ClubId, Id = NewId.Create(), SquadId = squadId, PreviousLastDay = season.PreviousLastDay };
        row.Stints.AddRange(season.Stints.Select((stint, i) => new StintRow { ClubId = db.ClubId, SeasonId = row.Id, Number = i + 1, Days = new DateInterval(stint.First, stint.Last) }));
        db.Seasons.Add(row);
        db.Note(now, by, "season.added", squadId);
        foreach (var step in steps.Where(s => s.TrainingAge is not null || s.NewestTemplate))
        {
            if (await db.Squads.SingleOrDefaultAsync(s => s.Id == step.SquadId, cancel) is not { } squad)
            {
                return Refusal.NotFound("squad");
            }

            if (squad.Version != step.Version)
            {
                return Refusal.Meanwhile("squad");
            }

            if (step.TrainingAge is { } age)
            {
                squad.TrainingAge = age;
                db.Note(now, by, "squad.changed", squad.Id, squad.Name);
            }

            if (step.NewestTemplate)
            {
                if (TemplateCheck.CheckFor(await NewestAsync(db, squad, cancel), squad.ToSquad().AgeGroup) is { Count: > 0 } unfit)
                {
                    return new Result<Guid>.Failed(unfit);
                }

                squad.TemplateVersion = await db.Templates.Where(t => t.Id == squad.TemplateId).Select(t => t.LatestVersion).SingleAsync(cancel);
                db.Note(now, by, "squad.template-set", squad.Id, $"version {squad.TemplateVersion}");
            }
        }

        await db.RememberAsync(now, by, squadId, $"Next season {EditWords.Day(season.Stints[0].First)} to {EditWords.Day(season.Stints[^1].Last)}", cancel);
        return await db.TrySaveAsync(Refusal.Meanwhile("squad"), cancel) is { } problem ? problem : row.Id;
    }

    private static async Task<Template> NewestAsync(ClubCycleDb db, SquadRow squad, CancellationToken cancel) => TemplateFile.Read(
        await db.TemplateVersions.Where(v => v.TemplateId == squad.TemplateId).OrderByDescending(v => v.Number).Select(v => v.Body).FirstAsync(cancel)).OrThrow();
}
