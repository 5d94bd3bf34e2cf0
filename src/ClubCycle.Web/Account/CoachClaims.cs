using System.Security.Claims;
using ClubCycle.Data.Accounts;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace ClubCycle.Web.Account;

/// <summary>What the sign-in cookie says about a coach. It opens doors; each action asks the database again.</summary>
internal sealed class CoachClaims(UserManager<ClubUser> users, IOptions<IdentityOptions> options) : UserClaimsPrincipalFactory<ClubUser>(users, options)
{
    public const string Club = "club";

    protected override async Task<ClaimsIdentity> GenerateClaimsAsync(ClubUser user)
    {
        var identity = await base.GenerateClaimsAsync(user);
        identity.AddClaim(new Claim(Club, user.ClubId.ToString("D")));
        identity.AddClaim(new Claim(identity.RoleClaimType, user.Role.ToString()));
        if (user.Language is { } language)
        {
            identity.AddClaim(new Claim(LanguageChoice.Claim, language));
        }

        return identity;
    }
}
