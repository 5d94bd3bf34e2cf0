using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Outbox;

/// <summary>Work taken from the outbox.</summary>
public sealed record OutboxMessage(Guid ClubId, Guid Id, string Kind, Guid SquadId, string? Body, Instant CreatedAt, int Attempts);

/// <summary>Hands each piece of work to one worker at a time, on as many nodes as there are.</summary>
public sealed class OutboxStore(IDbContextFactory<ClubCycleDb> everywhere, IClock clock)
{
    /// <summary>The longest that any work may take.</summary>
    public static readonly Duration Patience = Duration.FromMinutes(2);

    private static readonly Duration LongestWait = Duration.FromHours(1);

    /// <summary>A worker that has not answered by then is taken for dead, and its work is handed out again. Mail servers are slow; calendars take a second or two, and players wait for them.</summary>
    public static Duration PatienceFor(string kind) => kind == OutboxKinds.SendNotice ? Patience : Duration.FromSeconds(30);

    /// <summary>The oldest work of a kind that is due; null when there is none. It is done twice when a worker dies, so doing it twice must not matter.</summary>
    public async Task<OutboxMessage?> TakeAsync(string kind, CancellationToken cancel = default)
    {
        var now = clock.GetCurrentInstant();

        // Nothing waits so long: the clock was put back, and the work is due.
        var beyond = now + LongestWait + Patience;
        await using var db = await everywhere.OpenAsync(ClubScope.Everywhere, cancel);
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        var row = await db.Outbox
            .FromSql($"select * from club.outbox where kind = {kind} and (not_before <= {now} or not_before > {beyond}) order by not_before, id limit 1 for update skip locked")
            .SingleOrDefaultAsync(cancel);
        if (row is null)
        {
            return null;
        }

        row.Attempts++;
        row.NotBefore = now + PatienceFor(kind);
        await db.SaveChangesAsync(cancel);
        await transaction.CommitAsync(cancel);
        return new OutboxMessage(row.ClubId, row.Id, row.Kind, row.SquadId, row.Body, row.CreatedAt, row.Attempts);
    }

    public async Task CompleteAsync(OutboxMessage message, CancellationToken cancel = default)
    {
        await using var db = await everywhere.OpenAsync(ClubScope.Of(message.ClubId), cancel);
        await db.Outbox.Where(o => o.Id == message.Id).ExecuteDeleteAsync(cancel);
    }

    /// <summary>Puts work that failed back: at once at first, then twice as long each time, up to an hour.</summary>
    public async Task PutBackAsync(OutboxMessage message, CancellationToken cancel = default)
    {
        var wait = Duration.Min(Duration.FromSeconds(5) * Math.Pow(2, Math.Min(message.Attempts, 20) - 1), LongestWait);
        var due = clock.GetCurrentInstant() + wait;
        await using var db = await everywhere.OpenAsync(ClubScope.Of(message.ClubId), cancel);
        await db.Outbox.Where(o => o.Id == message.Id).ExecuteUpdateAsync(set => set.SetProperty(o => o.NotBefore, due), cancel);
    }

    /// <summary>Hands over what a worker that ends has not done.</summary>
    public async Task GiveBackAsync(OutboxMessage message, CancellationToken cancel = default)
    {
        var now = clock.GetCurrentInstant();
        await using var db = await everywhere.OpenAsync(ClubScope.Of(message.ClubId), cancel);
        await db.Outbox.Where(o => o.Id == message.Id).ExecuteUpdateAsync(set => set.SetProperty(o => o.NotBefore, now).SetProperty(o => o.Attempts, o => o.Attempts - 1), cancel);
    }
}
