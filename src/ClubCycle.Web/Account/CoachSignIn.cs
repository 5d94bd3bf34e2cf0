using ClubCycle.Data.Accounts;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace ClubCycle.Web.Account;

/// <summary>Signs coaches in, by link too: whatever comes first, somebody with a second factor is asked for it.</summary>
internal sealed class CoachSignIn(
    UserManager<ClubUser> users, IHttpContextAccessor http, IUserClaimsPrincipalFactory<ClubUser> claims, IOptions<IdentityOptions> options,
    ILogger<SignInManager<ClubUser>> log, IAuthenticationSchemeProvider schemes, IUserConfirmation<ClubUser> confirmation)
    : SignInManager<ClubUser>(users, http, claims, options, log, schemes, confirmation)
{
    /// <summary>The claim about the way in that a one-time link leaves.</summary>
    public const string Link = "link";

    public Task<SignInResult> ByLinkAsync(ClubUser user) => SignInOrTwoFactorAsync(user, isPersistent: false, loginProvider: Link);
}
