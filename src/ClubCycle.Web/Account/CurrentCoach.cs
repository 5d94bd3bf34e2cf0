using System.Security.Claims;
using ClubCycle.Data;
using ClubCycle.Data.Accounts;
using ClubCycle.Planning;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.EntityFrameworkCore;

namespace ClubCycle.Web.Account;

/// <summary>
/// Who is acting. Every query and action asks here first: the answer comes from the database each time, so that a coach who was taken
/// off a squad a minute ago cannot change it from a page that is still open.
/// </summary>
public sealed class CurrentCoach(AuthenticationStateProvider state, CurrentClub club, IClubDbFactory contexts, SignIns signIns)
{
    public async Task<Result<Coach>> FindAsync(CancellationToken cancel = default)
    {
        var principal = (await state.GetAuthenticationStateAsync()).User;
        if (IdOf(principal, ClaimTypes.NameIdentifier) is not { } userId || IdOf(principal, CoachClaims.Club) is not { } clubId
            || !await signIns.LivesAsync(principal, used: AtTheScreen.IsSomebody, cancel))
        {
            return SignedOut;
        }

        club.Use(clubId);
        await using var db = await contexts.OpenAsync(cancel);
        if (await db.Users.AsNoTracking().SingleOrDefaultAsync(u => u.Id == userId && u.ClubId == clubId, cancel) is not { } user)
        {
            return SignedOut;
        }

        var squads = await db.Squads.Where(s => user.Role == ClubRole.HeadCoach || user.Role == ClubRole.WelfareOfficer || db.SquadCoaches.Any(c => c.SquadId == s.Id && c.UserId == userId)).Select(s => s.Id).ToListAsync(cancel);
        return new Coach(user.Id, user.ClubId, user.DisplayName, user.Role, squads.ToHashSet());
    }

    /// <summary>The coach, if they may look at this squad. A squad of others is answered like one that does not exist.</summary>
    public async Task<Result<Coach>> ForSquadAsync(Guid squad, CancellationToken cancel = default) => await FindAsync(cancel) switch
    {
        Result<Coach>.Ok(var coach) when !coach.MayTouch(squad) => new Problem("squad.not-found", "There is no such squad, or you do not coach it. Go back and reload the list."),
        var found => found,
    };

    /// <summary>The coach, if they may change this squad.</summary>
    public async Task<Result<Coach>> ToChangeAsync(Guid squad, CancellationToken cancel = default) => Changing(await ForSquadAsync(squad, cancel));

    /// <summary>The coach, if they may change anything at all.</summary>
    public async Task<Result<Coach>> ToChangeAsync(CancellationToken cancel = default) => Changing(await FindAsync(cancel));

    /// <summary>Whoever is asking, if they are a welfare officer.</summary>
    public async Task<Result<Coach>> WelfareOfficerAsync(CancellationToken cancel = default) => await FindAsync(cancel) switch
    {
        Result<Coach>.Ok(var coach) when !coach.IsWelfareOfficer => new Problem("account.welfare-officer-only", "Only a welfare officer can do this. A head coach can invite one under Club settings."),
        var found => found,
    };

    /// <summary>The coach, if they are a head coach.</summary>
    public async Task<Result<Coach>> HeadAsync(CancellationToken cancel = default) => await FindAsync(cancel) switch
    {
        Result<Coach>.Ok(var coach) when !coach.IsHeadCoach => new Problem("account.head-coach-only", "Only a head coach can do this. Ask yours to do it, or to make you one."),
        var found => found,
    };

    internal static Guid? IdOf(ClaimsPrincipal principal, string claim) => Guid.TryParse(principal.FindFirst(claim)?.Value, out var id) ? id : null;

    private static Result<Coach> Changing(Result<Coach> found) => found switch
    {
        Result<Coach>.Ok(var coach) when !coach.MayChange => new Problem("account.looks-only", "You may look at this and change nothing. Ask the squad's coach or a head coach to do it."),
        _ => found,
    };

    private static Problem SignedOut => new("account.signed-out", "You are signed out. Sign in again; nothing you saved is lost.");
}
