using System.Threading.RateLimiting;
using ClubCycle.Web.Hosting;
using Microsoft.AspNetCore.RateLimiting;

namespace ClubCycle.Web.Account;

/// <summary>How often one address may try to sign in. Works beside the lock-out of a single account.</summary>
internal sealed partial class SignInLimit
{
    public const string Name = "sign-in";

    /// <summary>Setting <c>SignIn:TriesPerMinute</c>; a club behind one router shares an address.</summary>
    public const int DefaultTriesPerMinute = 30;

    public static void Add(RateLimiterOptions limits, int triesPerMinute)
    {
        limits.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
        limits.OnRejected = (refused, _) =>
        {
            if (refused.HttpContext.RequestServices.GetRequiredService<OnceAMinute>().IsFirst($"{Name} {refused.HttpContext.Connection.RemoteIpAddress}"))
            {
                Reached(refused.HttpContext.RequestServices.GetRequiredService<ILogger<SignInLimit>>(), refused.HttpContext.Connection.RemoteIpAddress);
            }

            return ValueTask.CompletedTask;
        };
        limits.AddPolicy(Name, http => RateLimitPartition.GetFixedWindowLimiter(
            http.Connection.RemoteIpAddress?.ToString() ?? "",
            _ => new FixedWindowRateLimiterOptions { PermitLimit = triesPerMinute, Window = TimeSpan.FromMinutes(1) }));
    }

    [LoggerMessage(LogLevel.Warning, "{Address} tried to sign in more often than an address may in a minute and is told to wait.")]
    private static partial void Reached(ILogger log, System.Net.IPAddress? address);
}
