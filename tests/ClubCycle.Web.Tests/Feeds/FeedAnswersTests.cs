using ClubCycle.Data.Feeds;
using ClubCycle.Data.Live;
using ClubCycle.Web.Features.Feeds;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Options;
using NodaTime;

namespace ClubCycle.Web.Tests.Feeds;

public sealed class FeedAnswersTests
{
    [Fact]
    public async Task While_the_database_is_away_a_calendar_is_asked_to_come_again()
    {
        var clock = new TestClock(Instant.FromUtc(2026, 3, 3, 12, 0));
        var limits = Options.Create(new FeedLimits());
        await using var polls = new PollStore("Host=127.0.0.1;Port=1;Database=none;Username=none;Timeout=2");
        using var days = new PollDays(polls, NullLogger<PollDays>.Instance);
        using var cache = new FeedCache(polls, new KeptChanges(new ClubChanges()), limits, clock);
        using var misses = new MissLimit(limits, NullLogger<MissLimit>.Instance);
        var http = new DefaultHttpContext { Request = { Method = "GET" } };

        await new FeedAnswers(cache, days, misses, clock, NullLogger<FeedAnswers>.Instance).AnswerAsync(http, $"/{new string('A', 43)}.ics");

        Assert.Equal((503, "120"), (http.Response.StatusCode, http.Response.Headers.RetryAfter.ToString()));
    }
}
