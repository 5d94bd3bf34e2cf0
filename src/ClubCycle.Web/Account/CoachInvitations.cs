using System.Net.Mail;
using ClubCycle.Data;
using ClubCycle.Data.Accounts;
using ClubCycle.Data.Audit;
using ClubCycle.Data.Squads;
using ClubCycle.Planning;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace ClubCycle.Web.Account;

/// <summary>Brings further coaches into the club: an account without a password, and a link to sign in once and choose one.</summary>
public sealed class CoachInvitations(CurrentCoach current, UserManager<ClubUser> users, IClubDbFactory contexts, SignInLinks links, SignIns signIns, AccountTrail trail)
{
    /// <summary>The token of a sign-in link, shown once to the head coach to hand over.</summary>
    public async Task<Result<string>> InviteAsync(string name, string email, ClubRole role, IReadOnlyCollection<Guid> squads, CancellationToken cancel = default)
    {
        if (!(await current.HeadAsync(cancel)).TryGet(out var head, out var problems))
        {
            return new Result<string>.Failed(problems);
        }

        if (TypedText.NameProblem(name, ClubUser.LongestName, "account.name", "coach's name", "name") is { } unreadable)
        {
            return unreadable;
        }

        if (email.Length > 254 || !MailAddress.TryCreate(email.Trim(), out _))
        {
            return new Problem("account.email-wrong", "Write the coach's name and an e-mail address such as coach@example.org.");
        }

        var coach = new ClubUser { Id = NewId.Create(), ClubId = head.ClubId, DisplayName = TypedText.Tidy(name), Email = email.Trim(), UserName = email.Trim(), Role = role };
        if (await users.CreateAsync(coach) is { Succeeded: false } refused)
        {
            return new Result<string>.Failed(AccountProblems.Of(refused));
        }

        await using var db = await contexts.OpenAsync(cancel);
        var known = await db.Squads.Where(s => squads.Contains(s.Id)).Select(s => s.Id).ToListAsync(cancel);
        db.SquadCoaches.AddRange(known.Select(squad => new SquadCoachRow { ClubId = head.ClubId, SquadId = squad, UserId = coach.Id }));
        await db.SaveChangesAsync(cancel);
        await NoteAsync(head, coach.Id, "account.invited", cancel);
        return await links.CreateAsync(coach.Id, cancel);
    }

    /// <summary>Gives a person another role. Their open screens end within a minute.</summary>
    public async Task<Result<Guid>> SetRoleAsync(Guid person, ClubRole role, CancellationToken cancel = default)
    {
        if (!(await FindAsync(person, role == ClubRole.HeadCoach, cancel)).TryGet(out var found, out var problems))
        {
            return new Result<Guid>.Failed(problems);
        }

        found.User.Role = role;
        if (await users.UpdateSecurityStampAsync(found.User) is { Succeeded: false } refused)
        {
            return new Result<Guid>.Failed(AccountProblems.Of(refused));
        }

        await NoteAsync(found.Head, person, role switch
        {
            ClubRole.HeadCoach => "account.made-head-coach",
            ClubRole.SquadCoach => "account.made-squad-coach",
            ClubRole.Assistant => "account.made-assistant",
            ClubRole.WelfareOfficer => "account.made-welfare-officer",
            _ => throw new InvalidOperationException($"Unknown role {role}"),
        }, cancel);
        return person;
    }

    /// <summary>Takes a person's account away. What they did stays, without their name.</summary>
    public async Task<Result<Guid>> RemoveAsync(Guid person, CancellationToken cancel = default)
    {
        if (!(await FindAsync(person, false, cancel)).TryGet(out var found, out var problems))
        {
            return new Result<Guid>.Failed(problems);
        }

        if (await users.DeleteAsync(found.User) is { Succeeded: false } refused)
        {
            return new Result<Guid>.Failed(AccountProblems.Of(refused));
        }

        await NoteAsync(found.Head, person, "account.removed", cancel);
        return person;
    }

    /// <summary>Ends a person's sign-ins in every browser, at once.</summary>
    public async Task<Result<Guid>> EndSignInsAsync(Guid person, CancellationToken cancel = default)
    {
        if (!(await FindAsync(person, staysHead: true, cancel)).TryGet(out var found, out var problems))
        {
            return new Result<Guid>.Failed(problems);
        }

        await signIns.EndAllAsync(person, cancel);
        await NoteAsync(found.Head, person, "account.sign-ins-ended", cancel);
        return person;
    }

    /// <summary>Ends everybody's in the club, the head coach's own too.</summary>
    public async Task<Result<Guid>> EndAllSignInsAsync(CancellationToken cancel = default)
    {
        if (!(await current.HeadAsync(cancel)).TryGet(out var head, out var problems))
        {
            return new Result<Guid>.Failed(problems);
        }

        await signIns.EndAllOfClubAsync(head.ClubId, cancel);
        await trail.NoteAsync(head.ClubId, head.UserId, "account.all-sign-ins-ended", cancel: cancel);
        return head.ClubId;
    }

    /// <summary>A person of the head coach's club; the last head coach only when one is left afterwards.</summary>
    private async Task<Result<(Coach Head, ClubUser User)>> FindAsync(Guid person, bool staysHead, CancellationToken cancel)
    {
        if (!(await current.HeadAsync(cancel)).TryGet(out var head, out var problems))
        {
            return new Result<(Coach, ClubUser)>.Failed(problems);
        }

        if (await users.Users.SingleOrDefaultAsync(u => u.Id == person && u.ClubId == head.ClubId, cancel) is not { } user)
        {
            return NoSuchCoach;
        }

        return user.Role == ClubRole.HeadCoach && !staysHead && !await users.Users.AnyAsync(u => u.ClubId == head.ClubId && u.Id != person && u.Role == ClubRole.HeadCoach, cancel)
            ? new Problem("account.last-head-coach", "This is the club's last head coach. Make somebody else a head coach first.")
            : (head, user);
    }

    /// <summary>A fresh link for a coach who lost the last one or forgot the password.</summary>
    public async Task<Result<string>> NewLinkAsync(Guid coach, CancellationToken cancel = default)
    {
        if (!current.Counted(await current.HeadAsync(cancel)).TryGet(out var head, out var problems))
        {
            return new Result<string>.Failed(problems);
        }

        await using var db = await contexts.OpenAsync(cancel);
        if (!await db.Users.AnyAsync(u => u.Id == coach && u.ClubId == head.ClubId, cancel))
        {
            return NoSuchCoach;
        }

        await NoteAsync(head, coach, "account.link-made", cancel);
        return await links.CreateAsync(coach, cancel);
    }

    // The id alone, so that nobody's name outlives the account.
    private Task NoteAsync(Coach head, Guid whose, string what, CancellationToken cancel) => trail.NoteAsync(head.ClubId, head.UserId, what, whose.ToString("D"), cancel);

    private static Problem NoSuchCoach => new("account.not-found", "There is no such coach. Reload the list.");
}
