using ClubCycle.Data.Accounts;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Components.Server;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace ClubCycle.Web.Account;

/// <summary>Asks once a minute whether the person behind an open page may still be there; a changed security stamp ends the page.</summary>
internal sealed class CoachRevalidation(ILoggerFactory logs, IServiceScopeFactory scopes, IOptions<IdentityOptions> options) : RevalidatingServerAuthenticationStateProvider(logs)
{
    protected override TimeSpan RevalidationInterval => TimeSpan.FromMinutes(1);

    protected override async Task<bool> ValidateAuthenticationStateAsync(AuthenticationState authenticationState, CancellationToken cancellationToken)
    {
        await using var scope = scopes.CreateAsyncScope();
        var users = scope.ServiceProvider.GetRequiredService<UserManager<ClubUser>>();
        return await scope.ServiceProvider.GetRequiredService<SignIns>().LivesAsync(authenticationState.User, used: false, cancellationToken)
            && await users.GetUserAsync(authenticationState.User) is { } user
            && await users.GetSecurityStampAsync(user) == authenticationState.User.FindFirst(options.Value.ClaimsIdentity.SecurityStampClaimType)?.Value;
    }
}
