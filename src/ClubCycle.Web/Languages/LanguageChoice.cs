using System.Globalization;
using ClubCycle.Data.Accounts;
using ClubCycle.Planning.Languages;
using ClubCycle.Web.Account;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Localization;
using Microsoft.AspNetCore.Mvc;

namespace ClubCycle.Web.Languages;

/// <summary>
/// The language of a request: what the person chose, on whatever device they sign in; else what was chosen on this device; else what the browser asks for.
/// Live pages keep the language of the request that began them.
/// </summary>
internal static class LanguageChoice
{
    public const string Path = "/account/language";
    public const string Claim = "language";
    private const string Cookie = "clubcycle-language";

    public static void AddLanguages(this IServiceCollection services) => services.AddRequestLocalization(options =>
    {
        List<CultureInfo> cultures = [.. LanguageNames.All.Select(l => CultureInfo.GetCultureInfo(l.Code()))];
        (options.SupportedCultures, options.SupportedUICultures) = (cultures, cultures);
        options.DefaultRequestCulture = new RequestCulture(cultures[0]);
        options.RequestCultureProviders = [new CustomRequestCultureProvider(ChosenAsync), new AcceptLanguageHeaderRequestCultureProvider()];
    });

    public static void MapLanguages(this IEndpointRouteBuilder app) => app.MapPost(Path, ChooseAsync).AllowAnonymous();

    private static Task<ProviderCultureResult?> ChosenAsync(HttpContext http) =>
        Task.FromResult((LanguageNames.Find(http.User.FindFirst(Claim)?.Value) ?? LanguageNames.Find(http.Request.Cookies[Cookie])) is { } language ? new ProviderCultureResult(language.Code()) : null);

    private static async Task<IResult> ChooseAsync([FromForm] string language, [FromForm] string? returnUrl, HttpContext http, SignInManager<ClubUser> signIn)
    {
        if (LanguageNames.Find(language) is not { } chosen)
        {
            return TypedResults.BadRequest();
        }

        // A year, like the choice of light or dark.
        http.Response.Cookies.Append(Cookie, chosen.Code(), new CookieOptions { MaxAge = TimeSpan.FromDays(365), HttpOnly = true, SameSite = SameSiteMode.Lax, Secure = http.Request.IsHttps, IsEssential = true });
        if (await signIn.UserManager.GetUserAsync(http.User) is { } user)
        {
            user.Language = chosen.Code();
            await signIn.UserManager.UpdateAsync(user);
            await signIn.RefreshSignInAsync(user);
        }

        return TypedResults.LocalRedirect(LocalAddress.Of(returnUrl));
    }
}
