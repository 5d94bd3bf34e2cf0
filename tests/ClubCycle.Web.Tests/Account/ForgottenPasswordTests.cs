using System.Net;
using System.Text.RegularExpressions;
using ClubCycle.Data;
using ClubCycle.Web.Tests.Commands;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace ClubCycle.Web.Tests.Account;

public sealed partial class ForgottenPasswordTests(TestApp app) : IClassFixture<TestApp>
{
    private const string Page = "/account/password";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task After_a_sign_in_link_a_password_is_chosen_without_the_old_one()
    {
        var club = await app.NewClubAsync();
        var browser = await club.SignedInAsync(club.Head);
        Assert.DoesNotContain("name=\"current\"", await browser.GetStringAsync(Page, Cancel), StringComparison.Ordinal);

        await TestApp.SendFormAsync(browser, Page, Page, ("password", "seven quiet lanterns"));

        Assert.Equal(HttpStatusCode.Redirect, await SignInAsync(club.Head, "seven quiet lanterns"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, await SignInAsync(club.Head, TestApp.Password));
    }

    [Fact]
    public async Task It_is_chosen_so_once()
    {
        var club = await app.NewClubAsync();
        var browser = await club.SignedInAsync(club.Head);
        await TestApp.SendFormAsync(browser, Page, Page, ("password", "seven quiet lanterns"));

        var again = await TestApp.SendFormAsync(browser, Page, Page, ("password", "eight quiet lanterns"));

        Assert.Equal(HttpStatusCode.UnprocessableEntity, again.StatusCode);
    }

    [Fact]
    public async Task An_hour_after_the_link_the_old_password_is_asked_for_again()
    {
        var club = await app.NewClubAsync();
        var browser = await club.SignedInAsync(club.Head);
        await using (var db = await app.Services.GetRequiredService<IDbContextFactory<ClubCycleDb>>().CreateDbContextAsync(Cancel))
        {
            await db.SignIns.Where(s => s.UserId == club.Head).ExecuteUpdateAsync(row => row.SetProperty(s => s.StartedAt, s => s.StartedAt - NodaTime.Duration.FromMinutes(61)), Cancel);
        }

        Assert.Contains("name=\"current\"", await browser.GetStringAsync(Page, Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_command_line_gives_the_last_head_coach_a_link_that_signs_in_once()
    {
        var club = await app.NewClubAsync();

        var run = await ResetAsync($"{club.Head:N}@example.org");

        var link = Link().Match(run.Output).Value;
        var browser = app.Browser();
        Assert.Equal(HttpStatusCode.Redirect, (await TestApp.SendFormAsync(browser, link, link)).StatusCode);
        Assert.DoesNotContain("name=\"current\"", await browser.GetStringAsync(Page, Cancel), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await app.Browser().GetAsync(link, Cancel)).StatusCode);
    }

    [Fact]
    public async Task The_command_line_says_when_nobody_has_this_address()
    {
        await app.NewClubAsync();

        var run = await ResetAsync("nobody@example.org");

        Assert.Equal((2, ""), (run.ExitCode, run.Output));
        Assert.Contains("no account with this e-mail", run.Errors, StringComparison.Ordinal);
    }

    private Task<CommandRun> ResetAsync(string email) =>
        CommandRun.OfAsync(["reset-password", email], environment: new Dictionary<string, string> { ["ConnectionStrings__ClubCycle"] = app.ConnectionString });

    private async Task<HttpStatusCode> SignInAsync(Guid person, string password) =>
        (await TestApp.SendFormAsync(app.Browser(), "/account/sign-in", "/account/sign-in", ("email", $"{person:N}@example.org"), ("password", password))).StatusCode;

    [GeneratedRegex("/account/sign-in-link/[A-Za-z0-9_-]+")]
    private static partial Regex Link();
}
