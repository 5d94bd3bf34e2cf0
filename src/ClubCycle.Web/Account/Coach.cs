using ClubCycle.Data.Accounts;

namespace ClubCycle.Web.Account;

/// <summary>The signed-in coach, as the database knows them now.</summary>
/// <param name="Squads">The squads they may look at: for a head coach and a welfare officer all of the club.</param>
public sealed record Coach(Guid UserId, Guid ClubId, string Name, ClubRole Role, IReadOnlySet<Guid> Squads)
{
    public bool IsHeadCoach => Role == ClubRole.HeadCoach;

    public bool IsWelfareOfficer => Role == ClubRole.WelfareOfficer;

    /// <summary>What they may look at they may change too.</summary>
    public bool MayChange => Role is ClubRole.HeadCoach or ClubRole.SquadCoach;

    public bool MayTouch(Guid squad) => Squads.Contains(squad);
}
