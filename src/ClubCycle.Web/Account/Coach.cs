using ClubCycle.Data.Accounts;

namespace ClubCycle.Web.Account;

/// <summary>The signed-in coach, as the database knows them now.</summary>
/// <param name="Squads">The squads they may look at: for a head coach and a welfare officer all of the club.</param>
public sealed record Coach(Guid UserId, Guid ClubId, string Name, ClubRole Role, IReadOnlySet<Guid> Squads)
{
    public bool IsHeadCoach => Role == ClubRole.HeadCoach;

    public bool IsWelfareOfficer => Role == ClubRole.WelfareOfficer;

    /// <summary>What they may look at they may change too.</summary>
    public bool IsChanging => Role is ClubRole.HeadCoach or ClubRole.SquadCoach;

    public bool MayTouch(Guid squad) => Squads.Contains(squad);

    /// <summary>What screens ask before they offer a change. While it is not known who asks they offer it: the server asks again at each act.</summary>
    /// <param name="squad">Null for anything at all.</param>
    public static bool MayChange(Coach? coach, Guid? squad) => coach is null || (coach.IsChanging && (squad is not { } id || coach.MayTouch(id)));
}
