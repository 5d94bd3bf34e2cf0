using ClubCycle.Data.Accounts;

namespace ClubCycle.Web.Features.Settings;

/// <summary>Roles in words.</summary>
internal static class RoleText
{
    public static IReadOnlyList<ClubRole> All { get; } = [ClubRole.SquadCoach, ClubRole.Assistant, ClubRole.HeadCoach, ClubRole.WelfareOfficer];

    public static string Name(ClubRole role) => role switch
    {
        ClubRole.HeadCoach => Say("head coach"),
        ClubRole.SquadCoach => Say("squad coach"),
        ClubRole.Assistant => Say("assistant"),
        ClubRole.WelfareOfficer => Say("welfare officer"),
        _ => throw new ArgumentOutOfRangeException(nameof(role), role, "Unknown role"),
    };

    public static string May(ClubRole role) => role switch
    {
        ClubRole.HeadCoach => Say("may change everything"),
        ClubRole.SquadCoach => Say("may change their squads"),
        ClubRole.Assistant => Say("may look at their squads"),
        ClubRole.WelfareOfficer => Say("may look at every squad, sees who read children's data, protects players"),
        _ => throw new ArgumentOutOfRangeException(nameof(role), role, "Unknown role"),
    };
}
