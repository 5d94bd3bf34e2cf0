using System.Text.Json.Nodes;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Edits;

/// <summary>Who saved something last, and when by the club's clock.</summary>
/// <param name="Who">Null when the person is gone.</param>
public sealed record LastSave(string? Who, LocalDateTime At);

/// <summary>Finds who saved something last, for the person who wanted to save it after them.</summary>
public sealed class LastSaveStore(IClubDbFactory contexts)
{
    /// <summary>Of a squad, a season or a match; null when it was saved in a way that no edit remembers.</summary>
    /// <param name="squad">The squad it belongs to; null when it can be anybody's.</param>
    public async Task<LastSave?> OfRowAsync(Guid id, Guid? squad = null, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        var (itself, stint) = (Changing("id", id), Changing("season_id", id));
        var last = await db.Edits.Where(e => squad == null || e.SquadId == squad).Where(e => EF.Functions.JsonContains(e.Changes, itself) || EF.Functions.JsonContains(e.Changes, stint)).Select(e => new { e.By, At = e.UndoneAt ?? e.At })
            .OrderByDescending(e => e.At).FirstOrDefaultAsync(cancel);
        return last is null ? null : await OfAsync(db, last.By, last.At, cancel);
    }

    public async Task<LastSave?> OfTemplateAsync(Guid id, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        var last = await db.TemplateVersions.Where(v => v.TemplateId == id).OrderByDescending(v => v.Number).Select(v => new { v.SavedBy, v.SavedAt }).FirstOrDefaultAsync(cancel);
        return last is null ? null : await OfAsync(db, last.SavedBy, last.SavedAt, cancel);
    }

    public async Task<LastSave?> OfClubAsync(CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        var last = await db.Audit.Where(a => a.What == "club.changed").OrderByDescending(a => a.At).ThenByDescending(a => a.Id).Select(a => new { a.By, a.At }).FirstOrDefaultAsync(cancel);
        return last is null ? null : await OfAsync(db, last.By, last.At, cancel);
    }

    private static string Changing(string column, Guid id) => new JsonArray(new JsonObject { ["Key"] = new JsonObject { [column] = id.ToString("D") } }).ToJsonString();

    private static async Task<LastSave> OfAsync(ClubCycleDb db, Guid? by, Instant at, CancellationToken cancel)
    {
        var who = await db.Users.Where(u => u.Id == by && u.ClubId == db.ClubId).Select(u => u.DisplayName).FirstOrDefaultAsync(cancel);
        var zone = await db.Clubs.Select(c => c.TimeZone).SingleAsync(cancel);
        return new LastSave(who, at.InZone(DateTimeZoneProviders.Tzdb[zone]).LocalDateTime);
    }
}
