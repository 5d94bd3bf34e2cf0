using System.Security.Claims;
using System.Threading.RateLimiting;
using ClubCycle.Planning;
using ClubCycle.Web.Account;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Extensions.Options;

namespace ClubCycle.Web.Hosting;

/// <summary>How often one person may ask in a minute for what takes work: plans over HTTP, imports, exports, pages to print and new links. Settings <c>Costly:…</c>.</summary>
public sealed class CostlyLimits : IValidateOptions<CostlyLimits>
{
    public const string Section = "Costly";

    /// <summary>A coach who gives a squad its links by hand stays far below.</summary>
    public int PerMinute { get; set; } = 60;

    public ValidateOptionsResult Validate(string? name, CostlyLimits options) =>
        options.PerMinute is < 1 or > 1_000_000 ? ValidateOptionsResult.Fail($"Costly:PerMinute is {options.PerMinute}; it must be 1 to 1000000.") : ValidateOptionsResult.Success;
}

/// <summary>One count for all of it, on this node.</summary>
public sealed partial class CostlyWork(IOptions<CostlyLimits> limits, OnceAMinute told, ILogger<CostlyWork> log) : IDisposable
{
    private readonly PartitionedRateLimiter<Guid> _limiter = PartitionedRateLimiter.Create<Guid, Guid>(person => RateLimitPartition.GetSlidingWindowLimiter(
        person, _ => new SlidingWindowRateLimiterOptions { PermitLimit = limits.Value.PerMinute, Window = TimeSpan.FromMinutes(1), SegmentsPerWindow = 6 }));

    public static Problem TooOften => new("limit.costly", "That was a lot in one minute. Wait a minute, then go on.");

    /// <summary>Counts one; false when this person had enough for this minute.</summary>
    public bool Allows(Guid person)
    {
        using var lease = _limiter.AttemptAcquire(person);
        if (!lease.IsAcquired && told.IsFirst($"costly {person}"))
        {
            HadEnough(person);
        }

        return lease.IsAcquired;
    }

    public void Dispose() => _limiter.Dispose();

    [LoggerMessage(LogLevel.Warning, "Person {Person} is told to wait: more costly work asked for than one may in a minute.")]
    private partial void HadEnough(Guid person);
}

internal static class CostlyEndpoints
{
    /// <summary>Counts each request of the person who is signed in.</summary>
    public static TBuilder CountAsCostly<TBuilder>(this TBuilder endpoints)
        where TBuilder : IEndpointConventionBuilder =>
        endpoints.AddEndpointFilter(async (context, next) =>
            CurrentCoach.IdOf(context.HttpContext.User, ClaimTypes.NameIdentifier) is not { } person || context.HttpContext.RequestServices.GetRequiredService<CostlyWork>().Allows(person)
                ? await next(context)
                : Wait(context.HttpContext.Response));

    private static ContentHttpResult Wait(HttpResponse response)
    {
        response.Headers.RetryAfter = "60";
        return TypedResults.Text(SayPlan(CostlyWork.TooOften.Message), statusCode: StatusCodes.Status429TooManyRequests);
    }
}
