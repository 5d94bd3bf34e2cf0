using ClubCycle.Data.Clubs;
using ClubCycle.Data.Notices;
using ClubCycle.Data.Plans;
using ClubCycle.Data.Squads;
using ClubCycle.Planning;
using ClubCycle.Planning.Replanning;
using ClubCycle.Web.Account;
using Microsoft.Extensions.Options;
using NodaTime;

namespace ClubCycle.Web.Features.Notices;

/// <summary>What a revision changed for players.</summary>
/// <param name="Text">Empty when nothing did within the days ahead.</param>
/// <param name="Address">Where it can be sent by e-mail now; null when it cannot.</param>
/// <param name="Sent">It was handed to the mail server, or is about to be.</param>
public sealed record Notice(int Revision, string Text, string? Address, bool Sent);

/// <summary>Notices of changes: to be read, copied and sent.</summary>
public sealed class NoticeActions(CurrentCoach coaches, RevisionStore revisions, SquadStore squads, ClubStore clubs, NoticeStore notices, IOptions<MailOptions> mail, IClock clock)
{
    /// <summary>The notice of a revision, as it was when that was published.</summary>
    public async Task<Result<Notice>> FindAsync(Guid squad, int revision, CancellationToken cancel = default)
    {
        if (!(await coaches.ForSquadAsync(squad, cancel)).TryGet(out _, out var problems)
            || !(await squads.FindAsync(squad, cancel)).TryGet(out var stored, out problems)
            || !(await clubs.FindAsync(cancel)).TryGet(out var club, out problems)
            || !(await revisions.FindAsync(squad, revision, cancel)).TryGet(out var plan, out problems))
        {
            return new Result<Notice>.Failed(problems);
        }

        var before = revision == 1 ? null : (await revisions.FindAsync(squad, revision - 1, cancel)).OrThrow();
        var all = await revisions.ListAsync(squad, cancel);
        var at = all.First(r => r.Number == revision).PublishedAt;
        var text = NoticeText.Of(stored.Squad.Name, ChangeNotice.Of(before, plan, at, DateTimeZoneProviders.Tzdb[club.TimeZone]));
        var sent = await notices.WasQueuedAsync(squad, revision, cancel);
        var sendable = mail.Value.IsSet && text.Length > 0 && !sent && revision == all[0].Number && clock.GetCurrentInstant() < at + SendNotice.TooOld;
        return new Notice(revision, text, sendable ? stored.NoticeAddress : null, sent);
    }

    /// <summary>Puts the latest revision's notice into the outbox; a worker sends it.</summary>
    public async Task<Result<Guid>> SendAsync(Guid squad, int revision, CancellationToken cancel = default)
    {
        if (!(await coaches.ToChangeAsync(squad, cancel)).TryGet(out var coach, out var problems) || !(await FindAsync(squad, revision, cancel)).TryGet(out var notice, out problems))
        {
            return new Result<Guid>.Failed(problems);
        }

        return notice.Sent || notice.Address is not null
            ? await notices.QueueAsync(squad, new NoticeToSend(revision, notice.Text.Split('\n')[0], notice.Text), coach.UserId, cancel)
            : new Problem("notice.cannot-be-sent", "This notice cannot be sent by e-mail: it is empty or no longer the latest, or no mail server or address is set. Copy it instead.");
    }
}
