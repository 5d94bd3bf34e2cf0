using System.Security.Claims;
using System.Security.Cryptography;
using ClubCycle.Data.Accounts;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace ClubCycle.Web.Account;

/// <summary>
/// A browser that somebody signed in from keeps a sealed note of it, so that the wrong passwords of strangers neither lock this person out nor make them wait. It opens nothing by itself,
/// and ends with the password it was given for. After OWASP's device cookies (Slow Down Online Guessing Attacks with Device Cookies).
/// </summary>
internal sealed class KnownBrowser(IDataProtectionProvider protection, IOptions<IdentityOptions> identity)
{
    public const string Cookie = "ClubCycle.Known";

    public static readonly TimeSpan Lifetime = TimeSpan.FromDays(180);

    private readonly ITimeLimitedDataProtector _seal = protection.CreateProtector(Cookie).ToTimeLimitedDataProtector();
    private readonly SignInCookies.Names _cookies = new();

    /// <summary>Until the next person signs in here.</summary>
    public void Remember(HttpContext http, ClaimsPrincipal person)
    {
        var claims = identity.Value.ClaimsIdentity;
        var note = Note(person.FindFirst(claims.UserIdClaimType)?.Value, person.FindFirst(claims.SecurityStampClaimType)?.Value);
        _cookies.AppendResponseCookie(
            http, Cookie, _seal.Protect(note, Lifetime), new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Lax, Secure = http.Request.IsHttps, Path = "/", MaxAge = Lifetime, IsEssential = true });
    }

    public bool Knows(HttpContext http, ClubUser user)
    {
        try
        {
            return _cookies.GetRequestCookie(http, Cookie) is { } sealedNote && _seal.Unprotect(sealedNote) == Note(user.Id.ToString(), user.SecurityStamp);
        }
        catch (CryptographicException)
        {
            // Forged, too old, or sealed with a key that is gone.
            return false;
        }
    }

    /// <summary>A locked account still takes one try from a browser that it knows; when that is wrong, the browser is a stranger's.</summary>
    public async Task<SignInResult> TryAsync(HttpContext http, ClubUser user, UserManager<ClubUser> users, Func<Task<SignInResult>> check)
    {
        var opens = await users.IsLockedOutAsync(user) && Knows(http, user);
        if (opens)
        {
            await users.SetLockoutEndDateAsync(user, null);
        }

        var result = await check();
        if (opens && result == SignInResult.Failed)
        {
            _cookies.DeleteCookie(http, Cookie, new CookieOptions { Secure = http.Request.IsHttps, Path = "/" });
        }

        return result;
    }

    private static string Note(string? user, string? stamp) => $"{user} {stamp}";
}
