using System.Globalization;
using static ClubCycle.Web.Tests.Feeds.Wire;

namespace ClubCycle.Web.Tests.Feeds;

/// <summary>Requests as calendars, and others, may send them. One club's feed, over a real connection.</summary>
public sealed class FeedWireTests(FeedWireTests.Published feed) : IClassFixture<FeedWireTests.Published>
{
    private const string NoSuch = "AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA";

    private string Path => $"/calendar/{feed.Token}.ics";

    [Theory]
    [InlineData("POST")]
    [InlineData("PUT")]
    [InlineData("DELETE")]
    [InlineData("OPTIONS")]
    [InlineData("TRACE")]
    [InlineData("PROPFIND")]
    public async Task Another_method_is_told_which_are_allowed(string method)
    {
        var answer = await AskAsync(feed.App, method, Path, "Content-Length: 0");

        Assert.Equal((405, "GET, HEAD", ""), (Status(answer), Header(answer, "Allow"), Body(answer)));
    }

    [Fact]
    public async Task HEAD_tells_what_GET_tells_without_the_body()
    {
        var get = await GetAsync(feed.App, Path);
        var head = await AskAsync(feed.App, "HEAD", Path);

        Assert.Equal(WithoutDate(get.Split("\r\n\r\n")[0]), WithoutDate(head.Split("\r\n\r\n")[0]));
        Assert.Equal("", Body(head));
        Assert.Equal(Header(head, "Content-Length"), Body(get).Length.ToString(CultureInfo.InvariantCulture));

        static string WithoutDate(string headers) => string.Join('\n', headers.Split("\r\n").Where(h => !h.StartsWith("Date:", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("bytes=0-9")]
    [InlineData("bytes=-1")]
    [InlineData("bytes=9999999-")]
    [InlineData("lines=1-2")]
    public async Task A_range_is_passed_over_and_the_whole_sent(string range)
    {
        var answer = await GetAsync(feed.App, Path, $"Range: {range}");

        Assert.Equal((200, null), (Status(answer), Header(answer, "Content-Range")));
        Assert.EndsWith("END:VCALENDAR\r\n", Body(answer), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/calendar")]
    [InlineData("/calendar/")]
    [InlineData("/calendar/.ics")]
    [InlineData("/calendar/x.ics")]
    [InlineData("/calendar/{no}.ics")]
    [InlineData("/calendar/{token}")]
    [InlineData("/calendar/{token}.ics/")]
    [InlineData("/calendar/{token}.ics.")]
    [InlineData("/calendar/{token}.ics/x")]
    [InlineData("/calendar/{token}.ics.ics")]
    [InlineData("/calendar/{token}.ICS")]
    [InlineData("/calendar/{token}.ics%20")]
    [InlineData("/calendar/{token}%2eics%2f")]
    [InlineData("/calendar/%2f{token}.ics")]
    [InlineData("/calendar/..%2f{token}.ics")]
    [InlineData("/calendar//{token}.ics")]
    [InlineData("/calendar/{token}%252eics")]
    [InlineData("/calendar/%2561{token}.ics")]
    [InlineData("/calendar/{token}%0A.ics")]
    [InlineData("/calendar/%C3%A9{token}.ics")]
    [InlineData("/calendar/%FF%FE{token}.ics")]
    [InlineData("/calendar/{upper}.ics")]
    [InlineData("/calendar/{lower}.ics")]
    [InlineData("/CALENDAR/{no}.ics")]
    [InlineData("/calendar/{long}")]
    public async Task An_address_that_leads_nowhere_always_looks_the_same(string address)
    {
        var answer = await GetAsync(feed.App, address
            .Replace("{token}", feed.Token, StringComparison.Ordinal).Replace("{no}", NoSuch, StringComparison.Ordinal)
            .Replace("{upper}", feed.Token.ToUpperInvariant(), StringComparison.Ordinal).Replace("{lower}", feed.Token.ToLowerInvariant(), StringComparison.Ordinal)
            .Replace("{long}", new string('a', 8_000), StringComparison.Ordinal));

        Assert.Equal(Undated(await GetAsync(feed.App, $"/calendar/{NoSuch}.ics")), Undated(answer));
        Assert.Equal((404, ""), (Status(answer), Body(answer)));

        static string Undated(string answer) => string.Join('\n', answer.Split("\r\n").Where(line => !line.StartsWith("Date:", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("/Calendar/{token}.ics")]
    [InlineData("/calendar/{token}%2eics")]
    [InlineData("/calendar/./{token}.ics")]
    [InlineData("/x/../calendar/{token}.ics")]
    [InlineData("/calendar/{token}.ics?")]
    [InlineData("/calendar/{token}.ics?day=2026-01-01&x=%00")]
    public async Task Other_spellings_of_the_same_address_and_questions_behind_it_get_the_feed(string address) =>
        Assert.Equal(200, Status(await GetAsync(feed.App, address.Replace("{token}", feed.Token, StringComparison.Ordinal))));

    [Theory]
    [InlineData("/calendar/%00.ics", 400)]
    [InlineData("/calendar/a\u00e9.ics", 400)]
    [InlineData("/calendar/{longer}", 414)]
    public async Task What_is_no_address_at_all_is_refused_before_anything_is_looked_up(string address, int status) =>
        Assert.Equal(status, Status(await GetAsync(feed.App, address.Replace("{longer}", new string('a', 9_000), StringComparison.Ordinal))));

    [Theory]
    [InlineData("*", 304)]
    [InlineData("{etag}", 304)]
    [InlineData("W/{etag}", 304)]
    [InlineData("\"a\", {etag}", 304)]
    [InlineData("\"a\",,W/\"b\" , W/{etag},", 304)]
    [InlineData("\"a,b\", {etag}", 304)]
    [InlineData("{bare}", 200)]
    [InlineData("{bare}, {etag}", 304)]
    [InlineData("\"\"", 200)]
    [InlineData("\"a", 200)]
    [InlineData("w/{etag}", 200)]
    [InlineData("{gzip}", 200)]
    [InlineData("{br}", 200)]
    [InlineData(",", 200)]
    [InlineData("{many}", 200)]
    [InlineData("{many}, {etag}", 304)]
    public async Task A_known_tag_is_found_in_whatever_form_it_comes(string tags, int status)
    {
        var etag = Header(await GetAsync(feed.App, Path), "ETag")!;
        var asked = tags.Replace("{etag}", etag, StringComparison.Ordinal).Replace("{bare}", etag.Trim('"'), StringComparison.Ordinal)
            .Replace("{gzip}", etag[..^1] + "-gzip\"", StringComparison.Ordinal).Replace("{br}", etag[..^1] + "-br\"", StringComparison.Ordinal)
            .Replace("{many}", string.Join(", ", Enumerable.Range(0, 1_500).Select(i => $"\"tag{i}\"")), StringComparison.Ordinal);

        var answer = await GetAsync(feed.App, Path, $"If-None-Match: {asked}");

        Assert.Equal(status, Status(answer));
        Assert.Equal((etag, "private, no-cache", "Accept-Encoding"), (Header(answer, "ETag"), Header(answer, "Cache-Control"), Header(answer, "Vary")));
        Assert.Equal(status == 304, Body(answer).Length == 0);
    }

    [Theory]
    [InlineData(0, "r", 304)]
    [InlineData(-1, "r", 200)]
    [InlineData(1, "r", 304)]
    [InlineData(2_000_000_000, "r", 304)]
    [InlineData(0, "dddd, dd-MMM-yy HH:mm:ss 'GMT'", 304)]
    [InlineData(-1, "dddd, dd-MMM-yy HH:mm:ss 'GMT'", 200)]
    [InlineData(0, "ddd MMM d HH:mm:ss yyyy", 304)]
    [InlineData(0, "'yesterday'", 200)]
    [InlineData(0, "yyyy-MM-dd'T'HH:mm:ss'Z'", 200)]
    public async Task A_date_counts_when_it_is_one(int seconds, string form, int status)
    {
        var modified = DateTimeOffset.ParseExact(Header(await GetAsync(feed.App, Path), "Last-Modified")!, "r", CultureInfo.InvariantCulture);

        var answer = await GetAsync(feed.App, Path, $"If-Modified-Since: {modified.AddSeconds(seconds).ToString(form, CultureInfo.InvariantCulture)}");

        Assert.Equal(status, Status(answer));
    }

    [Theory]
    [InlineData("If-None-Match: \"other\"", "If-Modified-Since: {modified}", 200)]
    [InlineData("If-None-Match: garbage", "If-Modified-Since: {modified}", 200)]
    [InlineData("If-None-Match: {etag}", "If-Modified-Since: Mon, 01 Jan 2001 00:00:00 GMT", 304)]
    [InlineData("If-Match: {etag}", "If-None-Match: {etag}", 304)]
    [InlineData("If-Match: \"other\"", "If-None-Match: {etag}", 412)]
    [InlineData("If-Match: \"other\"", "If-Unmodified-Since: {modified}", 412)]
    [InlineData("If-Match: W/{etag}", "Accept: */*", 412)]
    [InlineData("If-Match: *", "If-Unmodified-Since: Mon, 01 Jan 2001 00:00:00 GMT", 200)]
    [InlineData("If-Unmodified-Since: Mon, 01 Jan 2001 00:00:00 GMT", "If-None-Match: {etag}", 412)]
    [InlineData("If-Unmodified-Since: {modified}", "If-None-Match: {etag}", 304)]
    [InlineData("If-Unmodified-Since: garbage", "Accept: */*", 200)]
    public async Task Conditions_are_weighed_in_the_order_of_the_standard(string first, string second, int status)
    {
        var newest = await GetAsync(feed.App, Path);

        var answer = await GetAsync(feed.App, Path, [.. new[] { first, second }.Select(h => h
            .Replace("{etag}", Header(newest, "ETag"), StringComparison.Ordinal).Replace("{modified}", Header(newest, "Last-Modified"), StringComparison.Ordinal))]);

        Assert.Equal(status, Status(answer));
    }

    [Theory]
    [InlineData("", null)]
    [InlineData("gzip", "gzip")]
    [InlineData("GZIP", "gzip")]
    [InlineData("gzip, deflate, br", "br")]
    [InlineData("br;q=0.1, gzip", "gzip")]
    [InlineData("br;q=0, gzip;q=0.001", "gzip")]
    [InlineData("gzip;q=0", null)]
    [InlineData("*", "br")]
    [InlineData("br;q=0, *", "gzip")]
    [InlineData("identity, gzip;q=0.5", null)]
    [InlineData("identity;q=0, gzip", "gzip")]
    [InlineData("deflate, zstd", null)]
    [InlineData("br;q=2, gzip;q=x, ;;;=,\"", null)]
    [InlineData("brotli, gzipped", null)]
    public async Task The_best_liked_coding_is_sent(string accepted, string? coding)
    {
        var answer = await GetAsync(feed.App, Path, $"Accept-Encoding: {accepted}");

        Assert.Equal((200, coding), (Status(answer), Header(answer, "Content-Encoding")));
    }

    [Theory]
    [InlineData("identity;q=0")]
    [InlineData("*;q=0")]
    [InlineData("gzip;q=0, br;q=0, identity;q=0")]
    public async Task Who_refuses_every_coding_is_told_so(string accepted)
    {
        var answer = await GetAsync(feed.App, Path, $"Accept-Encoding: {accepted}");

        Assert.Equal((406, "Accept-Encoding", ""), (Status(answer), Header(answer, "Vary"), Body(answer)));
    }

    [Fact]
    public async Task Eight_kilobytes_of_codings_are_read_to_the_end() =>
        Assert.Equal("gzip", Header(await GetAsync(feed.App, Path, $"Accept-Encoding: {string.Concat(Enumerable.Repeat("x;q=0.5, ", 900))}gzip"), "Content-Encoding"));

    [Fact]
    public async Task An_old_program_with_HTTP_1_0_gets_the_feed() =>
        Assert.EndsWith("END:VCALENDAR\r\n", await SendAsync(feed.App, $"GET {Path} HTTP/1.0\n\n"), StringComparison.Ordinal);

    [Fact]
    public async Task Requests_sent_in_one_go_are_answered_in_their_order()
    {
        var etag = Header(await GetAsync(feed.App, Path), "ETag");
        var asked = $"GET {Path} HTTP/1.1\nHost: localhost\nIf-None-Match: {etag}\n\nGET /calendar/x.ics HTTP/1.1\nHost: localhost\n\nHEAD {Path} HTTP/1.1\nHost: localhost\nConnection: close\n\n";

        var answers = await SendAsync(feed.App, asked);

        Assert.Equal(["304", "404", "200"], answers.Split("HTTP/1.1 ").Skip(1).Select(a => a[..3]));
    }

    [Fact]
    public async Task A_program_that_waits_for_leave_to_send_a_body_is_answered() =>
        Assert.Equal(405, Status(await SendAsync(feed.App, $"PUT {Path} HTTP/1.1\nHost: localhost\nContent-Length: 5\nExpect: 100-continue\n\n", toTheEnd: false)));

    [Fact]
    public async Task A_body_with_a_GET_changes_nothing()
    {
        var answer = await SendAsync(feed.App, $"GET {Path} HTTP/1.1\nHost: localhost\nConnection: close\nContent-Length: 5\n\nhello");

        Assert.Equal(200, Status(answer));
    }

    /// <summary>An application that listens, with one published feed.</summary>
    public sealed class Published : IAsyncLifetime
    {
        public TestApp App { get; } = new();

        public string Token { get; private set; } = "";

        public async ValueTask InitializeAsync()
        {
            await App.InitializeAsync();
            App.OnTheWire = true;
            App.Settings["Feeds:MissesPerMinute"] = "100000";
            var club = await App.NewClubAsync();
            await club.PublishAsync();
            Token = (await club.NewLinkAsync()).Token;
        }

        public ValueTask DisposeAsync() => App.DisposeAsync();
    }
}
