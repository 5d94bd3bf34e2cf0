using System.Globalization;
using ClubCycle.Planning.Languages;

namespace ClubCycle.Web.Features.Player;

/// <summary>What a home screen shows of the players' pages. It holds no link's address: makers of browsers and phones read it.</summary>
internal static class PlayerManifest
{
    private const string Start = PlayerEndpoints.Path + "/";

    /// <param name="language">Of the page that names the manifest.</param>
    public static InLanguage Answer([Microsoft.AspNetCore.Mvc.FromQuery(Name = "in")] string? language) => new(LanguageNames.Find(language) ?? Language.English, new Written());

    private sealed class Written : IResult
    {
        public Task ExecuteAsync(HttpContext httpContext) => TypedResults.Json(
            new
            {
                id = Start,
                name = Say("My training week"),
                short_name = Say("Training"),
                description = Say("Today, this week and the next match."),
                lang = ReadersLanguage.Code(),
                start_url = Start,
                scope = Start,
                display = "standalone",
                background_color = "#FBFAF6",
                theme_color = "#0B5F66",
                icons = new[] { Icon(192, "any"), Icon(512, "any"), Icon(512, "maskable") },
            },
            contentType: "application/manifest+json").ExecuteAsync(httpContext);

        private static object Icon(int side, string purpose) =>
            new { src = string.Create(CultureInfo.InvariantCulture, $"{Start}icon-{side}.png"), sizes = string.Create(CultureInfo.InvariantCulture, $"{side}x{side}"), type = "image/png", purpose };
    }
}
