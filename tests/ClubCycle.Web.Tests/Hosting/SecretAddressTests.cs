using ClubCycle.Web.Hosting;
using Microsoft.Extensions.Logging;

namespace ClubCycle.Web.Tests.Hosting;

public sealed class SecretAddressTests
{
    [Theory]
    [InlineData("GET /calendar/abc_-123.ics took 3 ms", "GET /calendar/… took 3 ms")]
    [InlineData("http://host/p/abcDEF?x=1", "http://host/p/…?x=1")]
    [InlineData("/account/sign-in-link/a%2Fb.", "/account/sign-in-link/…")]
    [InlineData("/CALENDAR/abc.ics", "/CALENDAR/…")]
    [InlineData("/sign-in?ReturnUrl=%2Fp%2FAbCdEfGhIjKlMnOpQrStUvWxYz0123456789_-AbCdE", "/sign-in?ReturnUrl=%2Fp%…")]
    [InlineData("no such page: AbCdEfGhIjKlMnOpQrStUvWxYz0123456789_-AbCdE.", "no such page: ….")]
    [InlineData("/squads/abc", "/squads/abc")]
    [InlineData("/squads/0b5f66e0-9623-4a7d-8f2b-6fc3c2dfeceb", "/squads/0b5f66e0-9623-4a7d-8f2b-6fc3c2dfeceb")]
    public void Logs_never_hold_the_secret_part_of_an_address(string line, string masked) =>
        Assert.Equal(masked, SecretAddresses.Masked(line));

    [Fact]
    public void Exceptions_are_masked_too()
    {
        var line = QuietConsole.LineOf("12:00:00Z", LogLevel.Error, "Some.Category", "failed", new InvalidOperationException("at /p/secret"));

        Assert.DoesNotContain("secret", line, StringComparison.Ordinal);
        Assert.StartsWith("12:00:00Z error Category: failed", line, StringComparison.Ordinal);
    }

    /// <summary>ASVS 16.4.1.</summary>
    [Fact]
    public void A_value_with_line_ends_forges_no_line()
    {
        const string forged = "12:00:01Z warning CurrentCoach: all is well";

        var log = QuietConsole.LineOf("12:00:00Z", LogLevel.Error, "Some.Category", $"no squad x\r\n{forged}\u2028{forged}", new InvalidOperationException($"x\n{forged}"));

        Assert.DoesNotContain(log.Split('\r', '\n', '\u2028'), line => line.StartsWith(forged, StringComparison.Ordinal));
        Assert.StartsWith($"12:00:00Z error Category: no squad x  {forged}", log, StringComparison.Ordinal);
    }
}
