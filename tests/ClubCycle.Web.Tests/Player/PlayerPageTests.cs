using System.Collections.Immutable;
using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using ClubCycle.Data.Links;
using ClubCycle.Data.Players;
using ClubCycle.Planning.Feeds;
using ClubCycle.Planning.Languages;
using ClubCycle.Planning.Players;
using ClubCycle.Planning.Squads;
using ClubCycle.Web.Languages;
using ClubCycle.Web.Tests.Feeds;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace ClubCycle.Web.Tests.Player;

public sealed class PlayerPageTests(TestApp app) : IClassFixture<TestApp>
{
    /// <summary>Packed, over the wire; what belongs to it is measured in a browser.</summary>
    private const int MostBytes = 16 * 1024;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_page_shows_today_the_week_and_the_next_match_to_a_first_name()
    {
        var html = await PageAsync(AgeGroup.Senior);

        Assert.Contains("Hello Ines", html, StringComparison.Ordinal);
        Assert.DoesNotContain("Kestrel", html, StringComparison.Ordinal);
        Assert.Contains(">Today, </span>Tuesday 3 March<", html, StringComparison.Ordinal);
        Assert.Contains("Saturday 7 March", html, StringComparison.Ordinal);
        Assert.Contains("Next match", html, StringComparison.Ordinal);
        Assert.Contains("Saturday 3 October", html, StringComparison.Ordinal);
        Assert.Contains("webcal://localhost/calendar/", html, StringComparison.Ordinal);
        Assert.Contains("http://localhost/calendar/", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_page_weighs_little_and_needs_no_script_of_its_own()
    {
        var club = await app.NewClubAsync();
        await club.PublishAsync();
        var page = $"/p/{(await club.NewLinkAsync()).Token}";
        var html = await app.Browser().GetStringAsync(page, Cancel);

        Assert.Equal(["""<script type="module" src="/js/player.js">"""], Regex.Matches(html, "<script[^>]*>").Select(m => m.Value));
        Assert.DoesNotContain(" style=", html, StringComparison.Ordinal);
        Assert.InRange((await PackedAsync(page)).Length, 1, MostBytes);
    }

    [Fact]
    public async Task Only_players_pages_may_have_a_worker_and_a_manifest()
    {
        var club = await app.NewClubAsync();

        var own = await PolicyAsync($"/p/{(await club.NewLinkAsync()).Token}");
        var other = await PolicyAsync("/account/sign-in");

        Assert.EndsWith("; manifest-src 'self'; worker-src 'self'", own, StringComparison.Ordinal);
        Assert.DoesNotContain("manifest-src", other, StringComparison.Ordinal);
        Assert.DoesNotContain("worker-src", other, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_installs_the_page_holds_no_secret_and_leads_to_a_start_page()
    {
        var club = await app.NewClubAsync();
        var token = (await club.NewLinkAsync()).Token;
        var html = await app.Browser().GetStringAsync($"/p/{token}", Cancel);

        var manifest = await app.Browser().GetStringAsync("/p/app.webmanifest?in=en", Cancel);
        var start = JsonDocument.Parse(manifest).RootElement.GetProperty("start_url").GetString()!;

        Assert.Contains("""<link rel="manifest" href="/p/app.webmanifest?in=en" />""", html, StringComparison.Ordinal);
        Assert.DoesNotContain(token, manifest, StringComparison.Ordinal);
        Assert.Contains("This phone does not know your page yet", await app.Browser().GetStringAsync(start, Cancel), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Language.English, "en", "Tuesday 3 March")]
    [InlineData(Language.Dutch, "nl", "dinsdag 3 maart")]
    [InlineData(Language.German, "de", "Dienstag")]
    [InlineData(Language.Spanish, "es", "martes")]
    public async Task The_page_is_in_the_language_of_its_link_whatever_the_browser_asks_for(Language language, string code, string day)
    {
        var club = await app.NewClubAsync();
        await club.PublishAsync();
        var link = await app.InClubAsync(club.Id, async services => (await services.GetRequiredService<LinkStore>().CreateAsync(club.OwnSquad, club.Player, "tablet", new FeedOptions(Language: language), club.Head, Cancel)).OrThrow());

        var html = await InLanguageAsync($"/p/{link.Token}", "fr, de;q=0.9");

        Assert.Contains($"<html lang=\"{code}\"", html, StringComparison.Ordinal);
        Assert.Contains($"/p/app.webmanifest?in={code}", html, StringComparison.Ordinal);
        Assert.Contains($"</span>{day}", html, StringComparison.Ordinal);
        Assert.Contains($"\"lang\":\"{code}\"", await InLanguageAsync($"/p/app.webmanifest?in={code}", "fr"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/p/", "es-MX, en;q=0.5", "es")]
    [InlineData("/p/AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA", "de-CH", "de")]
    [InlineData("/p/AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA", "fr", "en")]
    public async Task A_page_that_belongs_to_no_link_is_in_the_browsers_language(string page, string asked, string code) =>
        Assert.Contains($"<html lang=\"{code}\"", await InLanguageAsync(page, asked), StringComparison.Ordinal);

    [Theory]
    [InlineData(Language.Dutch)]
    [InlineData(Language.German)]
    [InlineData(Language.Spanish)]
    public void What_is_asked_and_told_of_the_own_body_is_in_each_language(Language language)
    {
        var numbers = new PlayerNumbers(1980, true, [new(TestKind.MaximumHeartRate, new LocalDate(2026, 2, 20), 196), new(TestKind.TimeTrial, new LocalDate(2026, 2, 20), 1260, 300)]);
        var values = new PersonalValues(numbers, AgeGroup.Senior, new LocalDate(2026, 3, 3));
        var own = ManyPlans.All.SelectMany(plan => plan.Sessions).SelectMany(session => PersonalSheet.Of(session, numbers, values)).Select(step => step.Own).OfType<string>().Distinct();

        Assert.DoesNotContain(HealthQuestions.All.Concat(own), text => Texts.Book(language).Explain(text).Unknown.Count > 0);
    }

    [Fact]
    public async Task The_worker_finds_the_lines_and_days_that_it_shows_offline()
    {
        var html = await PageAsync(AgeGroup.Senior);
        var worker = await app.Browser().GetStringAsync("/p/worker.js", Cancel);

        Assert.Contains("""role="status" hidden data-kept="offline">You are offline: this is what was there on Tuesday 3 March at 12:00.</p>""", html, StringComparison.Ordinal);
        Assert.Contains("""<span data-today="2026-03-03">Today, </span>Tuesday 3 March""", html, StringComparison.Ordinal);
        Assert.Equal(6, Regex.Count(html, """<span hidden data-today="2026-03-0[2-8]">Today, </span>"""));
        Assert.Contains("` hidden data-kept=\"${why}\"`", worker, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/p/")]
    [InlineData("/P/")]
    public async Task The_address_is_told_to_nobody(string path)
    {
        var club = await app.NewClubAsync();

        var answer = await app.Browser().GetAsync(path + (await club.NewLinkAsync()).Token, Cancel);

        Assert.Equal(["no-referrer"], answer.Headers.GetValues("Referrer-Policy"));
    }

    [Fact]
    public async Task The_calendar_is_offered_as_a_button_an_address_and_a_code_with_help_in_plain_words()
    {
        var club = await app.NewClubAsync();
        var token = (await club.NewLinkAsync()).Token;

        var html = await app.Browser().GetStringAsync($"/p/{token}", Cancel);

        Assert.Contains($"href=\"webcal://localhost/calendar/{token}.ics\"", html, StringComparison.Ordinal);
        Assert.Contains($"<code class=\"copy\" id=\"feed\">http://localhost/calendar/{token}.ics</code>", html, StringComparison.Ordinal);
        Assert.Contains("aria-label=\"QR code of this page\"", html, StringComparison.Ordinal);
        Assert.All(["On a phone or tablet", "In a calendar in the browser", "In a calendar program on a computer", "When do changes show up?", "It does not change at all"], heading => Assert.Contains($"<summary>{heading}</summary>", html, StringComparison.Ordinal));
        Assert.Contains("An import is a photo", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Numbers_of_effort_are_for_squads_without_players_under_13()
    {
        Assert.Contains("on a scale from 0 to 10", await PageAsync(AgeGroup.Youth(16)), StringComparison.Ordinal);
        Assert.DoesNotContain("on a scale from 0 to 10", await PageAsync(AgeGroup.Youth(14)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_page_is_kept_out_of_search_engines_and_shared_caches()
    {
        var club = await app.NewClubAsync();

        var answer = await app.Browser().GetAsync($"/p/{(await club.NewLinkAsync()).Token}", Cancel);

        Assert.Equal(["noindex, nofollow"], answer.Headers.GetValues("X-Robots-Tag"));
        Assert.Equal(["no-referrer"], answer.Headers.GetValues("Referrer-Policy"));
        Assert.Equal("no-cache, private", answer.Headers.CacheControl!.ToString());
        Assert.False(answer.Headers.Contains("Set-Cookie"));
    }

    [Fact]
    public async Task A_revoked_link_looks_like_one_that_never_was()
    {
        var club = await app.NewClubAsync();
        var link = await club.NewLinkAsync();
        await club.RevokeAsync(link.Id);

        var gone = await app.Browser().GetAsync($"/p/{link.Token}", Cancel);
        var never = await app.Browser().GetAsync($"/p/{new string('A', 43)}", Cancel);

        Assert.Equal((HttpStatusCode.NotFound, HttpStatusCode.NotFound), (gone.StatusCode, never.StatusCode));
        Assert.Equal(await never.Content.ReadAsStringAsync(Cancel), await gone.Content.ReadAsStringAsync(Cancel));
    }

    [Fact]
    public async Task Before_anything_is_published_the_page_says_so()
    {
        var club = await app.NewClubAsync();

        Assert.Contains("has not published a plan yet", await app.Browser().GetStringAsync($"/p/{(await club.NewLinkAsync()).Token}", Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_coach_of_another_club_can_open_a_players_link()
    {
        var club = await app.NewClubAsync();
        var elsewhere = await app.NewClubAsync();
        var browser = await elsewhere.SignedInAsync(elsewhere.Head);

        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync($"/p/{(await club.NewLinkAsync()).Token}", Cancel)).StatusCode);
    }

    [Fact]
    public async Task Masters_answer_ten_questions_before_they_see_what_to_do()
    {
        var club = await app.NewClubAsync(AgeGroup.Masters);
        await club.PublishAsync();
        var address = $"/p/{(await club.NewLinkAsync()).Token}";

        var before = await app.Browser().GetStringAsync(address, Cancel);
        var sent = await SendAsync(address, Answers("no"));
        var after = await app.Browser().GetStringAsync(address, Cancel);

        Assert.Equal(10, HealthQuestions.All.Count(q => before.Contains(q, StringComparison.Ordinal)));
        Assert.DoesNotContain("What to do", before, StringComparison.Ordinal);
        Assert.Equal((HttpStatusCode.SeeOther, address), (sent.StatusCode, sent.Headers.Location!.OriginalString));
        Assert.Contains("What to do", after, StringComparison.Ordinal);
        Assert.DoesNotContain("Before the plan starts", after, StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_yes_sends_a_player_to_a_professional_and_nothing_is_kept()
    {
        var club = await app.NewClubAsync(AgeGroup.Masters);
        await club.PublishAsync();
        var address = $"/p/{(await club.NewLinkAsync()).Token}";

        var answer = await SendAsync(address, Answers("no").SetItem("question-4", "yes"));

        Assert.Contains("see a doctor or another licensed professional", await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        Assert.Null((await PlayerAsync(club)).Limits.HealthSettledOn);
        Assert.DoesNotContain("What to do", await app.Browser().GetStringAsync(address, Cancel), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("question-10", "")]
    [InlineData("question-1", "perhaps")]
    public async Task A_question_left_open_is_asked_for(string question, string answer)
    {
        var club = await app.NewClubAsync(AgeGroup.Masters);
        await club.PublishAsync();

        var page = await SendAsync($"/p/{(await club.NewLinkAsync()).Token}", Answers("no").SetItem(question, answer));

        Assert.Contains("Please answer every question", await page.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        Assert.Null((await PlayerAsync(club)).Limits.HealthSettledOn);
    }

    [Fact]
    public async Task A_flagged_minor_answers_together_with_a_guardian()
    {
        var club = await app.NewClubAsync(AgeGroup.Youth(14));
        await club.PublishAsync();
        await LimitAsync(club, new PlayerLimits(null, true, null, null));
        var address = $"/p/{(await club.NewLinkAsync()).Token}";

        var alone = await SendAsync(address, Answers("no"));
        var together = await SendAsync(address, Answers("no").Add("guardian", "yes"));

        Assert.Contains("a parent or guardian answered with you", await alone.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.SeeOther, together.StatusCode);
    }

    [Fact]
    public async Task Answers_to_a_link_that_never_was_are_not_found()
    {
        var answer = await SendAsync($"/p/{new string('A', 43)}", Answers("no"));

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Fact]
    public async Task A_player_with_tests_sees_the_own_ceiling_and_pace_on_easy_runs()
    {
        var club = await app.NewClubAsync();
        await club.PublishAsync();
        await app.InClubAsync(club.Id, async services =>
        {
            var tests = services.GetRequiredService<TestResultStore>();
            (await tests.AddAsync(club.OwnSquad, club.Player, new(TestKind.MaximumHeartRate, new LocalDate(2026, 2, 20), 196), club.Head, Cancel)).OrThrow();
            return (await tests.AddAsync(club.OwnSquad, club.Player, new(TestKind.TimeTrial, new LocalDate(2026, 2, 20), 1260, 300), club.Head, Cancel)).OrThrow();
        });

        var html = await app.Browser().GetStringAsync($"/p/{(await club.NewLinkAsync()).Token}", Cancel);

        // 0.76 × 196 = 148.96; 1,260 m in 300 s is 4.2 m/s, two thirds of it (0.67) 2.81 m/s.
        Assert.Contains("Yours: ceiling of easy running: 148 b/min (maximum measured; being able to talk comes first), easy runs no faster than 5:56 min/km (", html, StringComparison.Ordinal);
    }

    private static ImmutableDictionary<string, string> Answers(string answer) =>
        Enumerable.Range(1, HealthQuestions.All.Count).ToImmutableDictionary(i => $"question-{i}", _ => answer);

    private Task<HttpResponseMessage> SendAsync(string address, IEnumerable<KeyValuePair<string, string>> form) =>
        app.Browser().PostAsync($"{address}/health", new FormUrlEncodedContent(form), Cancel);

    private Task<StoredPlayer> PlayerAsync(TestClub club) => app.InClubAsync(club.Id, async services =>
        (await services.GetRequiredService<PlayerStore>().ListAsync(club.OwnSquad, Cancel)).Single(p => p.Id == club.Player));

    private async Task LimitAsync(TestClub club, PlayerLimits limits)
    {
        var player = await PlayerAsync(club);
        await app.InClubAsync(club.Id, async services => (await services.GetRequiredService<PlayerStore>().LimitAsync(club.OwnSquad, club.Player, limits, player.Version, club.Head, Cancel)).OrThrow());
    }

    private async Task<byte[]> PackedAsync(string address)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, address) { Headers = { { "Accept-Encoding", "gzip" } } };
        return await (await app.Browser().SendAsync(request, Cancel)).EnsureSuccessStatusCode().Content.ReadAsByteArrayAsync(Cancel);
    }

    private async Task<string> InLanguageAsync(string address, string asked)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, address) { Headers = { { "Accept-Language", asked } } };
        return await (await app.Browser().SendAsync(request, Cancel)).Content.ReadAsStringAsync(Cancel);
    }

    private async Task<string> PolicyAsync(string address) =>
        Assert.Single((await app.Browser().GetAsync(address, Cancel)).Headers.GetValues("Content-Security-Policy"));

    private async Task<string> PageAsync(AgeGroup age)
    {
        var club = await app.NewClubAsync(age);
        await club.PublishAsync();
        return await app.Browser().GetStringAsync($"/p/{(await club.NewLinkAsync()).Token}", Cancel);
    }
}
