using System.Net;
using ClubCycle.Data.Accounts;
using ClubCycle.Web.Account;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;

namespace ClubCycle.Web.Tests.Account;

/// <summary>Strangers guess at an account; its owner comes back in a browser that was used before.</summary>
public sealed class KnownBrowserTests(TestApp app) : IClassFixture<TestApp>
{
    private const string Locked = "too many wrong tries";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_locked_account_opens_to_its_owner_in_a_known_browser_only()
    {
        var club = await app.NewClubAsync();
        var known = await KnownAsync(club.Coach);
        await LockAsync(club.Coach);

        Assert.Contains(Locked, await SaidAsync(await SignInAsync(app.Browser(), club.Coach)), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, (await SignInAsync(known, club.Coach)).StatusCode);
    }

    [Fact]
    public async Task One_wrong_try_while_it_is_locked_makes_the_browser_a_strangers()
    {
        var club = await app.NewClubAsync();
        var known = await KnownAsync(club.Coach);
        await LockAsync(club.Coach);

        await SignInAsync(known, club.Coach, "not the password");
        await LockAsync(club.Coach);

        Assert.Contains(Locked, await SaidAsync(await SignInAsync(known, club.Coach)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_browser_is_known_for_the_person_who_used_it()
    {
        var club = await app.NewClubAsync();
        var known = await KnownAsync(club.Head);
        await LockAsync(club.Coach);

        Assert.Contains(Locked, await SaidAsync(await SignInAsync(known, club.Coach)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_new_password_ends_what_browsers_know()
    {
        var club = await app.NewClubAsync();
        var known = await KnownAsync(club.Coach);
        var other = await KnownAsync(club.Coach);
        await SignInAsync(other, club.Coach);
        Assert.Equal(HttpStatusCode.Redirect, (await TestApp.SendFormAsync(other, "/account/password", "/account/password", ("current", TestApp.Password), ("password", "seven quiet lanterns"))).StatusCode);
        await LockAsync(club.Coach);

        Assert.Contains(Locked, await SaidAsync(await SignInAsync(known, club.Coach, "seven quiet lanterns")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_forged_note_is_none()
    {
        var club = await app.NewClubAsync();
        await LockAsync(club.Coach);
        var forged = app.Browser();
        forged.DefaultRequestHeaders.Add("Cookie", $"{KnownBrowser.Cookie}={club.Coach}");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await SignInAsync(forged, club.Coach)).StatusCode);
    }

    [Fact]
    public async Task The_note_is_out_of_reach_for_scripts_and_other_sites()
    {
        var club = await app.NewClubAsync();

        var cookie = (await SignInAsync(app.Browser(), club.Coach)).Headers.GetValues("Set-Cookie").Single(c => c.StartsWith(KnownBrowser.Cookie + "=", StringComparison.Ordinal));

        Assert.Contains("httponly", cookie, StringComparison.Ordinal);
        Assert.Contains("samesite=lax", cookie, StringComparison.Ordinal);
        Assert.DoesNotContain(club.Coach.ToString(), cookie, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task When_too_many_strangers_wait_the_page_says_so_and_a_known_browser_comes_in()
    {
        var club = await app.NewClubAsync();
        var known = await KnownAsync(club.Coach);
        var queue = app.Services.GetRequiredService<PasswordQueue>();
        TaskCompletionSource busy = new();
        var strangers = Enumerable.Range(0, Environment.ProcessorCount + PasswordQueue.MostWaiting).Select(_ => queue.ForStrangerAsync(
            async () =>
            {
                await busy.Task;
                return "in";
            },
            Cancel)).ToList();

        var refused = await SignInAsync(app.Browser(), club.Coach);
        var came = await SignInAsync(known, club.Coach);
        busy.SetResult();
        await Task.WhenAll(strangers);

        Assert.Equal((HttpStatusCode.ServiceUnavailable, HttpStatusCode.Redirect), (refused.StatusCode, came.StatusCode));
        Assert.Equal(TimeSpan.FromSeconds(30), refused.Headers.RetryAfter?.Delta);
        Assert.Contains("Wait half a minute", await SaidAsync(refused), StringComparison.Ordinal);
    }

    /// <summary>A browser in which the person signed in and out.</summary>
    private async Task<HttpClient> KnownAsync(Guid person)
    {
        var browser = app.Browser();
        Assert.Equal(HttpStatusCode.Redirect, (await SignInAsync(browser, person)).StatusCode);
        await TestApp.SendFormAsync(browser, "/account/password", "/account/sign-out");
        return browser;
    }

    private async Task LockAsync(Guid person)
    {
        for (var i = 0; i < 5; i++)
        {
            await SignInAsync(app.Browser(), person, "not the password");
        }

        await using var scope = app.Services.CreateAsyncScope();
        var users = scope.ServiceProvider.GetRequiredService<UserManager<ClubUser>>();
        Assert.True(await users.IsLockedOutAsync((await users.FindByIdAsync(person.ToString()))!));
    }

    private static Task<HttpResponseMessage> SignInAsync(HttpClient browser, Guid person, string password = TestApp.Password) =>
        TestApp.SendFormAsync(browser, "/account/sign-in", "/account/sign-in", ("email", $"{person:N}@example.org"), ("password", password), ("returnUrl", "/"));

    private static Task<string> SaidAsync(HttpResponseMessage answer) => answer.Content.ReadAsStringAsync(Cancel);
}
