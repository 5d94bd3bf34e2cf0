using ClubCycle.Data.Clubs;
using ClubCycle.Planning;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using ClubCycle.TestKit;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace ClubCycle.Data.Tests;

/// <summary>A class's own database with the stores over it. Each test makes its own club, so none sees another's rows.</summary>
public sealed class ClubData : IAsyncLifetime
{
    /// <summary>Noon on 1 March 2026: the first day of the cycle that <see cref="Stints"/> ends.</summary>
    public static readonly Instant Start = Instant.FromUtc(2026, 3, 1, 12, 0);

    public static readonly IReadOnlyList<Stint> Stints = [new(new(2026, 10, 1), new(2026, 11, 30)), new(new(2027, 1, 1), new(2027, 2, 28))];

    /// <summary>Whoever acts in a test.</summary>
    public static readonly Guid By = NamedId.From("test", "coach");

    private TestDatabase database = null!;
    private ServiceProvider? services;

    internal SetClock Clock { get; } = new(Start);

    public string ConnectionString => database.ConnectionString;

    /// <summary>For what is no work of the app's.</summary>
    public string OwnerConnectionString => database.OwnerConnectionString;

    public string BackupConnectionString => database.BackupConnectionString;

    internal IDbContextFactory<ClubCycleDb> Contexts => Services.GetRequiredService<IDbContextFactory<ClubCycleDb>>();

    internal ServiceProvider Services => services ??= new ServiceCollection().AddSingleton<IClock>(Clock).AddClubCycleData(database.ConnectionString).BuildServiceProvider(validateScopes: true);

    public async ValueTask InitializeAsync() => database = await TestDatabase.CreateAsync(owner => DataSetup.MigrateAsync(owner, TestContext.Current.CancellationToken));

    public async ValueTask DisposeAsync()
    {
        if (services is not null)
        {
            await services.DisposeAsync();
        }

        await database.DisposeAsync();
    }

    internal async Task<TestClub> NewClubAsync(string name = "Test club")
    {
        Clock.Now = Start;
        using var scope = Services.CreateScope();
        var id = (await scope.ServiceProvider.GetRequiredService<ClubStore>().CreateAsync(name, "Europe/Lisbon", IsoDayOfWeek.Monday, TestContext.Current.CancellationToken)).OrThrow();
        return TestClub(id);
    }

    /// <summary>Another scope for a club that exists, as another request would have.</summary>
    internal TestClub TestClub(Guid id)
    {
        var scope = Services.CreateScope();
        scope.ServiceProvider.GetRequiredService<CurrentClub>().Use(id);
        return new TestClub(id, scope.ServiceProvider);
    }

    internal static Squad Squad(string name = "Women 1", AgeGroup? age = null) => new(
        Guid.Empty, name, age ?? AgeGroup.Senior, TrainingAge.Trained,
        [new Practice(IsoDayOfWeek.Tuesday, new LocalTime(19, 30), 90, Practice.UsualPhases), new Practice(IsoDayOfWeek.Thursday, new LocalTime(19, 30), 90, Practice.UsualPhases)],
        IsoDayOfWeek.Saturday, new LocalTime(14, 0), []);
}
