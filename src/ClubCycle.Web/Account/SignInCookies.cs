using System.Security.Claims;
using ClubCycle.Data.Audit;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Identity;

namespace ClubCycle.Web.Account;

/// <summary>Ties the cookie to its row: made at sign-in, asked for at each request, gone at sign-out.</summary>
internal static class SignInCookies
{
    public static async Task StartAsync(CookieSigningInContext context)
    {
        var (person, cancel) = (context.Principal!, context.HttpContext.RequestAborted);
        context.HttpContext.RequestServices.GetRequiredService<KnownBrowser>().Remember(context.HttpContext, person);

        // Claims made anew for the same sign-in, as after a choice of language: its times go on.
        if (context.Properties.Items.TryGetValue(SignIns.Claim, out var kept))
        {
            SignIns.Name(person, Guid.Parse(kept!));
            return;
        }

        // Whoever signs in anew leaves the sign-in before.
        var signIns = Of(context.HttpContext);
        await signIns.EndAsync(context.HttpContext.User, cancel);
        var started = await signIns.StartAsync(person, BrowserName.Of(context.Request.Headers.UserAgent.ToString()), cancel);
        context.Properties.Items[SignIns.Claim] = started.ToString("D");
        await NoteAsync(context.HttpContext, person, SignIns.Came(person, CoachSignIn.Link) ? "account.signed-in-by-link" : SignIns.Came(person, CoachSignIn.Passkey) ? "account.signed-in-by-passkey" : "account.signed-in");
    }

    public static async Task CheckAsync(CookieValidatePrincipalContext context)
    {
        if (context.Principal is not { } person || !await Of(context.HttpContext).LivesAsync(person, used: true, context.HttpContext.RequestAborted))
        {
            context.RejectPrincipal();
            return;
        }

        await SecurityStampValidator.ValidatePrincipalAsync(context);
    }

    public static async Task EndAsync(CookieSigningOutContext context)
    {
        await Of(context.HttpContext).EndAsync(context.HttpContext.User, context.HttpContext.RequestAborted);
        await NoteAsync(context.HttpContext, context.HttpContext.User, "account.signed-out");
    }

    /// <summary>Claims are made anew each minute; which sign-in they belong to stays.</summary>
    public static Task KeepAsync(SecurityStampRefreshingPrincipalContext context)
    {
        if (context.CurrentPrincipal is { } before && CurrentCoach.IdOf(before, SignIns.Claim) is { } signIn)
        {
            SignIns.Name(context.NewPrincipal!, signIn);
        }

        return Task.CompletedTask;
    }

    private static Task NoteAsync(HttpContext http, ClaimsPrincipal person, string what) =>
        CurrentCoach.IdOf(person, CoachClaims.Club) is { } club && CurrentCoach.IdOf(person, ClaimTypes.NameIdentifier) is { } user
            ? http.RequestServices.GetRequiredService<AccountTrail>().NoteAsync(club, user, what, cancel: http.RequestAborted)
            : Task.CompletedTask;

    private static SignIns Of(HttpContext http) => http.RequestServices.GetRequiredService<SignIns>();

    /// <summary>Over https the name has the prefix by which browsers insist on Secure and on this host alone.</summary>
    internal sealed class Names : ICookieManager
    {
        public const string Prefix = "__Host-";

        private readonly ChunkingCookieManager _cookies = new();

        public string? GetRequestCookie(HttpContext context, string key) => _cookies.GetRequestCookie(context, Name(context, key));

        public void AppendResponseCookie(HttpContext context, string key, string? value, CookieOptions options) =>
            _cookies.AppendResponseCookie(context, Name(context, key), value, options);

        public void DeleteCookie(HttpContext context, string key, CookieOptions options) => _cookies.DeleteCookie(context, Name(context, key), options);

        private static string Name(HttpContext context, string key) => context.Request.IsHttps ? Prefix + key : key;
    }
}
