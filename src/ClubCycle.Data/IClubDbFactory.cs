using Microsoft.EntityFrameworkCore;

namespace ClubCycle.Data;

/// <summary>Opens contexts bound to the club of the current scope, each with a connection that it holds until it is disposed of. One context an operation.</summary>
public interface IClubDbFactory
{
    Task<ClubCycleDb> OpenAsync(CancellationToken cancel = default);
}

internal sealed class ClubDbFactory(IDbContextFactory<ClubCycleDb> contexts, CurrentClub club) : IClubDbFactory
{
    public async Task<ClubCycleDb> OpenAsync(CancellationToken cancel = default)
    {
        var db = await contexts.OpenAsync(ClubScope.Of(club.Id), cancel);
        db.Origin = club.Origin;
        try
        {
            // Held, so that PostgreSQL is told the club once and not before each query.
            await db.Database.OpenConnectionAsync(cancel);
            return db;
        }
        catch
        {
            await db.DisposeAsync();
            throw;
        }
    }
}

internal static class ScopedContexts
{
    public static async Task<ClubCycleDb> OpenAsync(this IDbContextFactory<ClubCycleDb> contexts, ClubScope scope, CancellationToken cancel)
    {
        var db = await contexts.CreateDbContextAsync(cancel);
        db.Scope = scope;
        return db;
    }
}
