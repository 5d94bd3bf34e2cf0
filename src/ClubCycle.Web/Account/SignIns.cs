using System.Security.Claims;
using ClubCycle.Data;
using ClubCycle.Data.Accounts;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using NodaTime;

namespace ClubCycle.Web.Account;

/// <summary>The browsers in which people are signed in: a cookie or an open page counts only while its row lives.</summary>
public sealed class SignIns(IDbContextFactory<ClubCycleDb> contexts, IOptions<SignInTimes> times)
{
    public const string Claim = "sign-in";

    private static readonly Duration Precision = Duration.FromMinutes(1);

    // As the cookie's own times: by the machine's clock.
    private static Instant Now => Instant.FromDateTimeOffset(TimeProvider.System.GetUtcNow());

    /// <summary>Starts one and names it in the person's claims.</summary>
    public async Task StartAsync(ClaimsPrincipal person, string browser, CancellationToken cancel)
    {
        var user = CurrentCoach.IdOf(person, ClaimTypes.NameIdentifier) ?? throw new InvalidOperationException("Somebody without an id signs in.");
        var started = new SignInRow { Id = NewId.Create(), UserId = user, StartedAt = Now, SeenAt = Now, Browser = browser };
        await using var db = await contexts.CreateDbContextAsync(cancel);
        db.SignIns.Add(started);
        await db.SaveChangesAsync(cancel);

        var kept = Living(db, user).OrderByDescending(s => s.SeenAt).ThenByDescending(s => s.StartedAt).Take(SignInTimes.AtOnce).Select(s => s.Id);
        await db.SignIns.Where(s => s.UserId == user && s.Id != started.Id && !kept.Contains(s.Id)).ExecuteDeleteAsync(cancel);
        ((ClaimsIdentity)person.Identity!).AddClaim(new Claim(Claim, started.Id.ToString("D")));
    }

    /// <summary>Whether this sign-in still counts; as a use, unless it is only looked at.</summary>
    public async Task<bool> LivesAsync(ClaimsPrincipal person, bool used, CancellationToken cancel)
    {
        if (CurrentCoach.IdOf(person, Claim) is not { } id || CurrentCoach.IdOf(person, ClaimTypes.NameIdentifier) is not { } user)
        {
            return false;
        }

        await using var db = await contexts.CreateDbContextAsync(cancel);
        if (await Living(db, user).Where(s => s.Id == id).Select(s => (Instant?)s.SeenAt).SingleOrDefaultAsync(cancel) is not { } seen)
        {
            return false;
        }

        if (used && Now - seen > Precision)
        {
            await db.SignIns.Where(s => s.Id == id).ExecuteUpdateAsync(row => row.SetProperty(s => s.SeenAt, Now), cancel);
        }

        return true;
    }

    /// <summary>Those of this person, the last used first.</summary>
    public async Task<IReadOnlyList<SignInRow>> OfAsync(Guid user, CancellationToken cancel)
    {
        await using var db = await contexts.CreateDbContextAsync(cancel);
        return await Living(db, user).AsNoTracking().OrderByDescending(s => s.SeenAt).ThenByDescending(s => s.StartedAt).ToListAsync(cancel);
    }

    /// <summary>Ends one of this person's; of nobody else's.</summary>
    public async Task EndAsync(Guid user, Guid signIn, CancellationToken cancel)
    {
        await using var db = await contexts.CreateDbContextAsync(cancel);
        await db.SignIns.Where(s => s.UserId == user && s.Id == signIn).ExecuteDeleteAsync(cancel);
    }

    /// <summary>Ends the one that these claims name, if they name any.</summary>
    public Task EndAsync(ClaimsPrincipal person, CancellationToken cancel) =>
        CurrentCoach.IdOf(person, ClaimTypes.NameIdentifier) is { } user && CurrentCoach.IdOf(person, Claim) is { } signIn
            ? EndAsync(user, signIn, cancel)
            : Task.CompletedTask;

    public async Task EndAllAsync(Guid user, CancellationToken cancel)
    {
        await using var db = await contexts.CreateDbContextAsync(cancel);
        await db.SignIns.Where(s => s.UserId == user).ExecuteDeleteAsync(cancel);
    }

    private IQueryable<SignInRow> Living(ClubCycleDb db, Guid user)
    {
        var (started, seen) = (Now - Duration.FromHours(times.Value.LongestHours), Now - Duration.FromMinutes(times.Value.IdleMinutes));
        return db.SignIns.Where(s => s.UserId == user && s.StartedAt > started && s.SeenAt > seen);
    }
}
