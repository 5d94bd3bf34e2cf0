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
    public async Task<Guid> StartAsync(ClaimsPrincipal person, string browser, CancellationToken cancel)
    {
        var user = CurrentCoach.IdOf(person, ClaimTypes.NameIdentifier) ?? throw new InvalidOperationException("Somebody without an id signs in.");
        var started = new SignInRow { Id = NewId.Create(), UserId = user, StartedAt = Now, SeenAt = Now, ByLink = Came(person, CoachSignIn.Link), ByPasskey = Came(person, CoachSignIn.Passkey), Browser = browser };
        await using var db = await contexts.CreateDbContextAsync(cancel);
        db.SignIns.Add(started);
        await db.SaveChangesAsync(cancel);

        var kept = Living(db, user).OrderByDescending(s => s.SeenAt).ThenByDescending(s => s.StartedAt).Take(SignInTimes.AtOnce).Select(s => s.Id);
        await db.SignIns.Where(s => s.UserId == user && s.Id != started.Id && !kept.Contains(s.Id)).ExecuteDeleteAsync(cancel);
        Name(person, started.Id);
        return started.Id;
    }

    /// <summary>Whether this is how the person came in, as far as claims made at the sign-in say.</summary>
    public static bool Came(ClaimsPrincipal person, string way) => person.HasClaim(ClaimTypes.AuthenticationMethod, way);

    /// <summary>Says in the claims which sign-in they belong to.</summary>
    public static void Name(ClaimsPrincipal person, Guid signIn) => ((ClaimsIdentity)person.Identity!).AddClaim(new Claim(Claim, signIn.ToString("D")));

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

        if (used)
        {
            await UsedAsync(db, id, seen, cancel);
        }

        return true;
    }

    /// <summary>Notes that a sign-in was used, at most once a minute.</summary>
    internal static async Task UsedAsync(ClubCycleDb db, Guid signIn, Instant seen, CancellationToken cancel)
    {
        if (Now - seen > Precision)
        {
            await db.SignIns.Where(s => s.Id == signIn).ExecuteUpdateAsync(row => row.SetProperty(s => s.SeenAt, Now), cancel);
        }
    }

    /// <summary>Whether the old password need not be told: for an hour after signing in by link, until a password is chosen.</summary>
    public async Task<bool> MayChooseFreelyAsync(ClaimsPrincipal person, CancellationToken cancel)
    {
        if (CurrentCoach.IdOf(person, Claim) is not { } id || CurrentCoach.IdOf(person, ClaimTypes.NameIdentifier) is not { } user)
        {
            return false;
        }

        var since = Now - Duration.FromHours(1);
        await using var db = await contexts.CreateDbContextAsync(cancel);
        return await Living(db, user).AnyAsync(s => s.Id == id && s.ByLink && s.StartedAt > since, cancel);
    }

    /// <summary>Whether a passkey was shown in this sign-in.</summary>
    public async Task<bool> ByPasskeyAsync(ClaimsPrincipal person, CancellationToken cancel)
    {
        var id = CurrentCoach.IdOf(person, Claim);
        await using var db = await contexts.CreateDbContextAsync(cancel);
        return await db.SignIns.AnyAsync(s => s.Id == id && s.ByPasskey, cancel);
    }

    public async Task ShowedPasskeyAsync(ClaimsPrincipal person, bool showed, CancellationToken cancel)
    {
        var id = CurrentCoach.IdOf(person, Claim);
        await using var db = await contexts.CreateDbContextAsync(cancel);
        await db.SignIns.Where(s => s.Id == id).ExecuteUpdateAsync(row => row.SetProperty(s => s.ByPasskey, showed), cancel);
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

    /// <summary>Ends this person's in all other browsers.</summary>
    public async Task EndOthersAsync(ClaimsPrincipal person, CancellationToken cancel)
    {
        var (id, user) = (CurrentCoach.IdOf(person, Claim), CurrentCoach.IdOf(person, ClaimTypes.NameIdentifier));
        await using var db = await contexts.CreateDbContextAsync(cancel);
        await db.SignIns.Where(s => s.UserId == user && s.Id != id).ExecuteDeleteAsync(cancel);
    }

    /// <summary>Ends those of everybody in the club.</summary>
    public async Task EndAllOfClubAsync(Guid club, CancellationToken cancel)
    {
        await using var db = await contexts.CreateDbContextAsync(cancel);
        await db.SignIns.Where(s => db.Users.Any(u => u.Id == s.UserId && u.ClubId == club)).ExecuteDeleteAsync(cancel);
    }

    /// <summary>Those of a person that count.</summary>
    internal IQueryable<SignInRow> Living(ClubCycleDb db, Guid user)
    {
        var (started, seen) = (Now - Duration.FromHours(times.Value.LongestHours), Now - Duration.FromMinutes(times.Value.IdleMinutes));
        return db.SignIns.Where(s => s.UserId == user && s.StartedAt > started && s.SeenAt > seen);
    }
}
