using System.Net;
using ClubCycle.Data;
using ClubCycle.Web.Features.Settings;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace ClubCycle.Web.Tests.Account;

/// <summary>ASVS 7.4.4 and 7.4.5, and 6.2.10.</summary>
public sealed class SigningOutTests(TestApp app) : IClassFixture<TestApp>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("/")]
    [InlineData("/seasons")]
    [InlineData("/squads")]
    [InlineData("/templates")]
    [InlineData("/exercises")]
    [InlineData("/check")]
    [InlineData("/settings")]
    [InlineData("/account/password")]
    [InlineData("/account/second-factor")]
    [InlineData("/account/passkeys")]
    [InlineData("/account/sign-ins")]
    [InlineData("/account/denied")]
    public async Task Every_page_of_somebody_signed_in_has_a_way_out(string page)
    {
        var club = await app.NewClubAsync();
        var browser = await club.SignedInAsync(club.Head);

        Assert.Matches("action=\"/?account/sign-out\"", await (await browser.GetAsync(page, Cancel)).Content.ReadAsStringAsync(Cancel));
    }

    [Fact]
    public async Task A_head_coach_signs_one_person_out_everywhere_and_nobody_else()
    {
        var club = await app.NewClubAsync();
        var coach = await club.SignedInAsync(club.Coach);
        var head = await club.SignedInAsync(club.Head);

        (await app.AsAsync(club.Head, s => s.GetRequiredService<ClubActions>().EndSignInsAsync(club.Coach, Cancel))).OrThrow();

        Assert.Equal((HttpStatusCode.Redirect, HttpStatusCode.OK), (await StatusAsync(coach), await StatusAsync(head)));
    }

    [Fact]
    public async Task A_head_coach_signs_everybody_of_the_own_club_out()
    {
        var (club, another) = (await app.NewClubAsync(), await app.NewClubAsync());
        var (coach, head, elsewhere) = (await club.SignedInAsync(club.Coach), await club.SignedInAsync(club.Head), await another.SignedInAsync(another.Head));

        (await app.AsAsync(club.Head, s => s.GetRequiredService<ClubActions>().EndAllSignInsAsync(Cancel))).OrThrow();

        Assert.Equal((HttpStatusCode.Redirect, HttpStatusCode.Redirect, HttpStatusCode.OK), (await StatusAsync(coach), await StatusAsync(head), await StatusAsync(elsewhere)));
    }

    [Fact]
    public async Task Nobody_is_asked_for_a_new_password_because_time_went_by()
    {
        var club = await app.NewClubAsync();
        await using (var db = await app.Services.GetRequiredService<IDbContextFactory<ClubCycleDb>>().CreateDbContextAsync(Cancel))
        {
            // Nothing about a password is stored with a date; were anything, a column would tell.
            Assert.DoesNotContain(db.Model.FindEntityType(typeof(Data.Accounts.ClubUser))!.GetProperties(), p => p.Name.Contains("Password", StringComparison.Ordinal) && p.Name != nameof(IdentityUser.PasswordHash));
        }

        app.Clock.Now += NodaTime.Duration.FromDays(3 * 365);
        try
        {
            var answer = await TestApp.SendFormAsync(app.Browser(), "/account/sign-in", "/account/sign-in", ("email", $"{club.Head:N}@example.org"), ("password", TestApp.Password), ("returnUrl", "/squads"));
            Assert.Equal((HttpStatusCode.Redirect, "/squads"), (answer.StatusCode, answer.Headers.Location!.ToString()));
        }
        finally
        {
            app.Clock.Now -= NodaTime.Duration.FromDays(3 * 365);
        }
    }

    private static async Task<HttpStatusCode> StatusAsync(HttpClient browser) => (await browser.GetAsync("/account/sign-ins", Cancel)).StatusCode;
}
