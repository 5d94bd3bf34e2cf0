using System.Text.Json;
using ClubCycle.Web.Hosting;
using ClubCycle.Web.Tests.Commands;
using Microsoft.Extensions.Logging;

namespace ClubCycle.Web.Tests.Hosting;

public sealed class JsonConsoleTests(TestApp app) : IClassFixture<TestApp>
{
    [Fact]
    public void A_line_is_one_object_without_a_secret()
    {
        var line = JsonConsole.LineOf("2026-03-03T12:00:00Z", LogLevel.Error, "Some.Category", "failed at /p/secret\nand on", new InvalidOperationException("at /calendar/secret.ics"), "abc");

        using var json = JsonDocument.Parse(line);
        Assert.Equal("failed at /p/…\nand on", json.RootElement.GetProperty("message").GetString());
        Assert.DoesNotContain("secret", line, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', line);
    }

    [Fact]
    public async Task A_format_that_is_not_known_stops_the_start_with_one_message()
    {
        var run = await CommandRun.OfAsync(["serve", "--Logging:Format=xml", "--urls=http://127.0.0.1:0"], environment: new Dictionary<string, string> { ["ConnectionStrings__ClubCycle"] = app.ConnectionString });

        Assert.Equal(1, run.ExitCode);
        Assert.Single(run.Errors.TrimEnd().Split('\n'));
    }
}
