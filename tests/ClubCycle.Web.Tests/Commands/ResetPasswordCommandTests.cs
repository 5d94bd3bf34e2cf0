using ClubCycle.Data;
using ClubCycle.Data.Accounts;
using ClubCycle.Web.Commands;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace ClubCycle.Web.Tests.Commands;

/// <summary>ASVS 6.4.4: the way back for somebody who lost phone and recovery codes.</summary>
public sealed class ResetPasswordCommandTests(TestApp app) : IClassFixture<TestApp>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(true, "/")]
    [InlineData(false, "/account/sign-in/code")]
    public async Task The_link_asks_for_no_code_only_when_the_second_factor_is_dropped_on_purpose(bool drops, string leadsTo)
    {
        var club = await app.NewClubAsync();
        await app.InClubAsync(club.Id, async s =>
        {
            var users = s.GetRequiredService<UserManager<ClubUser>>();
            var user = (await users.FindByIdAsync(club.Head.ToString()))!;
            await users.ResetAuthenticatorKeyAsync(user);
            return await users.SetTwoFactorEnabledAsync(user, true);
        });
        var said = new StringWriter();

        var code = await app.InClubAsync(club.Id, s => ResetPasswordCommand.RunAsync(s, $"{club.Head:N}@example.org", drops, said, TextWriter.Null, Cancel));

        var link = said.ToString().Split('\n').Select(line => line.Trim()).Single(line => line.StartsWith("/account/sign-in-link/", StringComparison.Ordinal));
        Assert.Equal(ExitCode.Done, code);
        Assert.Equal(leadsTo, (await TestApp.SendFormAsync(app.Browser(), link, link)).Headers.Location!.ToString());
        Assert.Equal(drops, await app.InClubAsync(club.Id, async s =>
        {
            await using var db = await s.GetRequiredService<IClubDbFactory>().OpenAsync(Cancel);
            return await db.Audit.AnyAsync(a => a.What == "account.second-factor-off", Cancel);
        }));
    }
}
