using System.Net;
using ClubCycle.Planning.Squads;
using MailKit.Security;

namespace ClubCycle.Web.Features.Notices;

/// <summary>The mail server that notices go out through, settings <c>Mail:…</c>. Without a host no e-mail is sent and no screen offers it.</summary>
public sealed class MailOptions
{
    public const string Section = "Mail";

    public string Host { get; set; } = "";

    /// <summary>587 is for mail handed in by programs (RFC 6409, 3.1); 465 goes with <see cref="MailSecurity.Tls"/> (RFC 8314, 7.3).</summary>
    public int Port { get; set; } = 587;

    /// <summary>Empty when the server asks for none.</summary>
    public string? User { get; set; }

    public string? Password { get; set; }

    /// <summary>The address that notices come from; answers and wishes to get no more go there.</summary>
    public string From { get; set; } = "";

    public MailSecurity Security { get; set; } = MailSecurity.StartTls;

    public bool IsSet => !string.IsNullOrWhiteSpace(Host);

    internal SecureSocketOptions SocketOptions => Security switch
    {
        MailSecurity.None => SecureSocketOptions.None,
        MailSecurity.StartTls => SecureSocketOptions.StartTls,
        MailSecurity.Tls => SecureSocketOptions.SslOnConnect,
        _ => throw new InvalidOperationException($"Unknown security {Security}"),
    };

    /// <summary>What is wrong with the settings, named by their keys; null when nothing is.</summary>
    internal string? Problem =>
        !IsSet ? null
        : !NoticeAddress.Create(From).TryGet(out var from, out _) || from is null ? "Mail:From must be one e-mail address, such as notices@example.org."
        : Port is < 1 or > 65535 ? $"Mail:Port is {Port}; it must be 1 to 65535, usually 587."
        : !string.IsNullOrEmpty(User) && Security == MailSecurity.None && !IsThisMachine ? "Mail:Security is None, so Mail:Password would travel in the clear. Set Mail:Security to StartTls or Tls."
        : null;

    private bool IsThisMachine => Host == "localhost" || (IPAddress.TryParse(Host, out var address) && IPAddress.IsLoopback(address));
}

public enum MailSecurity
{
    /// <summary>In the clear: for a relay on the same machine or network.</summary>
    None,

    /// <summary>Starts in the clear and refuses to go on without encryption.</summary>
    StartTls,

    /// <summary>Encrypted from the first byte.</summary>
    Tls,
}
