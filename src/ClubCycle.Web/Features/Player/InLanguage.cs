using System.Globalization;
using ClubCycle.Planning.Languages;

namespace ClubCycle.Web.Features.Player;

/// <summary>A page in the language of its link, whatever the browser asks for.</summary>
internal sealed class InLanguage(Language language, IResult page) : IResult
{
    public async Task ExecuteAsync(HttpContext httpContext)
    {
        CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(language.Code());
        await page.ExecuteAsync(httpContext);
    }
}
