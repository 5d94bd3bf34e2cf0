using System.Collections.Concurrent;
using System.Globalization;
using ClubCycle.Data;
using ClubCycle.Web.Account;
using ClubCycle.Web.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Logging.Console;

namespace ClubCycle.Web.Tests.Hosting;

/// <summary>ASVS 16.2.1, 16.2.2, 16.3.2 and 16.3.3: what the log tells of requests, refusals and limits.</summary>
public sealed class LogLineTests(LogLineTests.Heard heard) : IClassFixture<LogLineTests.Heard>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_time_of_a_line_has_a_date_and_is_in_UTC(bool json)
    {
        ConsoleFormatter console = json ? new JsonConsole() : new QuietConsole();
        using StringWriter written = new();
        var before = TimeProvider.System.GetUtcNow().UtcDateTime;

        console.Write(new LogEntry<string>(LogLevel.Warning, "Some.Category", default, "text", null, (state, _) => state), null, written);

        var word = json ? written.ToString().Split('"')[3] : written.ToString().Split(' ')[0];
        Assert.EndsWith("Z", word, StringComparison.Ordinal);
        Assert.InRange(DateTimeOffset.Parse(word, CultureInfo.InvariantCulture).UtcDateTime, before.AddSeconds(-1), before.AddMinutes(1));
    }

    [Fact]
    public void A_line_says_whose_request_it_was()
    {
        Assert.StartsWith("2026-03-03T12:00:00Z warning Category request r1 person p1: text", QuietConsole.LineOf("2026-03-03T12:00:00Z", LogLevel.Warning, "Some.Category", "text", null, "r1", "p1"), StringComparison.Ordinal);
        Assert.Contains("\"request\":\"r1\",\"person\":\"p1\"", JsonConsole.LineOf("t", LogLevel.Warning, "Some.Category", "text", null, null, "r1", "p1"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Another_squads_coach_is_refused_in_the_log_and_once_a_minute_in_the_audit_trail()
    {
        var club = await heard.App.NewClubAsync();

        for (var i = 0; i < 2; i++)
        {
            await heard.App.AsAsync(club.Coach, s => s.GetRequiredService<CurrentCoach>().ForSquadAsync(club.OtherSquad, Cancel));
        }

        Assert.Equal(2, heard.Lines.Count(line => line.Text == $"Person {club.Coach} was refused: squad.not-found."));
        Assert.Equal([(club.Coach, "squad.not-found")], await RefusalsAsync(club));
    }

    [Fact]
    public async Task A_forbidden_address_is_told_with_whose_request_it_was()
    {
        var club = await heard.App.NewClubAsync();
        var browser = await club.SignedInAsync(club.Coach);

        var answer = await browser.GetAsync("/welfare", Cancel);

        Assert.Equal("/account/denied", answer.Headers.Location?.AbsolutePath ?? answer.Headers.Location?.OriginalString.Split('?')[0]);
        var line = Assert.Single(heard.Lines, l => l.Text == "/welfare is not open to who asked for it." && l.Person == club.Coach.ToString());
        Assert.NotEmpty(line.Request!);
        Assert.Equal([(club.Coach, "address")], await RefusalsAsync(club));
    }

    [Fact]
    public async Task Limits_that_are_reached_are_told_once_a_minute()
    {
        await using Heard heard = new();
        heard.App.Settings["SignIn:TriesPerMinute"] = "2";
        heard.App.Settings["Feeds:MissesPerMinute"] = "2";
        await heard.InitializeAsync();
        await heard.App.NewClubAsync();
        var browser = heard.App.Browser();
        for (var i = 0; i < 4; i++)
        {
            await browser.GetAsync("/calendar/x.ics", Cancel);
            await TestApp.SendFormAsync(browser, "/account/sign-in", "/account/sign-in", ("email", "nobody@example.org"), ("password", "wrong"));
        }

        Assert.Single(heard.Lines, line => line.Text.Contains("calendar addresses that lead nowhere", StringComparison.Ordinal));
        Assert.Single(heard.Lines, line => line.Text.Contains("tried to sign in more often", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_mark_outlives_its_request_without_looking_into_the_next_one()
    {
        DefaultHttpContext http = new() { RequestServices = heard.App.Services, TraceIdentifier = "first", User = new([new([new("http://schemas.xmlsoap.org/ws/2005/05/identity/claims/nameidentifier", "p1")])]) };
        RequestMark? mark = null;
        await RequestMark.AddAsync(http, _ =>
        {
            mark = heard.Marked();
            return Task.CompletedTask;
        });

        http.User = new();

        Assert.Equal(("first", "p1"), (mark!.Request, mark.Person));
    }

    private Task<List<(Guid, string)>> RefusalsAsync(TestClub club) => heard.App.InClubAsync(club.Id, async s =>
    {
        await using var db = await s.GetRequiredService<IClubDbFactory>().OpenAsync(Cancel);
        return (await db.Audit.Where(a => a.What == "access.refused").ToListAsync(Cancel)).ConvertAll(a => (a.By!.Value, a.Details));
    });

    /// <summary>The application with low limits and an ear at its log.</summary>
    public sealed class Heard : IAsyncLifetime, ILoggerProvider, ISupportExternalScope
    {
        private IExternalScopeProvider _scopes = new LoggerExternalScopeProvider();

        internal TestApp App { get; } = new();

        internal ConcurrentQueue<(string Text, string? Request, string? Person)> Lines { get; } = [];

        internal RequestMark? Marked() => RequestMark.Of(_scopes);

        public async ValueTask InitializeAsync()
        {
            App.Log = this;
            await App.InitializeAsync();
        }

        public ValueTask DisposeAsync() => App.DisposeAsync();

        public ILogger CreateLogger(string categoryName) => new Ear(this);

        public void SetScopeProvider(IExternalScopeProvider scopeProvider) => _scopes = scopeProvider;

        void IDisposable.Dispose()
        {
        }

        private sealed class Ear(Heard heard) : ILogger
        {
            public IDisposable? BeginScope<TState>(TState state)
                where TState : notnull => null;

            public bool IsEnabled(LogLevel logLevel) => true;

            public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
            {
                var mark = heard.Marked();
                heard.Lines.Enqueue((formatter(state, exception), mark?.Request, mark?.Person));
            }
        }
    }
}
