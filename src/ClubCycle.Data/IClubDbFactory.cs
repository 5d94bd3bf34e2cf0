using Microsoft.EntityFrameworkCore;

namespace ClubCycle.Data;

/// <summary>Opens contexts bound to the club of the current scope. One context an operation.</summary>
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
        return db;
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
