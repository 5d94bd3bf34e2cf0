using System.Security.Claims;
using ClubCycle.Data;
using ClubCycle.Data.Accounts;
using ClubCycle.Data.Audit;
using ClubCycle.Planning;
using ClubCycle.Web.Hosting;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.EntityFrameworkCore;

namespace ClubCycle.Web.Account;

/// <summary>
/// Who is acting. Every query and action asks here first: the answer comes from the database each time, so that a coach who was taken
/// off a squad a minute ago cannot change it from a page that is still open.
/// </summary>
public sealed partial class CurrentCoach(AuthenticationStateProvider state, CurrentClub club, IClubDbFactory contexts, SignIns signIns, AccountTrail trail, CostlyWork costly, ILogger<CurrentCoach> log)
{
    public async Task<Result<Coach>> FindAsync(CancellationToken cancel = default)
    {
        var principal = (await state.GetAuthenticationStateAsync()).User;
        if (IdOf(principal, ClaimTypes.NameIdentifier) is not { } userId || IdOf(principal, CoachClaims.Club) is not { } clubId || IdOf(principal, SignIns.Claim) is not { } signIn)
        {
            return SignedOut;
        }

        club.Use(clubId);
        await using var db = await contexts.OpenAsync(cancel);
        var own = signIns.Living(db, userId).Where(s => s.Id == signIn);
        // In one question, since it is asked before everything else.
        var found = await db.Users.Where(u => u.Id == userId && u.ClubId == clubId).Select(u => new
        {
            u.DisplayName, u.Role, u.TwoFactorEnabled,
            SignIn = own.Select(s => new { s.SeenAt, s.ByPasskey }).SingleOrDefault(),
            ClubAsks = db.Clubs.Any(c => c.AsksSecondFactor),
            Squads = db.Squads.Where(s => u.Role == ClubRole.HeadCoach || u.Role == ClubRole.WelfareOfficer || db.SquadCoaches.Any(c => c.SquadId == s.Id && c.UserId == u.Id)).Select(s => s.Id).ToList(),
        }).AsSingleQuery().SingleOrDefaultAsync(cancel);
        if (found is not { SignIn: { } current })
        {
            return SignedOut;
        }

        if (AtTheScreen.IsSomebody)
        {
            await SignIns.UsedAsync(db, signIn, current.SeenAt, cancel);
        }

        return found.ClubAsks && SecondFactorDuty.IsOwed(found.Role, found.TwoFactorEnabled, current.ByPasskey)
            ? SecondFactorDuty.Owed
            : new Coach(userId, clubId, found.DisplayName, found.Role, found.Squads.ToHashSet());
    }

    /// <summary>The coach, if they may look at this squad. A squad of others is answered like one that does not exist.</summary>
    public async Task<Result<Coach>> ForSquadAsync(Guid squad, CancellationToken cancel = default) =>
        await OnlyAsync(await FindAsync(cancel), coach => coach.MayTouch(squad), NoSuchSquad, cancel);

    /// <summary>The coach, if they may change this squad.</summary>
    public async Task<Result<Coach>> ToChangeAsync(Guid squad, CancellationToken cancel = default) =>
        await OnlyAsync(await ForSquadAsync(squad, cancel), coach => coach.IsChanging, LooksOnly, cancel);

    /// <summary>The coach, if they may change anything at all.</summary>
    public async Task<Result<Coach>> ToChangeAsync(CancellationToken cancel = default) =>
        await OnlyAsync(await FindAsync(cancel), coach => coach.IsChanging, LooksOnly, cancel);

    /// <summary>Whoever is asking, if they are a welfare officer.</summary>
    public async Task<Result<Coach>> WelfareOfficerAsync(CancellationToken cancel = default) =>
        await OnlyAsync(await FindAsync(cancel), coach => coach.IsWelfareOfficer, WelfareOnly, cancel);

    /// <summary>The coach, if they are a head coach.</summary>
    public async Task<Result<Coach>> HeadAsync(CancellationToken cancel = default) =>
        await OnlyAsync(await FindAsync(cancel), coach => coach.IsHeadCoach, HeadOnly, cancel);

    /// <summary>The same coach, if they have not asked for too much costly work in the last minute; counts this.</summary>
    public Result<Coach> Counted(Result<Coach> found) => found is Result<Coach>.Ok(var coach) && !costly.Allows(coach.UserId) ? CostlyWork.TooOften : found;

    internal static Guid? IdOf(ClaimsPrincipal principal, string claim) => Guid.TryParse(principal.FindFirst(claim)?.Value, out var id) ? id : null;

    /// <summary>Whoever asks for what is not theirs is noted: in the log each time, in the audit trail once a minute.</summary>
    private async Task<Result<Coach>> OnlyAsync(Result<Coach> found, Func<Coach, bool> may, Problem otherwise, CancellationToken cancel)
    {
        if (found is not Result<Coach>.Ok(var coach) || may(coach))
        {
            return found;
        }

        Refused(coach.UserId, otherwise.Code);
        await trail.NoteRefusalAsync(coach.ClubId, coach.UserId, "access.refused", otherwise.Code, cancel);
        return otherwise;
    }

    private static Problem NoSuchSquad => new("squad.not-found", "There is no such squad, or you do not coach it. Go back and reload the list.");

    private static Problem LooksOnly => new("account.looks-only", "You may look at this and change nothing. Ask the squad's coach or a head coach to do it.");

    private static Problem WelfareOnly => new("account.welfare-officer-only", "Only a welfare officer can do this. A head coach can invite one under Club settings.");

    private static Problem HeadOnly => new("account.head-coach-only", "Only a head coach can do this. Ask yours to do it, or to make you one.");

    private static Problem SignedOut => new("account.signed-out", "You are signed out. Sign in again; nothing you saved is lost.");

    [LoggerMessage(LogLevel.Warning, "Person {Person} was refused: {Reason}.")]
    private partial void Refused(Guid person, string reason);
}
