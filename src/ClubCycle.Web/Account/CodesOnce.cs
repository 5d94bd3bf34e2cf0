using System.Globalization;
using ClubCycle.Data;
using ClubCycle.Data.Accounts;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Web.Account;

/// <summary>The codes of an authenticator app, each of which counts once and only while the app shows it. The library's own would count for minutes.</summary>
internal sealed class CodesOnce(IDbContextFactory<ClubCycleDb> contexts, IClock clock) : AuthenticatorTokenProvider<ClubUser>
{
    private const string Provider = "clubcycle-used-codes";
    private static readonly Duration Kept = Duration.FromMinutes(10);

    public override async Task<bool> ValidateAsync(string purpose, string token, UserManager<ClubUser> manager, ClubUser user)
    {
        var now = clock.GetCurrentInstant();
        if (await manager.GetAuthenticatorKeyAsync(user) is not { } key || !AppCode.Counts(key, token, now))
        {
            return false;
        }

        // Of two at the same time the key of the table lets in one.
        await using var db = await contexts.CreateDbContextAsync();
        await db.Database.ExecuteSqlAsync($"delete from accounts.user_tokens where user_id = {user.Id} and login_provider = {Provider} and value < {Sortable(now - Kept)}");
        return await db.Database.ExecuteSqlAsync(
            $"insert into accounts.user_tokens (user_id, login_provider, name, value) values ({user.Id}, {Provider}, {token}, {Sortable(now)}) on conflict do nothing") == 1;
    }

    private static string Sortable(Instant time) => time.ToUnixTimeSeconds().ToString("D12", CultureInfo.InvariantCulture);
}
