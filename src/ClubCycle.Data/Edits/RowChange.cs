using System.Text.Json;
using System.Text.Json.Nodes;
using ClubCycle.Data.Squads;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;

namespace ClubCycle.Data.Edits;

/// <summary>What an edit did to one row.</summary>
/// <param name="Before">Null for a row that was added; of a row that was changed, the columns that changed.</param>
/// <param name="After">Null for a row that was removed; of a row that was changed, the columns that changed.</param>
internal sealed record RowChange(string Table, JsonObject Key, JsonObject? Before, JsonObject? After)
{
    public static IReadOnlyList<RowChange> Read(string changes) => JsonSerializer.Deserialize<List<RowChange>>(changes)!;

    public static string Write(IReadOnlyList<RowChange> changes) => JsonSerializer.Serialize(changes);

    /// <summary>What the next save would do to the rows that people can undo: those of the squad, or all for the whole club.</summary>
    public static IReadOnlyList<RowChange> Pending(ClubCycleDb db, Guid? squadId) =>
        [.. db.ChangeTracker.Entries<IUndoableRow>().Where(e => squadId is null || SquadOf(e) is not { } squad || squad == squadId).Select(Of).Where(c => c is { Before.Count: > 0 } or { After.Count: > 0 }).OfType<RowChange>()];

    public RowChange Reverse() => this with { Before = After, After = Before };

    /// <summary>Does it again; false when the row is no longer as it was before.</summary>
    public async Task<bool> ApplyAsync(ClubCycleDb db, CancellationToken cancel)
    {
        var type = db.Model.GetEntityTypes().Single(t => t.GetTableName() == Table && t.GetSchema() == ClubCycleDb.ClubSchema);
        var row = await db.FindAsync(type.ClrType, RowValues.KeyOf(type, Key), cancel);
        switch (row, Before, After)
        {
            case (null, null, { } added):
                db.Add(RowValues.New(type, added));
                return true;
            case ({ }, { } removed, null) when RowValues.Match(db.Entry(row), removed):
                db.Remove(row);
                return true;
            case ({ }, { } old, { } changed) when RowValues.Match(db.Entry(row), old):
                RowValues.Set(db.Entry(row), changed);
                return true;
            default:
                return false;
        }
    }

    private static Guid? SquadOf(EntityEntry<IUndoableRow> entry) => entry.Entity is SquadRow squad ? squad.Id : entry.Metadata.FindProperty("SquadId") is { } property ? (Guid?)entry.CurrentValues[property] : null;

    private static RowChange? Of(EntityEntry<IUndoableRow> entry)
    {
        var table = entry.Metadata.GetTableName()!;
        switch (entry.State)
        {
            case EntityState.Added:
                return new RowChange(table, RowValues.Key(entry), null, RowValues.All(entry.CurrentValues));
            case EntityState.Deleted:
                return new RowChange(table, RowValues.Key(entry), RowValues.All(entry.OriginalValues), null);
            case EntityState.Modified:
                var changed = entry.Properties.Where(p => RowValues.IsContent(p.Metadata) && !p.Metadata.GetValueComparer().Equals(p.OriginalValue, p.CurrentValue)).Select(p => p.Metadata).ToList();
                return new RowChange(table, RowValues.Key(entry), RowValues.Of(entry.OriginalValues, changed), RowValues.Of(entry.CurrentValues, changed));
            default:
                return null;
        }
    }
}
