using System.Diagnostics;
using System.Net;
using ClubCycle.Data;
using ClubCycle.Data.Clubs;
using ClubCycle.Data.Embedded;
using ClubCycle.Data.Links;
using ClubCycle.Data.Players;
using ClubCycle.Data.Squads;
using ClubCycle.Planning.Squads;
using ClubCycle.TestKit;
using ClubCycle.Web.Tests.Commands;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace ClubCycle.Web.Tests.NothingLost;

/// <summary>A node whose database is stopped and started again behind its back.</summary>
public sealed class DatabaseAwayTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task While_the_database_is_away_each_answer_says_so_and_when_it_is_back_the_node_goes_on_by_itself()
    {
        using var folder = TemporaryFolder.ReachableByAll();
        var settings = new PrivatePostgresSettings { DataFolder = folder.Path, Port = StartedProgram.FreePort(), Durable = false };
        var (connection, token) = ("", "");
        try
        {
            await using var first = await PrivatePostgres.StartAsync(settings, Cancel);
            connection = first.ConnectionString;
            await DataSetup.MigrateAsync(first.OwnerConnectionString, Cancel);
            token = await LinkAsync(connection);
        }
        catch (DatabaseUnavailableException missing) when (missing.Problem.Code is "database.no-programs" or "database.programs-too-old" && Environment.GetEnvironmentVariable("CI") is not "true")
        {
            Assert.Skip(missing.Message);
        }

        await using var server = new Held(await PrivatePostgres.StartAsync(settings, Cancel));
        await using var node = await RunningNode.StartAsync(connection, new Dictionary<string, string> { ["Feeds__CacheMegabytes"] = "0" });
        using var http = new HttpClient { BaseAddress = node.Address };
        Assert.Equal(HttpStatusCode.OK, await StatusAsync(http, $"/calendar/{token}.ics"));

        await server.StopAsync();
        using (var feed = await http.GetAsync($"/calendar/{token}.ics", Cancel))
        {
            Assert.Equal((HttpStatusCode.ServiceUnavailable, "120"), (feed.StatusCode, feed.Headers.RetryAfter?.ToString()));
        }

        using (var page = await http.GetAsync($"/p/{token}", Cancel))
        {
            Assert.Equal(HttpStatusCode.InternalServerError, page.StatusCode);
            Assert.Contains("Something went wrong on our side", await page.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        }

        Assert.Equal(HttpStatusCode.OK, await StatusAsync(http, "/health/live"));

        await server.StartAsync(settings);
        for (var watch = Stopwatch.StartNew(); await StatusAsync(http, $"/calendar/{token}.ics") != HttpStatusCode.OK || await StatusAsync(http, $"/p/{token}") != HttpStatusCode.OK; await Task.Delay(100, Cancel))
        {
            Assert.True(watch.Elapsed < TimeSpan.FromSeconds(30), "The node did not find the database again.");
        }
    }

    private static async Task<HttpStatusCode> StatusAsync(HttpClient http, string address)
    {
        using var answer = await http.GetAsync(address, Cancel);
        return answer.StatusCode;
    }

    /// <summary>A club with one player's link.</summary>
    private static async Task<string> LinkAsync(string connection)
    {
        await using var services = new ServiceCollection().AddSingleton<IClock>(new TestClock(Instant.FromUtc(2026, 3, 3, 12, 0))).AddClubCycleData(connection).BuildServiceProvider();
        using var scope = services.CreateScope();
        var stores = scope.ServiceProvider;
        stores.GetRequiredService<CurrentClub>().Use((await stores.GetRequiredService<ClubStore>().CreateAsync("Away club", "Europe/Lisbon", IsoDayOfWeek.Monday, Cancel)).OrThrow());
        var by = NewId.Create();
        var squad = (await stores.GetRequiredService<SquadStore>().AddAsync(
            new Squad(Guid.Empty, "Women 1", AgeGroup.Senior, TrainingAge.Some, [], IsoDayOfWeek.Saturday, new LocalTime(14, 0), []), null, by, Cancel)).OrThrow();
        var player = (await stores.GetRequiredService<PlayerStore>().AddAsync(squad, ["Ana P."], by, Cancel)).OrThrow()[0];
        return (await stores.GetRequiredService<LinkStore>().CreateAsync(squad, player, "phone", by, Cancel)).OrThrow().Token;
    }

    private sealed class Held(PrivatePostgres first) : IAsyncDisposable
    {
        private PrivatePostgres _server = first;

        public Task StopAsync() => _server.DisposeAsync().AsTask();

        public async Task StartAsync(PrivatePostgresSettings settings) => _server = await PrivatePostgres.StartAsync(settings, Cancel);

        public ValueTask DisposeAsync() => _server.DisposeAsync();
    }
}
