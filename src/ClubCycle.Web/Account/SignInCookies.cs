using System.Security.Claims;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Identity;

namespace ClubCycle.Web.Account;

/// <summary>Ties the cookie to its row: made at sign-in, asked for at each request, gone at sign-out.</summary>
internal static class SignInCookies
{
    public static async Task StartAsync(CookieSigningInContext context)
    {
        // Whoever signs in anew leaves the sign-in before.
        var signIns = Of(context.HttpContext);
        await signIns.EndAsync(context.HttpContext.User, context.HttpContext.RequestAborted);
        await signIns.StartAsync(context.Principal!, BrowserName.Of(context.Request.Headers.UserAgent.ToString()), context.HttpContext.RequestAborted);
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

    public static Task EndAsync(CookieSigningOutContext context) => Of(context.HttpContext).EndAsync(context.HttpContext.User, context.HttpContext.RequestAborted);

    /// <summary>Claims are made anew each minute; which sign-in they belong to stays.</summary>
    public static Task KeepAsync(SecurityStampRefreshingPrincipalContext context)
    {
        if (context.CurrentPrincipal?.FindFirst(SignIns.Claim) is { } claim)
        {
            ((ClaimsIdentity)context.NewPrincipal!.Identity!).AddClaim(new Claim(claim.Type, claim.Value));
        }

        return Task.CompletedTask;
    }

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
