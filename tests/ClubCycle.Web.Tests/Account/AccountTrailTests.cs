using ClubCycle.Data;
using ClubCycle.Data.Accounts;
using ClubCycle.Web.Features.Settings;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace ClubCycle.Web.Tests.Account;

/// <summary>ASVS 16.3.1 and 16.3.3: what happens to accounts stands in the audit trail.</summary>
public sealed class AccountTrailTests(TestApp app) : IClassFixture<TestApp>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Signing_in_and_out_is_noted()
    {
        var club = await app.NewClubAsync();
        var browser = app.Browser();

        await SignInAsync(browser, club.Head, TestApp.Password);
        await TestApp.SendFormAsync(browser, "/account/password", "/account/sign-out");

        Assert.Equal(["account.signed-in", "account.signed-out"], await NotesAsync(club));
    }

    [Fact]
    public async Task Signing_in_by_link_is_noted_as_such()
    {
        var club = await app.NewClubAsync();

        await club.SignedInAsync(club.Coach);

        Assert.Equal(["account.signed-in-by-link"], await NotesAsync(club));
    }

    [Fact]
    public async Task Wrong_passwords_are_noted_once_a_minute()
    {
        var club = await app.NewClubAsync();

        await SignInAsync(app.Browser(), club.Head, "not the password");
        await SignInAsync(app.Browser(), club.Head, "nor this one here");

        Assert.Equal(["account.sign-in-refused"], await NotesAsync(club));
    }

    [Fact]
    public async Task A_new_password_is_noted()
    {
        var club = await app.NewClubAsync();
        var browser = await club.SignedInAsync(club.Head);

        await TestApp.SendFormAsync(browser, "/account/password", "/account/password", ("password", "seven quiet lanterns"));

        Assert.Contains("account.password-changed", await NotesAsync(club));
    }

    [Fact]
    public async Task Roles_links_invitations_and_removals_are_noted_with_whose_account_it_is()
    {
        var club = await app.NewClubAsync();

        await app.AsAsync(club.Head, async s =>
        {
            var actions = s.GetRequiredService<ClubActions>();
            (await actions.InviteAsync("Kim", "kim.trail@example.org", ClubRole.Assistant, [], Cancel)).OrThrow();
            (await actions.NewLinkAsync(club.Coach, Cancel)).OrThrow();
            (await actions.SetRoleAsync(club.Coach, ClubRole.HeadCoach, Cancel)).OrThrow();
            return (await actions.RemoveAsync(club.Coach, Cancel)).OrThrow();
        });

        Assert.Equal(["account.invited", "account.link-made", "account.made-head-coach", "account.removed"], await NotesAsync(club));
    }

    [Fact]
    public async Task Head_coaches_read_it_in_the_settings()
    {
        var club = await app.NewClubAsync();
        await SignInAsync(app.Browser(), club.Coach, "not the password");

        var read = await app.AsAsync(club.Head, s => s.GetRequiredService<ClubActions>().LatestAsync(Cancel));

        Assert.Contains(read, row => row.What == "account.sign-in-refused" && row.By == club.Coach);
    }

    private Task<List<string>> NotesAsync(TestClub club) => app.InClubAsync(club.Id, async s =>
    {
        await using var db = await s.GetRequiredService<IClubDbFactory>().OpenAsync(Cancel);
        return await db.Audit.Where(a => a.What.StartsWith("account.")).OrderBy(a => a.Id).Select(a => a.What).ToListAsync(Cancel);
    });

    private static Task<HttpResponseMessage> SignInAsync(HttpClient browser, Guid person, string password) =>
        TestApp.SendFormAsync(browser, "/account/sign-in", "/account/sign-in", ("email", $"{person:N}@example.org"), ("password", password));
}
