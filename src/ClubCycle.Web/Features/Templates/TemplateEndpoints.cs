using System.Net.Mime;
using System.Text;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Web.Account;
using ClubCycle.Web.Hosting;

namespace ClubCycle.Web.Features.Templates;

/// <summary>A template as a file, the same JSON that plan files take.</summary>
internal static class TemplateEndpoints
{
    public static void MapTemplateFiles(this IEndpointRouteBuilder app) =>
        app.MapGet("/templates/{id:guid}/file", SendAsync).RequireAuthorization(Policies.Coach).CountAsCostly().ExcludeFromDescription();

    private static async Task<IResult> SendAsync(Guid id, int? version, TemplateActions templates, CancellationToken cancel) =>
        (await templates.FindAsync(id, version, cancel)).TryGet(out var stored, out _)
            ? TypedResults.File(Encoding.UTF8.GetBytes(TemplateFile.Write(stored.Template)), MediaTypeNames.Application.Json, $"{stored.Template.Name}-{stored.Version}.json")
            : TypedResults.NotFound();
}
