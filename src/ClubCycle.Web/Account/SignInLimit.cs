using System.Threading.RateLimiting;
using Microsoft.AspNetCore.RateLimiting;

namespace ClubCycle.Web.Account;

/// <summary>How often one address may try to sign in. Works beside the lock-out of a single account.</summary>
internal sealed class SignInLimit
{
    public const string Name = "sign-in";

    /// <summary>Setting <c>SignIn:TriesPerMinute</c>; a club behind one router shares an address.</summary>
    public const int DefaultTriesPerMinute = 30;

    public static void Add(RateLimiterOptions limits, int triesPerMinute)
    {
        limits.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
        limits.AddPolicy(Name, http => RateLimitPartition.GetFixedWindowLimiter(
            http.Connection.RemoteIpAddress?.ToString() ?? "",
            _ => new FixedWindowRateLimiterOptions { PermitLimit = triesPerMinute, Window = TimeSpan.FromMinutes(1) }));
    }
}
