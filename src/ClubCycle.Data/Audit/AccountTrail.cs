using ClubCycle.Data.Accounts;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Audit;

/// <summary>Notes what happens to accounts, also when nobody is signed in yet.</summary>
public sealed class AccountTrail(IDbContextFactory<ClubCycleDb> contexts, IClock clock)
{
    /// <param name="by">Who did it, or whose account it is.</param>
    public async Task NoteAsync(Guid club, Guid? by, string what, string details = "", CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(ClubScope.Of(club), cancel);
        db.Note(clock.GetCurrentInstant(), by, what, details: details);
        await db.SaveChangesAsync(cancel);
    }

    public Task NoteAsync(ClubUser user, string what, CancellationToken cancel) => NoteAsync(user.ClubId, user.Id, what, cancel: cancel);

    /// <summary>The same, at most once a minute for a person, so that guessing does not fill the trail.</summary>
    public async Task NoteRefusalAsync(Guid club, Guid person, string what, string details = "", CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(ClubScope.Of(club), cancel);
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        await db.Database.ExecuteSqlAsync($"select pg_advisory_xact_lock(hashtextextended({person.ToString("D")}, 0))", cancel);
        var now = clock.GetCurrentInstant();
        var minute = now - Duration.FromMinutes(1);
        if (!await db.Audit.AnyAsync(a => a.By == person && a.What == what && a.At > minute, cancel))
        {
            db.Note(now, person, what, details: details);
            await db.SaveChangesAsync(cancel);
        }

        await transaction.CommitAsync(cancel);
    }
}
