using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Edits;

internal static class Remembering
{
    /// <summary>Remembers what the coming save does to a plan's inputs, so that the person can undo it. Saved, or not, together with it.</summary>
    /// <remarks>What the person had undone before can then no longer be redone, and the oldest edits are forgotten.</remarks>
    /// <param name="squadId">Null for the whole club.</param>
    /// <param name="words">What was done, as a button says it: <c>Skip easy run 1, week of 5 Oct</c>.</param>
    public static async Task RememberAsync(this ClubCycleDb db, Instant now, Guid by, Guid? squadId, string words, CancellationToken cancel)
    {
        if (RowChange.Pending(db, squadId) is not { Count: > 0 } changes)
        {
            return;
        }

        var own = await db.Edits.Where(e => e.SquadId == squadId && e.By == by).OrderByDescending(e => e.Number)
            .Select(e => new { e.Id, e.Number, Undone = e.UndoneAt != null }).ToListAsync(cancel);
        db.Edits.RemoveRange(
            own.Where(e => e.Undone).Concat(own.Where(e => !e.Undone).Skip(EditStore.Most - 1)).Select(e => new EditRow { ClubId = db.ClubId, Id = e.Id }));
        db.Edits.Add(new EditRow
        {
            ClubId = db.ClubId, Id = NewId.Create(), SquadId = squadId, By = by, Number = own.Select(e => e.Number).FirstOrDefault() + 1, At = now,
            Words = Planning.TypedText.Start(words, EditStore.LongestWords), Changes = RowChange.Write(changes),
        });
    }
}
