using ClubCycle.TestKit;
using ClubCycle.Web.Features.Notices;
using ClubCycle.Web.Features.Squads;
using MailKit.Net.Smtp;
using MailKit.Security;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace ClubCycle.Web.Tests.Notices;

/// <summary>ASVS 12.3.2: a mail server whose certificate nobody signed.</summary>
public sealed class WrongMailCertificateTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("StartTls")]
    [InlineData("Tls")]
    public async Task A_mail_server_that_cannot_show_who_it_is_hears_no_password_and_gets_no_mail(string security)
    {
        using var certificate = TestCertificate.Make("localhost");
        await using MailServer server = new(certificate, fromTheFirstByte: security == "Tls");
        await using TestApp app = new()
        {
            Settings =
            {
                ["Mail:Host"] = "localhost", ["Mail:Port"] = server.Port.ToString(System.Globalization.CultureInfo.InvariantCulture), ["Mail:Security"] = security,
                ["Mail:From"] = "club@example.org", ["Mail:User"] = "club", ["Mail:Password"] = "secret-word",
            },
        };
        await app.InitializeAsync();
        var club = await app.NewClubAsync();
        await app.AsAsync(club.Head, async services =>
        {
            var squads = services.GetRequiredService<SquadActions>();
            return (await squads.SetNoticeAddressAsync((await squads.FindAsync(club.OwnSquad, Cancel)).OrThrow(), "list@lists.example.org", Cancel)).OrThrow();
        });
        await club.PublishAsync();

        (await app.AsAsync(club.Head, services => services.GetRequiredService<NoticeActions>().SendAsync(club.OwnSquad, 1, Cancel))).OrThrow();

        // It is tried again, because the first time failed.
        await UntilAsync(() => server.Secured >= 2, () => app.Clock.Now += Duration.FromSeconds(10));
        Assert.Empty(server.Taken);
        Assert.All(server.Heard, line => Assert.Matches("^(EHLO|STARTTLS)", line));
    }

    /// <summary>So that the one above is no mere matter of a server that never works.</summary>
    [Theory]
    [InlineData(SecureSocketOptions.StartTls)]
    [InlineData(SecureSocketOptions.SslOnConnect)]
    public async Task Whoever_took_its_certificate_would_tell_it_the_password(SecureSocketOptions security)
    {
        using var certificate = TestCertificate.Make("localhost");
        await using MailServer server = new(certificate, fromTheFirstByte: security == SecureSocketOptions.SslOnConnect);
        using SmtpClient careless = new() { ServerCertificateValidationCallback = (_, shown, _, _) => shown?.GetCertHashString() == certificate.GetCertHashString() };

        await careless.ConnectAsync("localhost", server.Port, security, Cancel);
        await careless.AuthenticateAsync("club", "secret-word", Cancel);
        await careless.DisconnectAsync(true, Cancel);

        Assert.Contains(server.Heard, line => line.StartsWith("AUTH PLAIN", StringComparison.Ordinal));
    }

    private static async Task UntilAsync(Func<bool> happened, Action meanwhile)
    {
        for (var i = 0; !happened(); i++)
        {
            Assert.True(i < 300, "It did not happen within half a minute.");
            meanwhile();
            await Task.Delay(100, Cancel);
        }
    }
}
