using ClubCycle.Data.Accounts;

namespace ClubCycle.Web.Account;

/// <summary>Who may do what, by name. Which squads a coach may touch is asked of <see cref="CurrentCoach"/>, where the data is read.</summary>
public static class Policies
{
    /// <summary>Any coach of the club who is signed in.</summary>
    public const string Coach = nameof(Coach);

    /// <summary>Sees who read children's data and can protect a player.</summary>
    public const string WelfareOfficer = nameof(WelfareOfficer);

    /// <summary>May change the club itself: season dates, squads, people, templates of the club.</summary>
    public const string HeadCoach = nameof(HeadCoach);

    public static void AddClubCyclePolicies(this IServiceCollection services) => services
        .AddAuthorizationBuilder()
        .AddPolicy(Coach, policy => policy.RequireAuthenticatedUser().RequireClaim(CoachClaims.Club))
        .AddPolicy(HeadCoach, policy => policy.RequireAuthenticatedUser().RequireRole(nameof(ClubRole.HeadCoach)))
        .AddPolicy(WelfareOfficer, policy => policy.RequireAuthenticatedUser().RequireRole(nameof(ClubRole.WelfareOfficer)))
        .SetFallbackPolicy(new Microsoft.AspNetCore.Authorization.AuthorizationPolicyBuilder().RequireAuthenticatedUser().Build());
}
