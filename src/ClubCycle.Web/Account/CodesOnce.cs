using System.Globalization;
using ClubCycle.Data;
using ClubCycle.Data.Accounts;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace ClubCycle.Web.Account;

/// <summary>The codes of an authenticator app (TOTP), each of which counts once. The library takes a code for two and a half minutes or so (from memory).</summary>
internal sealed class CodesOnce(IDbContextFactory<ClubCycleDb> contexts) : AuthenticatorTokenProvider<ClubUser>
{
    private const string Provider = "clubcycle-used-codes";
    private static readonly TimeSpan Kept = TimeSpan.FromMinutes(10);

    public override async Task<bool> ValidateAsync(string purpose, string token, UserManager<ClubUser> manager, ClubUser user)
    {
        if (!await base.ValidateAsync(purpose, token, manager, user))
        {
            return false;
        }

        // Of two at the same time the key of the table lets in one.
        await using var db = await contexts.CreateDbContextAsync();
        var now = TimeProvider.System.GetUtcNow();
        await db.Database.ExecuteSqlAsync($"delete from accounts.user_tokens where user_id = {user.Id} and login_provider = {Provider} and value < {Sortable(now - Kept)}");
        return await db.Database.ExecuteSqlAsync(
            $"insert into accounts.user_tokens (user_id, login_provider, name, value) values ({user.Id}, {Provider}, {token}, {Sortable(now)}) on conflict do nothing") == 1;
    }

    private static string Sortable(DateTimeOffset time) => time.ToUnixTimeSeconds().ToString("D12", CultureInfo.InvariantCulture);
}
