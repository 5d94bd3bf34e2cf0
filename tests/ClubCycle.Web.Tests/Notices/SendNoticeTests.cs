using System.Collections.Concurrent;
using ClubCycle.Data;
using ClubCycle.Planning;
using ClubCycle.Web.Features.Notices;
using ClubCycle.Web.Features.Squads;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using MimeKit;
using NodaTime;

namespace ClubCycle.Web.Tests.Notices;

/// <summary>From a published plan through the outbox to a mail server that takes or refuses it.</summary>
public sealed class SendNoticeTests : IAsyncLifetime
{
    private const string Address = "list@lists.example.org";

    private readonly TestApp app = new();
    private readonly MailServer server = new();
    private readonly LogLines log = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        app.Settings["Mail:Host"] = "127.0.0.1";
        app.Settings["Mail:Port"] = server.Port.ToString(System.Globalization.CultureInfo.InvariantCulture);
        app.Settings["Mail:From"] = "club@example.org";
        app.Settings["Mail:Security"] = "None";
        app.Log = log;
        await app.InitializeAsync();
    }

    public async ValueTask DisposeAsync()
    {
        await app.DisposeAsync();
        await server.DisposeAsync();
    }

    [Fact]
    public async Task A_notice_reaches_the_squads_address_once_as_plain_text_that_names_nobody()
    {
        var club = await PublishedAsync();

        (await SendAsync(club)).OrThrow();
        Problems(await SendAsync(club), "notice.sent-already");
        await OutboxEmptyAsync(club);

        var (to, text) = Assert.Single(server.Taken);
        Assert.Equal([Address], to);
        using var mail = await MimeMessage.LoadAsync(new MemoryStream(System.Text.Encoding.UTF8.GetBytes(text)), Cancel);
        Assert.Equal("Blue: what changed in the next seven days", mail.Subject);
        Assert.Equal("<mailto:club@example.org?subject=No%20more%20notices>", mail.Headers[HeaderId.ListUnsubscribe]);
        Assert.Equal("text/plain", mail.Body!.ContentType.MimeType);
        Assert.Contains("New: ", mail.TextBody, StringComparison.Ordinal);
        Assert.DoesNotContain("Ines", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Coach", text, StringComparison.Ordinal);
        Assert.Equal(["notice.queued", "notice.sent"], await AuditAsync(club));
    }

    [Fact]
    public async Task Two_coaches_who_press_at_once_send_one()
    {
        var club = await PublishedAsync();

        var answers = await Task.WhenAll(SendAsync(club), SendAsync(club, club.Coach), SendAsync(club), SendAsync(club, club.Coach));
        await OutboxEmptyAsync(club);

        Assert.Single(answers, a => a is Result<Guid>.Ok);
        Assert.Single(server.Taken);
    }

    [Fact]
    public async Task After_a_refusal_it_is_tried_again_and_the_log_names_no_address()
    {
        server.Refusals = 1;
        var club = await PublishedAsync();

        (await SendAsync(club)).OrThrow();
        await UntilAsync(() => Task.FromResult(server.Refused == 1));
        await UntilAsync(async () =>
        {
            app.Clock.Now += Duration.FromSeconds(1);
            return await Task.FromResult(!server.Taken.IsEmpty);
        });

        await OutboxEmptyAsync(club);
        Assert.Single(server.Taken);
        Assert.Contains(log.Lines, l => l.Contains("The mail server answered 450", StringComparison.Ordinal));
        Assert.DoesNotContain(log.Lines, l => l.Contains(Address, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Nothing_is_sent_before_the_request_has_ended()
    {
        server.Refusals = int.MaxValue;
        var club = await PublishedAsync();

        (await SendAsync(club)).OrThrow();

        Assert.Empty(server.Taken);
        await using var db = await app.InClubAsync(club.Id, s => s.GetRequiredService<IClubDbFactory>().OpenAsync(Cancel));
        Assert.Equal(1, await db.Outbox.CountAsync(o => o.Kind == "send-notice", Cancel));
    }

    [Fact]
    public async Task A_notice_that_nobody_took_for_a_day_is_given_up()
    {
        server.Refusals = int.MaxValue;
        var club = await PublishedAsync();
        (await SendAsync(club)).OrThrow();
        await UntilAsync(() => Task.FromResult(server.Refused > 0));

        app.Clock.Now += Duration.FromHours(25);
        await OutboxEmptyAsync(club);

        Assert.Empty(server.Taken);
        Assert.Equal(["notice.given-up", "notice.queued"], await AuditAsync(club));
    }

    [Fact]
    public async Task An_address_that_was_taken_away_meanwhile_gets_nothing()
    {
        server.Refusals = 1;
        var club = await PublishedAsync();
        (await SendAsync(club)).OrThrow();
        await UntilAsync(() => Task.FromResult(server.Refused == 1));

        await SetAddressAsync(club, "");
        app.Clock.Now += Duration.FromMinutes(5);
        await OutboxEmptyAsync(club);

        Assert.Empty(server.Taken);
        Assert.Equal(["notice.address-gone", "notice.queued"], await AuditAsync(club));
    }

    [Theory]
    [InlineData("list@example.org\r\nBcc: everybody@example.org")]
    [InlineData("list@example.org, everybody@example.org")]
    [InlineData("list\0@example.org")]
    public async Task An_address_that_would_add_a_header_or_a_recipient_is_not_saved(string typed)
    {
        var club = await app.NewClubAsync();

        Problems(await SetAddressAsync(club, typed), "squad.notice-address");
    }

    [Fact]
    public async Task An_old_revision_and_a_squad_without_an_address_cannot_be_sent()
    {
        var club = await PublishedAsync();
        await SetAddressAsync(club, "");
        Problems(await SendAsync(club), "notice.cannot-be-sent");

        await SetAddressAsync(club, Address);
        Assert.Equal(Address, (await NoticeAsync(club)).Address);
        app.Clock.Now += Duration.FromHours(25);
        Assert.Null((await NoticeAsync(club)).Address);
    }

    private async Task<TestClub> PublishedAsync()
    {
        var club = await app.NewClubAsync();
        (await SetAddressAsync(club, Address)).OrThrow();
        await club.PublishAsync();
        return club;
    }

    private Task<Result<int>> SetAddressAsync(TestClub club, string address) => app.AsAsync(club.Head, async services =>
    {
        var squads = services.GetRequiredService<SquadActions>();
        return await squads.SetNoticeAddressAsync((await squads.FindAsync(club.OwnSquad, Cancel)).OrThrow(), address, Cancel);
    });

    private Task<Result<Guid>> SendAsync(TestClub club, Guid? by = null) =>
        app.AsAsync(by ?? club.Head, services => services.GetRequiredService<NoticeActions>().SendAsync(club.OwnSquad, 1, Cancel));

    private Task<Notice> NoticeAsync(TestClub club) =>
        app.AsAsync(club.Head, async services => (await services.GetRequiredService<NoticeActions>().FindAsync(club.OwnSquad, 1, Cancel)).OrThrow());

    private Task<List<string>> AuditAsync(TestClub club) => app.InClubAsync(club.Id, async services =>
    {
        await using var db = await services.GetRequiredService<IClubDbFactory>().OpenAsync(Cancel);
        return await db.Audit.Where(a => a.What.StartsWith("notice.")).Select(a => a.What).Order().ToListAsync(Cancel);
    });

    // Time goes on meanwhile: work that was put back becomes due.
    private Task OutboxEmptyAsync(TestClub club) => UntilAsync(() => app.InClubAsync(club.Id, async services =>
    {
        app.Clock.Now += Duration.FromSeconds(1);
        await using var db = await services.GetRequiredService<IClubDbFactory>().OpenAsync(Cancel);
        return !await db.Outbox.AnyAsync(Cancel);
    }));

    private static async Task UntilAsync(Func<Task<bool>> happened)
    {
        for (var i = 0; !await happened(); i++)
        {
            Assert.True(i < 300, "It did not happen within half a minute.");
            await Task.Delay(100, Cancel);
        }
    }

    private static void Problems<T>(Result<T> result, string code) => Assert.Equal(code, Assert.IsType<Result<T>.Failed>(result).First.Code);

    private sealed class LogLines : ILoggerProvider, ILogger
    {
        public ConcurrentQueue<string> Lines { get; } = [];

        public ILogger CreateLogger(string categoryName) => this;

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
            Lines.Enqueue($"{formatter(state, exception)} {exception}");

        public void Dispose()
        {
        }
    }
}
