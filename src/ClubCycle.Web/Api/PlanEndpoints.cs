using System.Text;
using ClubCycle.Planning;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Web.Account;
using ClubCycle.Web.Hosting;
using Microsoft.AspNetCore.Mvc;

namespace ClubCycle.Web.Api;

/// <summary>The plan command over HTTP, for signed-in coaches.</summary>
internal static class PlanEndpoints
{
    public const int MostBytes = 2 * 1024 * 1024;

    public static void MapPlanApi(this IEndpointRouteBuilder app) =>
        app.MapPost("/api/v1/plan", PlanAsync)
            .RequireAuthorization(Policies.Coach)
            .CountAsCostly()
            .WithMetadata(new RequestSizeLimitAttribute(MostBytes))
            .DisableAntiforgery() // Takes JSON only, which no form of another site can send.
            .WithName("PlanSquad")
            .WithSummary("Plans one squad's year")
            .WithDescription("Takes a plan request and answers with the plan, as the plan command does. Nothing is stored. Unknown properties are refused by name.")
            .Accepts<PlanRequestFile>("application/json")
            .Produces<PlanReplyFile>(StatusCodes.Status200OK, "application/json")
            .Produces<ProblemsFile>(StatusCodes.Status400BadRequest, "application/json")
            .Produces<ProblemsFile>(StatusCodes.Status413PayloadTooLarge, "application/json")
            .Produces<ProblemsFile>(StatusCodes.Status415UnsupportedMediaType, "application/json");

    private static async Task<IResult> PlanAsync(HttpContext http, CancellationToken cancel)
    {
        if (!http.Request.HasJsonContentType())
        {
            return Refuse(StatusCodes.Status415UnsupportedMediaType, "request.not-json", "Send the request as application/json.");
        }

        if (await BodyAsync(http.Request, cancel) is not { } json)
        {
            return Refuse(StatusCodes.Status413PayloadTooLarge, "request.too-large", "A request holds at most 2 MB. Leave out the published plan, or shorten the template.");
        }

        return PlanAnswer.To(json) switch
        {
            Result<PlanAnswer>.Ok(var answer) => Json(StatusCodes.Status200OK, PlanFile.WritePlan(answer.Plan)),
            Result<PlanAnswer>.Failed(var problems) => Json(StatusCodes.Status400BadRequest, PlanFile.WriteProblems(problems)),
            var other => throw new InvalidOperationException($"Unknown result {other.GetType()}"),
        };
    }

    /// <summary>The body as text, or null when it is longer than allowed, however it was announced.</summary>
    private static async Task<string?> BodyAsync(HttpRequest request, CancellationToken cancel)
    {
        if (request.ContentLength > MostBytes)
        {
            return null;
        }

        using var body = new MemoryStream();
        var buffer = new byte[16 * 1024];
        int read;
        while ((read = await request.Body.ReadAsync(buffer, cancel)) > 0)
        {
            if (body.Length + read > MostBytes)
            {
                return null;
            }

            body.Write(buffer, 0, read);
        }

        return Encoding.UTF8.GetString(body.GetBuffer(), 0, (int)body.Length);
    }

    private static IResult Refuse(int status, string code, string message) => Json(status, PlanFile.WriteProblems([new Problem(code, message)]));

    private static IResult Json(int status, string text) => Results.Text(text, "application/json", Encoding.UTF8, status);
}
