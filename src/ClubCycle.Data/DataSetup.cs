using System.Data.Common;
using System.Diagnostics;
using ClubCycle.Data.Audit;
using ClubCycle.Data.Backups;
using ClubCycle.Data.Clubs;
using ClubCycle.Data.Demo;
using ClubCycle.Data.Edits;
using ClubCycle.Data.Embedded;
using ClubCycle.Data.Feeds;
using ClubCycle.Data.FirstSteps;
using ClubCycle.Data.Fixtures;
using ClubCycle.Data.Links;
using ClubCycle.Data.Live;
using ClubCycle.Data.Notices;
using ClubCycle.Data.Outbox;
using ClubCycle.Data.Plans;
using ClubCycle.Data.Players;
using ClubCycle.Data.Seasons;
using ClubCycle.Data.Squads;
using ClubCycle.Data.Templates;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Npgsql;

namespace ClubCycle.Data;

public static class DataSetup
{
    private static readonly TimeSpan BetweenTries = TimeSpan.FromSeconds(2);

    /// <summary>Longer than a backup of a large database takes.</summary>
    private static readonly TimeSpan LongestWait = TimeSpan.FromMinutes(10);

    /// <summary>Two nodes', with what feeds and backups have of their own, stay well below the 100 that PostgreSQL allows by default (its documentation). More at once is slower, not faster.</summary>
    private const int MostConnections = 24;

    /// <summary>A page asks the same some dozens of questions again and again: each connection has PostgreSQL keep what it made of them.</summary>
    private const int MostPrepared = 200;

    /// <summary>Whoever finds all connections in use waits in line.</summary>
    private const int SecondsInLine = 30;

    /// <summary>The context, its factories and the stores. The host adds an <c>IClock</c> and sets <see cref="CurrentClub"/> for each scope.</summary>
    public static IServiceCollection AddClubCycleData(this IServiceCollection services, string connectionString)
    {
        var pooled = Pooled(connectionString);
        services.AddDbContextFactory<ClubCycleDb>(options => Configure(options, pooled));
        services.AddSingleton<PublishedPlans>();
        services.AddSingleton<OutboxStore>();
        services.AddSingleton<ClubChanges>();
        services.AddSingleton(_ => new PollStore(connectionString));
        services.AddSingleton<PollDays>();
        services.AddHostedService(s => s.GetRequiredService<PollDays>());
        services.AddHostedService(s => new ChangeListener(connectionString, s.GetRequiredService<ClubChanges>(), s.GetRequiredService<ILogger<ChangeListener>>()));
        services.AddScoped<CurrentClub>();
        services.AddScoped<IClubDbFactory, ClubDbFactory>();
        services.AddScoped<AuditStore>();
        services.AddSingleton<AccountTrail>();
        services.AddScoped<ClubStore>();
        services.AddScoped<SquadStore>();
        services.AddScoped<FirstStepsStore>();
        services.AddScoped<SampleStore>();
        services.AddScoped<SeasonStore>();
        services.AddScoped<ClosedDayStore>();
        services.AddScoped<SeasonPreviews>();
        services.AddScoped<NextSeasonStore>();
        services.AddScoped<FixtureStore>();
        services.AddScoped<TemplateStore>();
        services.AddScoped<EditStore>();
        services.AddScoped<LastSaveStore>();
        services.AddScoped<PinStore>();
        services.AddScoped<PhaseLengthStore>();
        services.AddScoped<AcceptedFindingStore>();
        services.AddScoped<PlanStore>();
        services.AddScoped<RevisionStore>();
        services.AddScoped<NoticeStore>();
        services.AddScoped<PlayerStore>();
        services.AddScoped<GuardianStore>();
        services.AddScoped<TestResultStore>();
        services.AddScoped<WelfareStore>();
        services.AddScoped<PersonFileStore>();
        services.AddScoped<RetentionStore>();
        services.AddScoped<LinkStore>();
        services.AddScoped<FeedStore>();
        services.AddScoped<FeedVariants>();
        services.AddSingleton<DemoClub>();
        services.AddSingleton<LastBackup>();
        return services;
    }

    /// <summary>
    /// Brings the schema up to date, as the role that owns it. Once a release in production, at start on a laptop. Nodes of the version before may be at work: whoever wants a table that we wait for
    /// waits behind us, so we wait for half a second, step back, and come again.
    /// </summary>
    /// <exception cref="DatabaseUnavailableException">Somebody kept a table to themselves all the time.</exception>
    public static async Task MigrateAsync(string ownerConnectionString, CancellationToken cancel = default)
    {
        var options = new DbContextOptionsBuilder<ClubCycleDb>();

        // The owner's connection stays open no longer than it is needed.
        Configure(options, new NpgsqlConnectionStringBuilder(ownerConnectionString) { Pooling = false }.ConnectionString);
        for (var since = Stopwatch.StartNew(); ; await Task.Delay(BetweenTries, cancel))
        {
            await using var db = new ClubCycleDb(options.Options);
            try
            {
                await db.Database.OpenConnectionAsync(cancel);
                await db.Database.ExecuteSqlAsync($"set lock_timeout = '500ms'", cancel);
                await db.Database.MigrateAsync(cancel);
                return;
            }
            catch (Exception busy) when (busy.GetBaseException() is PostgresException { SqlState: PostgresErrorCodes.LockNotAvailable })
            {
                if (since.Elapsed > LongestWait)
                {
                    throw DatabaseUnavailableException.TablesHeld(LongestWait, busy);
                }
            }
        }
    }

    /// <summary>What the operator says about the pool stays.</summary>
    private static string Pooled(string connectionString)
    {
        var said = new DbConnectionStringBuilder { ConnectionString = connectionString };
        var pooled = new NpgsqlConnectionStringBuilder(connectionString);
        pooled.MaxPoolSize = Says("Maximum Pool Size", "MaxPoolSize") ? pooled.MaxPoolSize : Math.Max(MostConnections, pooled.MinPoolSize);
        pooled.MaxAutoPrepare = Says("Max Auto Prepare", "MaxAutoPrepare") ? pooled.MaxAutoPrepare : MostPrepared;
        pooled.Timeout = Says("Timeout") ? pooled.Timeout : SecondsInLine;
        return pooled.ConnectionString;

        bool Says(params string[] names) => names.Any(said.ContainsKey);
    }

    internal static void Configure(DbContextOptionsBuilder options, string connectionString) => options
        .UseNpgsql(connectionString, npgsql => npgsql.UseNodaTime())
        .UseSnakeCaseNamingConvention()
        .AddInterceptors(new ClubScopeInterceptor());
}
