using System.Net;
using System.Text;
using ClubCycle.Planning.Squads;

namespace ClubCycle.Web.Tests.Player;

public sealed class PlayerPageTests(TestApp app) : IClassFixture<TestApp>
{
    /// <summary>The style sheet included, without the font.</summary>
    private const int MostBytes = 60 * 1024;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_page_shows_today_the_week_and_the_next_match_to_a_first_name()
    {
        var html = await PageAsync(AgeGroup.Senior);

        Assert.Contains("Hello Ines", html, StringComparison.Ordinal);
        Assert.DoesNotContain("Kestrel", html, StringComparison.Ordinal);
        Assert.Contains("Today, Tuesday 3 March", html, StringComparison.Ordinal);
        Assert.Contains("Saturday 7 March", html, StringComparison.Ordinal);
        Assert.Contains("Next match", html, StringComparison.Ordinal);
        Assert.Contains("Saturday 3 October", html, StringComparison.Ordinal);
        Assert.Contains("webcal://localhost/calendar/", html, StringComparison.Ordinal);
        Assert.Contains("http://localhost/calendar/", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_page_needs_no_script_and_weighs_little()
    {
        var html = await PageAsync(AgeGroup.Senior);
        var css = await app.Browser().GetByteArrayAsync("/css/clubcycle.css", Cancel);

        Assert.DoesNotContain("<script", html, StringComparison.Ordinal);
        Assert.DoesNotContain(" style=", html, StringComparison.Ordinal);
        Assert.InRange(Encoding.UTF8.GetByteCount(html) + css.Length, 1, MostBytes);
    }

    [Fact]
    public async Task Numbers_of_effort_are_for_squads_without_players_under_13()
    {
        Assert.Contains("on a scale from 0 to 10", await PageAsync(AgeGroup.Youth(16)), StringComparison.Ordinal);
        Assert.DoesNotContain("on a scale from 0 to 10", await PageAsync(AgeGroup.Youth(14)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_page_is_kept_out_of_search_engines_and_caches()
    {
        var club = await app.NewClubAsync();

        var answer = await app.Browser().GetAsync($"/p/{(await club.NewLinkAsync()).Token}", Cancel);

        Assert.Equal(["noindex, nofollow"], answer.Headers.GetValues("X-Robots-Tag"));
        Assert.Equal(["no-referrer"], answer.Headers.GetValues("Referrer-Policy"));
        Assert.True(answer.Headers.CacheControl!.NoStore);
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

    private async Task<string> PageAsync(AgeGroup age)
    {
        var club = await app.NewClubAsync(age);
        await club.PublishAsync();
        return await app.Browser().GetStringAsync($"/p/{(await club.NewLinkAsync()).Token}", Cancel);
    }
}
