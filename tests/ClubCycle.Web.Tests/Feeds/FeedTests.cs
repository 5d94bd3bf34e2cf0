using System.Diagnostics;
using System.IO.Compression;
using System.Net;
using System.Net.Http.Headers;
using System.Text;
using ClubCycle.Data;
using ClubCycle.Data.Links;
using ClubCycle.Data.Plans;
using ClubCycle.Data.Players;
using ClubCycle.Planning.Feeds;
using ClubCycle.Planning.Languages;
using ClubCycle.Planning.Squads;
using Ical.Net;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace ClubCycle.Web.Tests.Feeds;

public sealed class FeedTests(TestApp app) : IClassFixture<TestApp>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_published_plan_is_in_the_feed_with_every_session()
    {
        var club = await app.NewClubAsync();
        await club.PublishAsync();
        var published = await app.InClubAsync(club.Id, async s => (await s.GetRequiredService<PlanStore>().PublishedAsync(club.OwnSquad, Cancel)).OrThrow());

        var text = await app.Browser().GetStringAsync(await AddressAsync(club), Cancel);

        Assert.Equal(
            published.Plan.Sessions.Where(s => s.Kind != Planning.SessionKind.ActiveRecovery).Select(s => s.Uid.ToString()).Order(StringComparer.Ordinal),
            Calendar.Load(text)!.Events.Select(e => e.Uid!).Order(StringComparer.Ordinal));
        Assert.DoesNotContain("Ines", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Kestrel", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Masters_who_owe_the_health_questions_get_the_same_times_without_what_to_do()
    {
        var club = await app.NewClubAsync(AgeGroup.Masters);
        await club.PublishAsync();
        var address = await AddressAsync(club);

        var waiting = Calendar.Load(await app.Browser().GetStringAsync(address, Cancel))!.Events;
        await app.InClubAsync(club.Id, async s => (await s.GetRequiredService<PlayerStore>().SettleHealthQuestionsAsync(club.OwnSquad, club.Player, new LocalDate(2026, 3, 1), Cancel)).OrThrow());
        var full = Calendar.Load(await UntilAsync(address, text => text.Contains("Warm-up", StringComparison.Ordinal)))!.Events;

        Assert.Equal(full.Select(e => (e.Uid, e.Start)), waiting.Select(e => (e.Uid, e.Start)));
        Assert.DoesNotContain(waiting, e => e.Description!.Contains("Warm-up", StringComparison.Ordinal));
        Assert.Contains(waiting, e => e.Description!.Contains("comes after the health questions", StringComparison.Ordinal));
        Assert.Contains(full, e => e.Description!.Contains("Warm-up", StringComparison.Ordinal));
        Assert.DoesNotContain(full, e => e.Description!.Contains("comes after the health questions", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_link_in_Dutch_gets_its_calendar_in_Dutch_and_its_neighbour_in_English_the_same_one()
    {
        var club = await app.NewClubAsync();
        await club.PublishAsync();
        var english = await AddressAsync(club);
        var link = await app.InClubAsync(club.Id, async s => (await s.GetRequiredService<LinkStore>().CreateAsync(club.OwnSquad, club.Player, "tablet", new FeedOptions(Language: Language.Dutch), club.Head, Cancel)).OrThrow());

        var dutch = await UntilAsync($"/calendar/{link.Token}.ics", text => text.Contains("BEGIN:VEVENT", StringComparison.Ordinal));

        Assert.Contains("SUMMARY:Hockeytraining", dutch, StringComparison.Ordinal);
        Assert.Contains("NAME;LANGUAGE=nl:", dutch, StringComparison.Ordinal);
        Assert.DoesNotContain("Hockey practice", dutch, StringComparison.Ordinal);
        var other = await app.Browser().GetStringAsync(english, Cancel);
        Assert.Contains("SUMMARY:Hockey practice", other, StringComparison.Ordinal);
        Assert.Equal(
            Calendar.Load(other)!.Events.Select(e => (e.Uid, e.Start, e.End, e.Sequence)),
            Calendar.Load(dutch)!.Events.Select(e => (e.Uid, e.Start, e.End, e.Sequence)));
    }

    [Fact]
    public async Task The_feed_is_private_and_sets_no_cookie()
    {
        var club = await app.NewClubAsync();
        await club.PublishAsync();

        var answer = await app.Browser().GetAsync(await AddressAsync(club), Cancel);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("text/calendar; charset=utf-8", answer.Content.Headers.ContentType!.ToString());
        Assert.Equal((true, true), (answer.Headers.CacheControl!.Private, answer.Headers.CacheControl.NoCache));
        Assert.Equal("no-referrer", Header(answer, "Referrer-Policy"));
        Assert.Equal("noindex, nofollow", Header(answer, "X-Robots-Tag"));
        Assert.Equal("nosniff", Header(answer, "X-Content-Type-Options"));
        Assert.Equal("Accept-Encoding", Header(answer, "Vary"));
        Assert.False(answer.Headers.ETag!.IsWeak);
        Assert.False(answer.Headers.Contains("Set-Cookie"));
        Assert.Null(answer.Content.Headers.ContentDisposition);
    }

    [Fact]
    public async Task A_phone_that_has_the_newest_text_gets_304_without_a_body()
    {
        var club = await app.NewClubAsync();
        await club.PublishAsync();
        var address = await AddressAsync(club);
        var first = await app.Browser().GetAsync(address, Cancel);

        var byTag = await AskAsync(address, r => r.Headers.IfNoneMatch.Add(first.Headers.ETag!));
        var byDate = await AskAsync(address, r => r.Headers.IfModifiedSince = first.Content.Headers.LastModified);
        var older = await AskAsync(address, r => r.Headers.IfModifiedSince = first.Content.Headers.LastModified!.Value.AddSeconds(-1));
        var otherTag = await AskAsync(address, r =>
        {
            r.Headers.IfNoneMatch.Add(new EntityTagHeaderValue("\"other\""));
            r.Headers.IfModifiedSince = first.Content.Headers.LastModified;
        });

        Assert.Equal(
            [HttpStatusCode.NotModified, HttpStatusCode.NotModified, HttpStatusCode.OK, HttpStatusCode.OK],
            new[] { byTag, byDate, older, otherTag }.Select(a => a.StatusCode));
        Assert.Empty(await byTag.Content.ReadAsByteArrayAsync(Cancel));
        Assert.Equal(first.Headers.ETag, byTag.Headers.ETag);
    }

    [Fact]
    public async Task HEAD_tells_the_same_without_a_body()
    {
        var club = await app.NewClubAsync();
        await club.PublishAsync();
        var address = await AddressAsync(club);
        var get = await app.Browser().GetAsync(address, Cancel);

        var head = await app.Browser().SendAsync(new HttpRequestMessage(HttpMethod.Head, address), Cancel);

        Assert.Equal((HttpStatusCode.OK, get.Headers.ETag, get.Content.Headers.ContentLength), (head.StatusCode, head.Headers.ETag, head.Content.Headers.ContentLength));
        Assert.Empty(await head.Content.ReadAsByteArrayAsync(Cancel));
    }

    [Fact]
    public async Task Packed_and_plain_answers_hold_the_same_text_under_tags_of_their_own()
    {
        var club = await app.NewClubAsync();
        await club.PublishAsync();
        var address = await AddressAsync(club);

        var plain = await AskAsync(address, _ => { });
        var gzip = await AskAsync(address, r => r.Headers.AcceptEncoding.ParseAdd("gzip"));
        var brotli = await AskAsync(address, r => r.Headers.AcceptEncoding.ParseAdd("gzip, br"));
        var refused = await AskAsync(address, r => r.Headers.AcceptEncoding.ParseAdd("br;q=0, gzip;q=0"));

        var text = await plain.Content.ReadAsStringAsync(Cancel);
        Assert.Equal(text, await UnpackedAsync(gzip, s => new GZipStream(s, CompressionMode.Decompress)));
        Assert.Equal(text, await UnpackedAsync(brotli, s => new BrotliStream(s, CompressionMode.Decompress)));
        Assert.Empty(refused.Content.Headers.ContentEncoding);
        Assert.Equal(3, new[] { plain, gzip, brotli }.Select(a => a.Headers.ETag!.Tag).Distinct().Count());
    }

    [Fact]
    public async Task A_revoked_address_looks_like_one_that_never_was()
    {
        var club = await app.NewClubAsync();
        await club.PublishAsync();
        var revoked = await club.NewLinkAsync();
        var kept = await club.NewLinkAsync();

        await club.RevokeAsync(revoked.Id);

        Assert.Equal("", await UntilAsync($"/calendar/{revoked.Token}.ics", text => text.Length == 0));
        var gone = await app.Browser().GetAsync($"/calendar/{revoked.Token}.ics", Cancel);
        var never = await app.Browser().GetAsync($"/calendar/{new string('A', 43)}.ics", Cancel);
        Assert.Equal((HttpStatusCode.NotFound, HttpStatusCode.NotFound), (gone.StatusCode, never.StatusCode));
        Assert.Equal(await never.Content.ReadAsByteArrayAsync(Cancel), await gone.Content.ReadAsByteArrayAsync(Cancel));
        Assert.Equal(HttpStatusCode.OK, (await app.Browser().GetAsync($"/calendar/{kept.Token}.ics", Cancel)).StatusCode);
    }

    [Fact]
    public async Task An_empty_calendar_is_in_the_language_of_its_link_too()
    {
        var club = await app.NewClubAsync();
        var link = await app.InClubAsync(club.Id, async s => (await s.GetRequiredService<LinkStore>().CreateAsync(club.OwnSquad, club.Player, "tablet", new FeedOptions(Language: Language.Dutch), club.Head, Cancel)).OrThrow());

        Assert.Contains("NAME;LANGUAGE=nl:Agenda van het team", await app.Browser().GetStringAsync($"/calendar/{link.Token}.ics", Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Before_anything_is_published_the_feed_is_an_empty_calendar()
    {
        var club = await app.NewClubAsync();

        Assert.Empty(Calendar.Load(await app.Browser().GetStringAsync(await AddressAsync(club), Cancel))!.Events);
    }

    [Fact]
    public async Task While_a_published_feed_is_still_to_be_rendered_phones_keep_what_they_have()
    {
        var club = await app.NewClubAsync();
        await club.PublishAsync();
        var address = await AddressAsync(club);
        Assert.Equal(HttpStatusCode.OK, (await app.Browser().GetAsync(address, Cancel)).StatusCode);

        await app.InClubAsync(club.Id, async services =>
        {
            await using var db = await services.GetRequiredService<IClubDbFactory>().OpenAsync(Cancel);
            return await db.FeedBodies.ExecuteDeleteAsync(Cancel);
        });

        HttpResponseMessage answer;
        for (var watch = Stopwatch.StartNew(); (answer = await app.Browser().GetAsync(address, Cancel)).StatusCode == HttpStatusCode.OK; await Task.Delay(50, Cancel))
        {
            Assert.True(watch.Elapsed < TimeSpan.FromSeconds(20), "The feed that is gone was still sent after 20 seconds.");
        }

        Assert.Equal((HttpStatusCode.ServiceUnavailable, "60", 0L), (answer.StatusCode, answer.Headers.RetryAfter!.ToString(), answer.Content.Headers.ContentLength));
    }

    [Fact]
    public async Task Only_the_day_of_the_last_poll_is_kept()
    {
        var club = await app.NewClubAsync();
        var link = await club.NewLinkAsync();

        await app.Browser().GetAsync($"/calendar/{link.Token}.ics", Cancel);

        for (var watch = Stopwatch.StartNew(); await DayAsync() is null; await Task.Delay(50, Cancel))
        {
            Assert.True(watch.Elapsed < TimeSpan.FromSeconds(20), "The day was not noted within 20 seconds.");
        }

        Assert.Equal(app.Clock.Now.InUtc().Date, await DayAsync());

        async Task<LocalDate?> DayAsync() => (await app.InClubAsync(club.Id, s => s.GetRequiredService<LinkStore>().ListAsync(club.OwnSquad, club.Player, Cancel))).Single().LastPollDay;
    }

    /// <summary>A change is heard within a moment of its commit. The clock of these tests stands, so nothing gets old by itself.</summary>
    private async Task<string> UntilAsync(string address, Func<string, bool> seen)
    {
        for (var watch = Stopwatch.StartNew(); ; await Task.Delay(20, Cancel))
        {
            var text = await (await app.Browser().GetAsync(address, Cancel)).Content.ReadAsStringAsync(Cancel);
            if (seen(text))
            {
                return text;
            }

            Assert.True(watch.Elapsed < TimeSpan.FromSeconds(20), "The change was not seen within 20 seconds.");
        }
    }

    private async Task<HttpResponseMessage> AskAsync(string address, Action<HttpRequestMessage> change)
    {
        var request = new HttpRequestMessage(HttpMethod.Get, address);
        change(request);
        return await app.Browser().SendAsync(request, Cancel);
    }

    private static async Task<string> AddressAsync(TestClub club) => $"/calendar/{(await club.NewLinkAsync()).Token}.ics";

    private static string Header(HttpResponseMessage answer, string name) => string.Join(",", answer.Headers.GetValues(name));

    private static async Task<string> UnpackedAsync(HttpResponseMessage answer, Func<Stream, Stream> unpack)
    {
        await using var stream = unpack(await answer.Content.ReadAsStreamAsync(Cancel));
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return await reader.ReadToEndAsync(Cancel);
    }
}
