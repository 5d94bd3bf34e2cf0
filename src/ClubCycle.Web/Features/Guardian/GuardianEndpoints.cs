using ClubCycle.Data.Players;
using ClubCycle.Web.Features.Player;
using Microsoft.AspNetCore.Http.HttpResults;

namespace ClubCycle.Web.Features.Guardian;

/// <summary>The page behind a guardian's secret address: no account, no live connection, no script.</summary>
internal static class GuardianEndpoints
{
    public const string Path = "/g";

    public static void MapGuardianPage(this IEndpointRouteBuilder app)
    {
        app.MapGet(Path + "/{token}", ShowAsync).AllowAnonymous().ExcludeFromDescription();

        // The secret is in the address and no cookie counts here, so no other site can send this form.
        app.MapPost(Path + "/{token}", AnswerAsync).AllowAnonymous().DisableAntiforgery().ExcludeFromDescription();
    }

    private static async Task<IResult> ShowAsync(string token, HttpContext http, GuardianStore guardians, CancellationToken cancel)
    {
        http.Response.Headers["X-Robots-Tag"] = "noindex, nofollow";
        return await guardians.FindAsync(token, cancel) is { } question
            ? new InLanguage(question.Language, new RazorComponentResult<GuardianPage>(new { Question = question, Address = $"{http.Request.PathBase}{Path}/{token}" }))
            : Gone();
    }

    private static async Task<IResult> AnswerAsync(string token, HttpContext http, GuardianStore guardians, CancellationToken cancel)
    {
        if (await guardians.FindAsync(token, cancel) is not { } question)
        {
            return Gone();
        }

        bool? agrees = (await PlayerEndpoints.FormAsync(http.Request, cancel))?[GuardianPage.Answer].ToString() switch { GuardianPage.Yes => true, GuardianPage.No => false, _ => null };
        if (agrees is not { } answer)
        {
            return TypedResults.BadRequest();
        }

        await guardians.AnswerAsync(question, answer, cancel);
        http.Response.Headers.Location = $"{http.Request.PathBase}{Path}/{token}";
        return TypedResults.StatusCode(StatusCodes.Status303SeeOther);
    }

    private static RazorComponentResult<LinkGonePage> Gone() => new() { StatusCode = StatusCodes.Status404NotFound };
}
