using ClubCycle.Data;
using ClubCycle.Data.Accounts;
using ClubCycle.Data.Audit;
using ClubCycle.Data.Clubs;
using ClubCycle.Data.Squads;
using ClubCycle.Planning;
using ClubCycle.Web.Account;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Web.Features.Settings;

/// <summary>A coach of the club with the squads they may change.</summary>
public sealed record CoachLine(Guid Id, string Name, string? Email, ClubRole Role, IReadOnlyList<Guid> Squads);

/// <summary>The club itself and its people, for head coaches.</summary>
public sealed class ClubActions(CurrentCoach coaches, ClubStore clubs, SquadStore squads, AuditStore audit, CoachInvitations invitations, IClubDbFactory contexts)
{
    public async Task<Result<ClubRow>> FindAsync(CancellationToken cancel = default) =>
        (await coaches.HeadAsync(cancel)).TryGet(out _, out var problems) ? await clubs.FindAsync(cancel) : new Result<ClubRow>.Failed(problems);

    public async Task<Result<int>> SaveAsync(string name, string timeZone, IsoDayOfWeek firstWeekday, int expectedVersion, CancellationToken cancel = default) =>
        (await coaches.HeadAsync(cancel)).TryGet(out var coach, out var problems)
            ? await clubs.SaveAsync(name, timeZone, firstWeekday, expectedVersion, coach.UserId, cancel)
            : new Result<int>.Failed(problems);

    /// <summary>Below which age a guardian is asked.</summary>
    public async Task<Result<int>> SetGuardianAgeAsync(int age, int expectedVersion, CancellationToken cancel = default) =>
        (await coaches.HeadAsync(cancel)).TryGet(out var coach, out var problems)
            ? await clubs.SetGuardianAgeAsync(age, expectedVersion, coach.UserId, cancel)
            : new Result<int>.Failed(problems);

    public async Task<IReadOnlyList<CoachLine>> PeopleAsync(CancellationToken cancel = default)
    {
        if (!(await coaches.HeadAsync(cancel)).TryGet(out var head, out _))
        {
            return [];
        }

        await using var db = await contexts.OpenAsync(cancel);
        var users = await db.Users.AsNoTracking().Where(u => u.ClubId == head.ClubId).OrderBy(u => u.Role).ThenBy(u => u.DisplayName).ToListAsync(cancel);
        var links = await db.SquadCoaches.AsNoTracking().ToListAsync(cancel);
        return [.. users.Select(u => new CoachLine(u.Id, u.DisplayName, u.Email, u.Role, [.. links.Where(l => l.UserId == u.Id).Select(l => l.SquadId)]))];
    }

    /// <summary>The token of a one-time sign-in link for a new coach.</summary>
    public Task<Result<string>> InviteAsync(string name, string email, ClubRole role, IReadOnlyCollection<Guid> of, CancellationToken cancel = default) =>
        invitations.InviteAsync(name, email, role, of, cancel);

    /// <summary>Gives a person another role; the club keeps a head coach.</summary>
    public Task<Result<Guid>> SetRoleAsync(Guid person, ClubRole role, CancellationToken cancel = default) => invitations.SetRoleAsync(person, role, cancel);

    /// <summary>Takes a person's account away; the club keeps a head coach.</summary>
    public Task<Result<Guid>> RemoveAsync(Guid person, CancellationToken cancel = default) => invitations.RemoveAsync(person, cancel);

    /// <summary>The token of a fresh one-time sign-in link.</summary>
    public Task<Result<string>> NewLinkAsync(Guid coach, CancellationToken cancel = default) => invitations.NewLinkAsync(coach, cancel);

    /// <summary>Signs a person out in every browser.</summary>
    public Task<Result<Guid>> EndSignInsAsync(Guid person, CancellationToken cancel = default) => invitations.EndSignInsAsync(person, cancel);

    /// <summary>Signs everybody of the club out, the asker too.</summary>
    public Task<Result<Guid>> EndAllSignInsAsync(CancellationToken cancel = default) => invitations.EndAllSignInsAsync(cancel);

    /// <summary>Whether head coaches and welfare officers must have a second factor.</summary>
    public async Task<Result<bool>> AskSecondFactorAsync(bool asks, CancellationToken cancel = default) =>
        (await coaches.HeadAsync(cancel)).TryGet(out var head, out var problems) ? await clubs.AskSecondFactorAsync(asks, head.UserId, cancel) : new Result<bool>.Failed(problems);

    public async Task<Result<Guid>> SetCoachAsync(Guid squad, Guid person, bool mayChange, CancellationToken cancel = default)
    {
        if (!(await coaches.HeadAsync(cancel)).TryGet(out var head, out var problems))
        {
            return new Result<Guid>.Failed(problems);
        }

        var now = await squads.CoachesAsync(squad, cancel);
        return await squads.SetCoachesAsync(squad, [.. mayChange ? now.Append(person).Distinct() : now.Where(id => id != person)], head.UserId, cancel);
    }

    public async Task<IReadOnlyList<AuditRow>> LatestAsync(CancellationToken cancel = default) =>
        (await coaches.HeadAsync(cancel)).TryGet(out _, out _) ? await audit.LatestAsync(50, cancel) : [];
}
