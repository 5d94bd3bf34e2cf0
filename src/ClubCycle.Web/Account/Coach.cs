using ClubCycle.Data.Accounts;

namespace ClubCycle.Web.Account;

/// <summary>The signed-in coach, as the database knows them now.</summary>
/// <param name="Squads">The squads they may touch: for a head coach all of the club.</param>
public sealed record Coach(Guid UserId, Guid ClubId, string Name, ClubRole Role, IReadOnlySet<Guid> Squads)
{
    public bool IsHeadCoach => Role == ClubRole.HeadCoach;

    public bool MayTouch(Guid squad) => Squads.Contains(squad);
}
