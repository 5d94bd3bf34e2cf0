using System.Text.Json;
using System.Text.Json.Nodes;
using ClubCycle.Data.Edits;
using ClubCycle.Data.Squads;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;
using NodaTime;

namespace ClubCycle.Data.Plans;

/// <summary>A squad's own inputs of one cycle as they were at a revision: matches, decisions, closed days, phase lengths, times, template and, when it has its own, season dates.</summary>
internal static class SquadInputs
{
    /// <summary>What belongs to the squad and not to its plan is never put back.</summary>
    private static readonly string[] NotInputs = [nameof(SquadRow.Name), nameof(SquadRow.NoticeAddress), nameof(SquadRow.RestoredFrom), nameof(SquadRow.RestoredOver)];

    public static string Write(IModel model, IReadOnlyList<IUndoableRow> rows) => JsonSerializer.Serialize(rows.Select(row =>
    {
        var type = model.FindEntityType(row.GetType())!;
        return new RowValue(type.GetTableName()!, Content(type, row));
    }));

    /// <summary>Makes the squad's rows what was written, in the next save; rows that came since go.</summary>
    /// <param name="span">Both cycles, then and now: what belongs to other years is left alone.</param>
    public static async Task<SquadRow> PutBackAsync(ClubCycleDb db, Guid squadId, string written, DateInterval span, CancellationToken cancel)
    {
        var squad = await db.Squads.SingleAsync(s => s.Id == squadId, cancel);
        var seasons = (await db.Seasons.Include(s => s.Stints).Where(s => s.SquadId == squadId).ToListAsync(cancel)).FindAll(s => s.ToSeason().Cycle.Intersection(span) is not null);
        IReadOnlyList<IUndoableRow> now =
        [
            squad,
            .. seasons,
            .. seasons.SelectMany(s => s.Stints),
            .. await db.Fixtures.Where(f => f.SquadId == squadId && f.Date >= span.Start && f.Date <= span.End).ToListAsync(cancel),
            .. await db.Pins.Where(p => p.SquadId == squadId && p.WeekFirst >= span.Start.PlusDays(-6) && p.WeekFirst <= span.End).ToListAsync(cancel),
            .. (await db.ClosedDays.Where(c => c.SquadId == squadId).ToListAsync(cancel)).Where(c => c.Days.Intersection(span) is not null),
            .. await db.PhaseLengths.Where(l => l.SquadId == squadId).ToListAsync(cancel),
        ];
        var current = now.ToDictionary(row => KeyOf(db.Entry(row).Metadata, Content(db.Entry(row).Metadata, row)));
        foreach (var value in JsonSerializer.Deserialize<List<RowValue>>(written)!)
        {
            var type = db.Model.GetEntityTypes().Single(t => t.GetTableName() == value.Table && t.GetSchema() == ClubCycleDb.ClubSchema);
            if (current.Remove(KeyOf(type, value.Values), out var row))
            {
                RowValues.Set(db.Entry(row), value.Values);
            }
            else
            {
                db.Add(RowValues.New(type, value.Values));
            }
        }

        db.RemoveRange(current.Values);
        return squad;
    }

    private static JsonObject Content(IEntityType type, IUndoableRow row)
    {
        var values = RowValues.All(type, row);
        if (row is SquadRow)
        {
            foreach (var property in NotInputs)
            {
                values.Remove(type.FindProperty(property)!.GetColumnName());
            }
        }

        return values;
    }

    private static string KeyOf(IEntityType type, JsonObject values) =>
        $"{type.GetTableName()} {string.Join(' ', type.FindPrimaryKey()!.Properties.Select(p => values[p.GetColumnName()]!.ToJsonString()))}";

    private sealed record RowValue(string Table, JsonObject Values);
}
