using ClubCycle.Data;
using ClubCycle.Data.Notices;
using ClubCycle.Data.Outbox;
using ClubCycle.Web.Features.Outbox;
using MailKit.Net.Smtp;
using Microsoft.Extensions.Options;
using MimeKit;
using NodaTime;

namespace ClubCycle.Web.Features.Notices;

/// <summary>Sends a notice of changes to its squad's address.</summary>
/// <remarks>
/// Once, unless the server took it and its answer was lost, or this program died before it could write that down: then a second copy with the
/// same Message-ID goes out.
/// </remarks>
internal sealed class SendNotice(IServiceScopeFactory scopes, IOptions<MailOptions> options, IClock clock) : IOutboxWork
{
    /// <summary>A notice speaks of the next days: after a day of trying it is too old to send.</summary>
    public static readonly Duration TooOld = Duration.FromDays(1);

    private static readonly TimeSpan LongestTry = TimeSpan.FromSeconds(90);
    private static readonly TimeSpan LongestAnswer = TimeSpan.FromSeconds(30);

    private readonly MailOptions _mail = options.Value;

    public string Kind => OutboxKinds.SendNotice;

    public async Task DoAsync(OutboxMessage message, CancellationToken cancel)
    {
        var notice = NoticeToSend.Read(message.Body);
        await using var scope = scopes.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentClub>().Use(message.ClubId);
        var notices = scope.ServiceProvider.GetRequiredService<NoticeStore>();
        if (clock.GetCurrentInstant() > message.CreatedAt + TooOld)
        {
            await notices.NoteAsync(message.SquadId, notice.Revision, "notice.given-up", cancel);
        }
        else if (await notices.AddressAsync(message.SquadId, cancel) is not { } address)
        {
            await notices.NoteAsync(message.SquadId, notice.Revision, "notice.address-gone", cancel);
        }
        else
        {
            using var patience = CancellationTokenSource.CreateLinkedTokenSource(cancel);
            patience.CancelAfter(LongestTry);
            using var mail = MailOf(notice, address, message.Id);
            await SendAsync(mail, patience.Token);
            await notices.NoteAsync(message.SquadId, notice.Revision, "notice.sent", cancel);
        }
    }

    private MimeMessage MailOf(NoticeToSend notice, string address, Guid id)
    {
        var from = MailboxAddress.Parse(_mail.From);
        var mail = new MimeMessage
        {
            MessageId = $"{id:N}@{from.Domain}",
            Date = clock.GetCurrentInstant().ToDateTimeOffset(),
            Subject = notice.Subject,
            Body = new TextPart("plain") { Text = notice.Text },
        };
        mail.From.Add(from);
        mail.To.Add(MailboxAddress.Parse(address));

        // RFC 2369, 3.2; and RFC 3834, 5, so that nobody's holiday note answers.
        mail.Headers.Add(HeaderId.ListUnsubscribe, $"<mailto:{from.Address}?subject=No%20more%20notices>");
        mail.Headers.Add("Auto-Submitted", "auto-generated");
        return mail;
    }

    private async Task SendAsync(MimeMessage mail, CancellationToken cancel)
    {
        try
        {
            using var server = new SmtpClient { Timeout = (int)LongestAnswer.TotalMilliseconds };
            await server.ConnectAsync(_mail.Host, _mail.Port, _mail.SocketOptions, cancel);
            if (!string.IsNullOrEmpty(_mail.User))
            {
                await server.AuthenticateAsync(_mail.User, _mail.Password ?? "", cancel);
            }

            await server.SendAsync(mail, cancel);

            // It is out; a server that does not part politely must not bring it back.
            await server.DisconnectAsync(false, cancel);
        }
        catch (Exception failed) when (failed is not OperationCanceledException)
        {
            // Servers repeat addresses and names in what they answer, and that must not reach a log.
            throw new MailFailedException(failed is SmtpCommandException refused ? $"The mail server answered {(int)refused.StatusCode}." : $"The mail could not be handed over: {failed.GetType().Name}.");
        }
    }
}
