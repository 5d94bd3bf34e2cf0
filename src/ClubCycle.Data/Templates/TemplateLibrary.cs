using ClubCycle.Planning;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Templates;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Templates;

internal static class TemplateLibrary
{
    public static Problem Retired { get; } = new("template.retired", "This template is retired: squads that use it go on, others do not start with it. Choose another, or let a head coach bring it back.", "template");

    /// <summary>The template for a new squad of this age group: the built-in one, else the first of the club's own that is meant for it. Never a retired one.</summary>
    public static async Task<Result<TemplateRow>> UsualAsync(ClubCycleDb db, AgeGroup ages, CancellationToken cancel)
    {
        var usual = BuiltInTemplates.For(ages).Name;
        var offered = await (from template in db.Templates
                             join version in db.TemplateVersions on new { template.Id, Number = template.LatestVersion } equals new { Id = version.TemplateId, version.Number }
                             where template.RetiredAt == null
                             orderby template.Name == usual descending, template.BuiltIn descending, template.Name
                             select new { Row = template, version.Body }).AsNoTracking().ToListAsync(cancel);
        return offered.Find(t => t.Row.Name == usual || TemplateFile.Read(t.Body).OrThrow().AgeGroups.Contains(ages)) is { } found
            ? found.Row
            : new Problem("template.none-for-age", $"Every template for {ages.Name} is retired. Bring one back, or make one for this age group, then add the squad.", "template");
    }

    /// <summary>Copies the built-in templates into a new club's library.</summary>
    public static void AddBuiltIns(ClubCycleDb db, Instant now)
    {
        foreach (var template in BuiltInTemplates.All)
        {
            Add(db, template, builtIn: true, parent: null, by: null, now, "Built in");
        }
    }

    public static TemplateRow Add(ClubCycleDb db, Template template, bool builtIn, TemplateVersionRow? parent, Guid? by, Instant now, string note)
    {
        var row = new TemplateRow
        {
            ClubId = db.ClubId, Id = NewId.Create(), Name = template.Name, Title = template.Title, BuiltIn = builtIn,
            ParentId = parent?.TemplateId, ParentVersion = parent?.Number, LatestVersion = 1,
        };
        db.Templates.Add(row);
        db.TemplateVersions.Add(VersionOf(row, template, by, now, note));
        return row;
    }

    public static TemplateVersionRow VersionOf(TemplateRow row, Template template, Guid? by, Instant now, string note) => new()
    {
        ClubId = row.ClubId, TemplateId = row.Id, Number = row.LatestVersion, Body = TemplateFile.Write(template), SavedAt = now, SavedBy = by, Note = note,
    };

    /// <summary>A name for a file, a slot and an address from what a coach typed; <paramref name="taken"/> names get a number.</summary>
    public static string NameFrom(string title, IReadOnlyCollection<string> taken)
    {
        var letters = new string([.. title.Trim().ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-')]);
        var name = string.Join('-', letters.Split('-', StringSplitOptions.RemoveEmptyEntries));
        name = name.Length == 0 ? "template" : name[..Math.Min(name.Length, 90)].TrimEnd('-');
        return !taken.Contains(name) ? name : Enumerable.Range(2, taken.Count + 1).Select(n => $"{name}-{n}").First(n => !taken.Contains(n));
    }
}
