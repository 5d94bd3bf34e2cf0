using System.Security.Claims;
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

    /// <summary>The claim about the way in that a passkey leaves.</summary>
    public const string Passkey = "passkey";

    /// <summary>Whether a passkey of somebody was shown, which signs them in: it is both factors, so no code is asked, and it gets past a lock as a link does.</summary>
    public async Task<bool> ByPasskeyAsync(string credential)
    {
        if (credential.Length == 0 || !await IsAskedAsync()
            || await PerformPasskeyAssertionAsync(credential) is not { Succeeded: true } shown
            || !(await UserManager.AddOrUpdatePasskeyAsync(shown.User, shown.Passkey)).Succeeded)
        {
            return false;
        }

        await SignInWithClaimsAsync(shown.User, isPersistent: false, [new Claim(ClaimTypes.AuthenticationMethod, Passkey)]);
        return true;
    }

    /// <summary>A new key that answers the challenge given to this person; null for any other answer.</summary>
    public async Task<UserPasskeyInfo?> NewPasskeyAsync(ClubUser user, string credential) =>
        credential.Length > 0 && await IsAskedAsync() && await PerformPasskeyAttestationAsync(credential) is { Succeeded: true } made && made.UserEntity.Id == user.Id.ToString("D")
            ? made.Passkey
            : null;

    /// <summary>A challenge lies with the browser for some minutes; without one the library throws.</summary>
    private async Task<bool> IsAskedAsync() => (await Context.AuthenticateAsync(IdentityConstants.TwoFactorUserIdScheme)).Succeeded;

    public Task<SignInResult> ByLinkAsync(ClubUser user) => SignInOrTwoFactorAsync(user, isPersistent: false, loginProvider: Link);
}
