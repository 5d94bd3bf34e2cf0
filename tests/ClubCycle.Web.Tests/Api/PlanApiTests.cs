using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using ClubCycle.Web.Api;
using ClubCycle.Web.Tests.Commands;

namespace ClubCycle.Web.Tests.Api;

public sealed class PlanApiTests(TestApp app) : IClassFixture<TestApp>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_coach_gets_the_same_bytes_as_from_the_command()
    {
        var club = await app.NewClubAsync();
        var coach = await club.SignedInAsync(club.Coach);

        var answer = await coach.PostAsync("/api/v1/plan", Json(A.PlanRequest()), Cancel);

        var run = await CommandRun.OfAsync(["plan", "-"], input: A.PlanRequest());
        Assert.Equal((HttpStatusCode.OK, "application/json"), (answer.StatusCode, answer.Content.Headers.ContentType!.MediaType));
        Assert.Equal(run.Output, await answer.Content.ReadAsStringAsync(Cancel));
    }

    [Fact]
    public async Task A_stranger_gets_401_and_no_page()
    {
        var answer = await app.Browser().PostAsync("/api/v1/plan", Json(A.PlanRequest()), Cancel);

        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
        Assert.Empty(await answer.Content.ReadAsByteArrayAsync(Cancel));
    }

    [Fact]
    public async Task A_request_that_cannot_be_planned_gets_400_and_its_problems()
    {
        var answer = await (await CoachAsync()).PostAsync("/api/v1/plan", Json("""{ "teem": 1 }"""), Cancel);

        using var problems = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(Cancel));
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("request.unknown-property", problems.RootElement.GetProperty("problems").EnumerateArray().Select(p => p.GetProperty("code").GetString()));
    }

    [Fact]
    public async Task More_than_2_MB_gets_413_whether_its_length_is_announced_or_not()
    {
        var coach = await CoachAsync();
        var big = new string(' ', PlanEndpoints.MostBytes + 1);

        var announced = await coach.PostAsync("/api/v1/plan", Json(big), Cancel);
        var chunked = new HttpRequestMessage(HttpMethod.Post, "/api/v1/plan") { Content = new StreamContent(new Unsized(Encoding.UTF8.GetBytes(big))) };
        chunked.Content.Headers.ContentType = new MediaTypeHeaderValue("application/json");

        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, announced.StatusCode);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, (await coach.SendAsync(chunked, Cancel)).StatusCode);
    }

    [Fact]
    public async Task Anything_but_JSON_gets_415()
    {
        var answer = await (await CoachAsync()).PostAsync("/api/v1/plan", new StringContent("a=1", Encoding.UTF8, "application/x-www-form-urlencoded"), Cancel);

        Assert.Equal(HttpStatusCode.UnsupportedMediaType, answer.StatusCode);
    }

    [Fact]
    public async Task The_interface_description_names_the_properties_that_plans_have()
    {
        var coach = await CoachAsync();
        using var description = JsonDocument.Parse(await coach.GetStringAsync("/openapi/v1.json", Cancel));
        using var plan = JsonDocument.Parse(await (await coach.PostAsync("/api/v1/plan", Json(A.PlanRequest()), Cancel)).Content.ReadAsStringAsync(Cancel));
        var schemas = description.RootElement.GetProperty("components").GetProperty("schemas");

        Assert.True(description.RootElement.GetProperty("paths").TryGetProperty("/api/v1/plan", out _));
        AssertDescribed(schemas, "PlanReplyFile", plan.RootElement);
        AssertDescribed(schemas, "WeekPart", plan.RootElement.GetProperty("weeks")[0]);
        foreach (var session in plan.RootElement.GetProperty("sessions").EnumerateArray())
        {
            AssertDescribed(schemas, "SessionPart", session);
        }

        using var request = JsonDocument.Parse(A.PlanRequest());
        AssertDescribed(schemas, "PlanRequestFile", request.RootElement);
        AssertDescribed(schemas, "SquadPart", request.RootElement.GetProperty("squad"));
    }

    private static void AssertDescribed(JsonElement schemas, string schema, JsonElement example) =>
        Assert.Subset(
            schemas.GetProperty(schema).GetProperty("properties").EnumerateObject().Select(p => p.Name).ToHashSet(),
            example.EnumerateObject().Select(p => p.Name).ToHashSet());

    private async Task<HttpClient> CoachAsync()
    {
        var club = await app.NewClubAsync();
        return await club.SignedInAsync(club.Coach);
    }

    private static StringContent Json(string text) => new(text, Encoding.UTF8, "application/json");

    /// <summary>A stream that does not tell its length, so that the client sends it in chunks.</summary>
    private sealed class Unsized(byte[] bytes) : MemoryStream(bytes)
    {
        public override bool CanSeek => false;
    }
}
