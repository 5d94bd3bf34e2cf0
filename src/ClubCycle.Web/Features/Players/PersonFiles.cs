using System.Net.Mime;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using ClubCycle.Calendars.Sheets;
using ClubCycle.Data.Players;
using ClubCycle.Web.Account;
using ClubCycle.Web.Hosting;
using Microsoft.AspNetCore.Mvc;
using NodaTime;
using NodaTime.Serialization.SystemTextJson;

namespace ClubCycle.Web.Features.Players;

/// <summary>All that is stored about one player as a file, for the player or a guardian who asks for it.</summary>
internal static class PersonFiles
{
    private static readonly JsonSerializerOptions Json =
        new JsonSerializerOptions(JsonSerializerDefaults.Web) { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }.ConfigureForNodaTime(DateTimeZoneProviders.Tzdb);

    public static void MapPersonFiles(this IEndpointRouteBuilder app)
    {
        // A POST, because it is noted with its reason.
        app.MapPost("/squads/{squad:guid}/players/{player:guid}/data.{form:regex(^(json|csv)$)}", SendAsync).RequireAuthorization(Policies.Coach).CountAsCostly().ExcludeFromDescription();
    }

    /// <summary>One row a value: a table of everything would be mostly holes.</summary>
    public static string Csv(PersonFile file) => CsvText.Of(
        JsonSerializer.SerializeToElement(file, Json).EnumerateObject().SelectMany(property => property.Value.ValueKind == JsonValueKind.Array
            ? property.Value.EnumerateArray().SelectMany((item, i) => item.EnumerateObject().Select(field => Row(property.Name, $"{i + 1}", field)))
            : [Row("player", "", property)]).Prepend(["part", "number", "field", "value"]));

    private static string[] Row(string part, string number, JsonProperty field) =>
        [part, number, field.Name, field.Value.ValueKind == JsonValueKind.Null ? "" : field.Value.ToString()];

    /// <summary>Says when, not whose: it lies in download folders.</summary>
    private static string FileNameOf(PersonFile file) => $"player-exported-{NodaTime.Text.InstantPattern.CreateWithInvariantCulture("uuuuMMdd'T'HHmmss'Z'").Format(file.ExportedAt)}";

    private static async Task<IResult> SendAsync(Guid squad, Guid player, string form, [FromForm] string? reason, PlayerActions players, CancellationToken cancel) =>
        (await players.ExportAsync(squad, player, reason ?? "", cancel)).TryGet(out var file, out var problems)
            ? form == "json"
                ? TypedResults.File(JsonSerializer.SerializeToUtf8Bytes(file, Json), MediaTypeNames.Application.Json, $"{FileNameOf(file)}.json")
                : TypedResults.File(Encoding.UTF8.GetBytes(Csv(file)), "text/csv; charset=utf-8", $"{FileNameOf(file)}.csv")
            : problems[0].Code.StartsWith("export.", StringComparison.Ordinal) ? TypedResults.BadRequest(SayPlan(problems[0].Message)) : TypedResults.NotFound();
}
