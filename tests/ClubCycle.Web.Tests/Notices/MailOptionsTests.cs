using ClubCycle.Web.Features.Notices;

namespace ClubCycle.Web.Tests.Notices;

public sealed class MailOptionsTests
{
    [Fact]
    public void Without_a_host_nothing_is_asked() => Assert.Null(new MailOptions().Problem);

    [Fact]
    public void A_host_and_a_sender_are_enough() => Assert.Null(Good().Problem);

    [Theory]
    [InlineData("")]
    [InlineData("club@example.org\r\nBcc: all@example.org")]
    public void A_sender_must_be_one_address(string from)
    {
        var mail = Good();
        mail.From = from;

        Assert.StartsWith("Mail:From", mail.Problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(65536)]
    public void A_port_must_be_one(int port)
    {
        var mail = Good();
        mail.Port = port;

        Assert.StartsWith("Mail:Port", mail.Problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("mail.example.org", true)]
    [InlineData("127.0.0.1", false)]
    public void A_password_does_not_leave_the_machine_in_the_clear(string host, bool refused)
    {
        var mail = Good();
        (mail.Host, mail.User, mail.Security) = (host, "club", MailSecurity.None);

        Assert.Equal(refused, mail.Problem is not null);
    }

    private static MailOptions Good() => new() { Host = "mail.example.org", From = "club@example.org" };
}
