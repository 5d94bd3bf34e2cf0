using System.Net;
using ClubCycle.Data.Accounts;
using ClubCycle.Web.Account;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;

namespace ClubCycle.Web.Tests.Account;

public sealed class SignInTests(TestApp app) : IClassFixture<TestApp>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_right_password_signs_in_and_leads_where_the_person_wanted_to_go()
    {
        var club = await app.NewClubAsync();

        var answer = await SignInAsync(app.Browser(), club.Head, TestApp.Password, "/squads");

        Assert.Equal((HttpStatusCode.Redirect, "/squads"), (answer.StatusCode, answer.Headers.Location!.ToString()));
    }

    [Fact]
    public async Task The_session_cookie_is_out_of_reach_for_scripts_and_other_sites()
    {
        var club = await app.NewClubAsync();

        var answer = await SignInAsync(app.Browser(), club.Head, TestApp.Password);

        var cookie = answer.Headers.GetValues("Set-Cookie").Single(c => c.StartsWith("ClubCycle.SignIn=", StringComparison.Ordinal));
        Assert.Contains("httponly", cookie, StringComparison.Ordinal);
        Assert.Contains("samesite=lax", cookie, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("https://elsewhere.example")]
    [InlineData("//elsewhere.example")]
    [InlineData("/\\elsewhere.example")]
    [InlineData("javascript:alert(1)")]
    public async Task Nobody_is_led_to_another_site(string address)
    {
        var club = await app.NewClubAsync();

        var answer = await SignInAsync(app.Browser(), club.Head, TestApp.Password, address);

        Assert.Equal("/", answer.Headers.Location!.ToString());
    }

    [Fact]
    public async Task A_wrong_password_and_an_unknown_person_get_the_same_answer()
    {
        var club = await app.NewClubAsync();

        var wrong = await SignInAsync(app.Browser(), club.Head, "not the password");
        var unknown = await SignInAsync(app.Browser(), Guid.Empty, "not the password");

        Assert.Equal((HttpStatusCode.UnprocessableEntity, HttpStatusCode.UnprocessableEntity), (wrong.StatusCode, unknown.StatusCode));
        Assert.Contains("do not belong together", await wrong.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        Assert.Contains("do not belong together", await unknown.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Five_wrong_passwords_lock_the_account_but_a_sign_in_link_still_works()
    {
        var club = await app.NewClubAsync();
        for (var i = 0; i < 5; i++)
        {
            await SignInAsync(app.Browser(), club.Coach, "not the password");
        }

        var locked = await SignInAsync(app.Browser(), club.Coach, TestApp.Password);

        Assert.Contains("too many wrong tries", await locked.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        await club.SignedInAsync(club.Coach);
    }

    [Fact]
    public async Task A_form_without_its_antiforgery_token_is_refused()
    {
        var club = await app.NewClubAsync();

        var answer = await app.Browser().PostAsync("/account/sign-in", new FormUrlEncodedContent([new("email", Mail(club.Head)), new("password", TestApp.Password)]), Cancel);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    [Fact]
    public async Task Signing_out_ends_the_session_of_this_browser()
    {
        var club = await app.NewClubAsync();
        var browser = await club.SignedInAsync(club.Head);

        await TestApp.SendFormAsync(browser, "/account/password", "/account/sign-out");

        Assert.Equal(HttpStatusCode.Redirect, (await browser.GetAsync("/account/password", Cancel)).StatusCode);
    }

    [Fact]
    public async Task Looking_at_a_sign_in_link_does_not_use_it_up_but_using_it_does()
    {
        var club = await app.NewClubAsync();
        var address = $"/account/sign-in-link/{await club.SignInTokenAsync(club.Coach)}";

        for (var preview = 0; preview < 3; preview++)
        {
            Assert.Contains("Sign in as Coach SquadCoach", await app.Browser().GetStringAsync(address, Cancel), StringComparison.Ordinal);
        }

        var form = app.Browser();
        Assert.Equal(HttpStatusCode.Redirect, (await TestApp.SendFormAsync(form, address, address)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await app.Browser().GetAsync(address, Cancel)).StatusCode);
    }

    [Fact]
    public async Task A_sign_in_link_works_for_a_day_and_a_newer_one_replaces_it()
    {
        var club = await app.NewClubAsync();
        var replaced = await club.SignInTokenAsync(club.Coach);
        var current = await club.SignInTokenAsync(club.Coach);
        var links = (IServiceProvider services) => services.GetRequiredService<SignInLinks>();

        Assert.Null(await app.InClubAsync(club.Id, s => links(s).LookAsync(replaced, Cancel)));
        Assert.NotNull(await app.InClubAsync(club.Id, s => links(s).LookAsync(current, Cancel)));
        app.Clock.Now += SignInLinks.Lifetime;
        try
        {
            Assert.Null(await app.InClubAsync(club.Id, s => links(s).LookAsync(current, Cancel)));
        }
        finally
        {
            app.Clock.Now -= SignInLinks.Lifetime;
        }
    }

    [Fact]
    public async Task Two_uses_of_a_link_at_once_sign_in_once()
    {
        var club = await app.NewClubAsync();
        var token = await club.SignInTokenAsync(club.Coach);

        var used = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => app.InClubAsync(club.Id, s => s.GetRequiredService<SignInLinks>().UseAsync(token, Cancel))));

        Assert.Single(used, user => user is not null);
    }

    [Fact]
    public async Task A_new_password_needs_the_current_one_and_ends_other_sessions()
    {
        var club = await app.NewClubAsync();
        var browser = app.Browser();
        await SignInAsync(browser, club.Head, TestApp.Password);

        var refused = await TestApp.SendFormAsync(browser, "/account/password", "/account/password", ("current", "wrong"), ("password", "seven quiet lanterns"));
        var saved = await TestApp.SendFormAsync(browser, "/account/password", "/account/password", ("current", TestApp.Password), ("password", "seven quiet lanterns"));

        Assert.Equal((HttpStatusCode.UnprocessableEntity, HttpStatusCode.Redirect), (refused.StatusCode, saved.StatusCode));
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync("/account/password", Cancel)).StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, (await SignInAsync(app.Browser(), club.Head, "seven quiet lanterns")).StatusCode);
    }

    [Theory]
    [InlineData("short", false)]
    [InlineData("hockeyhockey1", false)]
    [InlineData("password123456", false)]
    [InlineData("aaaaaaaaaaaaaaa", false)]
    [InlineData("LeaveMeAlone", false)]
    [InlineData("Sandhaven-2026!", false)]
    [InlineData("seven quiet lanterns", true)]
    [InlineData("  ends with a blank 🏑 ", true)]
    public async Task Passwords_are_long_and_not_easy_to_guess(string password, bool good)
    {
        var club = await app.NewClubAsync();

        var made = await app.InClubAsync(club.Id, s => s.GetRequiredService<UserManager<ClubUser>>().CreateAsync(
            new ClubUser { Id = Guid.CreateVersion7(), ClubId = club.Id, DisplayName = "Kim", Email = $"{Guid.CreateVersion7():N}@example.org", UserName = $"{Guid.CreateVersion7():N}" }, password));

        Assert.Equal(good, made.Succeeded);
    }

    private static string Mail(Guid person) => $"{person:N}@example.org";

    private static Task<HttpResponseMessage> SignInAsync(HttpClient browser, Guid person, string password, string returnUrl = "/") =>
        TestApp.SendFormAsync(browser, "/account/sign-in", "/account/sign-in", ("email", Mail(person)), ("password", password), ("returnUrl", returnUrl));
}
