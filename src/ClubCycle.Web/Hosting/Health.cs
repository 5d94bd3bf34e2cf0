using System.Diagnostics;
using ClubCycle.Data;
using ClubCycle.Data.Backups;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Diagnostics.HealthChecks;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Diagnostics.HealthChecks;
using NodaTime;

namespace ClubCycle.Web.Hosting;

/// <summary>Whether the process lives, and whether it can work and will go on doing so. Both answer one word to anybody; what is wrong is in the log.</summary>
internal static class Health
{
    public const string Live = "/health/live";
    public const string Ready = "/health/ready";

    private const string ToWork = "ready";

    public static void AddHealth(this IServiceCollection services)
    {
        services.AddSingleton<RecentHealth>();
        services.AddSingleton<SchemaIsCurrent>();
        services.AddHealthChecks()
            .AddCheck<SchemaIsCurrent>("database", tags: [ToWork], timeout: TimeSpan.FromSeconds(4))
            .AddCheck<KeysAreReadable>("keys", tags: [ToWork], timeout: TimeSpan.FromSeconds(4))
            .AddCheck<BackupIsRecent>("backup", HealthStatus.Degraded, tags: [ToWork], timeout: TimeSpan.FromSeconds(4));
    }

    public static void MapHealth(this WebApplication app)
    {
        app.MapHealthChecks(Live, new HealthCheckOptions { Predicate = _ => false }).AllowAnonymous();
        app.MapGet(Ready, async (RecentHealth health, Drain drain, HttpResponse response, CancellationToken cancel) =>
        {
            var status = drain.HasBegun ? HealthStatus.Unhealthy : await health.AskAsync(cancel);
            response.Headers.CacheControl = "no-store";
            response.StatusCode = status == HealthStatus.Unhealthy ? StatusCodes.Status503ServiceUnavailable : StatusCodes.Status200OK;
            return status.ToString();
        }).AllowAnonymous().ExcludeFromDescription();
    }

    /// <summary>Asks at most once in two seconds, however often strangers ask us.</summary>
    internal sealed class RecentHealth(HealthCheckService checks) : IDisposable
    {
        private static readonly TimeSpan Fresh = TimeSpan.FromSeconds(2);

        private readonly SemaphoreSlim _one = new(1);
        private (long At, HealthStatus Status)? _last;

        public async Task<HealthStatus> AskAsync(CancellationToken cancel)
        {
            await _one.WaitAsync(cancel);
            try
            {
                if (_last is not { } last || Stopwatch.GetElapsedTime(last.At) > Fresh)
                {
                    var report = await checks.CheckHealthAsync(check => check.Tags.Contains(ToWork), cancel);
                    _last = last = (Stopwatch.GetTimestamp(), report.Status);
                }

                return last.Status;
            }
            finally
            {
                _one.Release();
            }
        }

        public void Dispose() => _one.Dispose();
    }

    /// <summary>The database answers, and every migration of this program is in it. That does not change under a program that runs, and who migrates to the next version keeps the list to themselves meanwhile.</summary>
    private sealed class SchemaIsCurrent(IDbContextFactory<ClubCycleDb> contexts) : IHealthCheck
    {
        private volatile bool _current;

        public async Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default)
        {
            await using var db = await contexts.CreateDbContextAsync(cancellationToken);
            if (_current)
            {
                await db.Database.ExecuteSqlAsync($"select 1", cancellationToken);
                return HealthCheckResult.Healthy();
            }

            var missing = (await db.Database.GetPendingMigrationsAsync(cancellationToken)).Count();
            _current = missing == 0;
            return _current ? HealthCheckResult.Healthy() : HealthCheckResult.Unhealthy($"{missing} migrations are missing. Run: ClubCycle.Web migrate.");
        }
    }

    /// <summary>What one node encrypts, each node with the same key ring can read.</summary>
    private sealed class KeysAreReadable(IDataProtectionProvider protection) : IHealthCheck
    {
        public Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default)
        {
            var keys = protection.CreateProtector("health");
            return Task.FromResult(keys.Unprotect(keys.Protect("read me")) == "read me" ? HealthCheckResult.Healthy() : HealthCheckResult.Unhealthy("The key ring does not give back what it took."));
        }
    }

    /// <summary>An old backup stops nobody's work.</summary>
    private sealed class BackupIsRecent(LastBackup backup, IClock clock) : IHealthCheck
    {
        public async Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default) =>
            await backup.IsLateAsync(clock.GetCurrentInstant(), cancellationToken) ? HealthCheckResult.Degraded("The last backup is older than 26 hours, or there is none. Run: ClubCycle.Web backup.") : HealthCheckResult.Healthy();
    }
}
