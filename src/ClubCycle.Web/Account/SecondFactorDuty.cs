using ClubCycle.Data.Accounts;
using ClubCycle.Planning;
using Microsoft.AspNetCore.Authorization;

namespace ClubCycle.Web.Account;

/// <summary>
/// Head coaches and welfare officers of a club that asks for it reach nothing but their account before they have a second factor. They see or change
/// what is stored of every child; squad coaches and assistants see their own squads, and it is theirs to choose.
/// </summary>
internal static class SecondFactorDuty
{
    public static Problem Owed { get; } = new("account.second-factor-owed", "Your club asks head coaches and welfare officers for a second factor. Set yours up under Account, then go on.");

    /// <summary>An app's code is asked at each sign-in once it is on; a passkey counts for the sign-in in which it was shown.</summary>
    public static bool IsOwed(ClubRole role, bool codeIsOn, bool byPasskey) => role is ClubRole.HeadCoach or ClubRole.WelfareOfficer && !codeIsOn && !byPasskey;

    /// <summary>Leads who owes one to setting it up; every action asks again through <see cref="CurrentCoach"/>.</summary>
    public static void UseSecondFactorDuty(this IApplicationBuilder app) => app.Use(async (http, next) =>
    {
        if (!IsGuarded(http) || !await IsOwedAsync(http.RequestServices.GetRequiredService<CurrentCoach>(), http.RequestAborted))
        {
            await next(http);
        }
        else if (HttpMethods.IsGet(http.Request.Method) && http.Request.GetTypedHeaders().Accept.Any(type => type.MediaType == "text/html"))
        {
            http.Response.Redirect(SecondFactor.Path);
        }
        else
        {
            http.Response.StatusCode = StatusCodes.Status403Forbidden;
        }
    });

    private static bool IsGuarded(HttpContext http) =>
        (http.User.IsInRole(nameof(ClubRole.HeadCoach)) || http.User.IsInRole(nameof(ClubRole.WelfareOfficer)))
        && !http.Request.Path.StartsWithSegments("/account")
        && http.GetEndpoint() is { } endpoint && endpoint.Metadata.GetMetadata<IAllowAnonymous>() is null;

    /// <summary>Whether it is this that keeps somebody from going on.</summary>
    public static async Task<bool> IsOwedAsync(CurrentCoach coach, CancellationToken cancel) => await coach.FindAsync(cancel) is Result<Coach>.Failed { First: var problem } && problem == Owed;
}
