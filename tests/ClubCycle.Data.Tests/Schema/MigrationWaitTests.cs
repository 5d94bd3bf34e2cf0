using System.Diagnostics;
using ClubCycle.TestKit;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;

namespace ClubCycle.Data.Tests.Schema;

/// <summary>A club is at work while its schema is migrated, and a backup reads a table all the time.</summary>
public sealed class MigrationWaitTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_migration_that_waits_for_a_backup_holds_up_nobody_and_goes_on_when_it_has_ended()
    {
        await using var database = await TestDatabase.CreateAsync(_ => Task.CompletedTask, "empty");
        await using var services = new ServiceCollection().AddLogging().AddClubCycleData(database.OwnerConnectionString).BuildServiceProvider();
        await using var db = await services.GetRequiredService<IDbContextFactory<ClubCycleDb>>().CreateDbContextAsync(Cancel);
        await db.GetService<IMigrator>().MigrateAsync(db.Database.GetMigrations().First(), Cancel);
        await using NpgsqlConnection backup = new(database.OwnerConnectionString), reader = new(database.OwnerConnectionString);
        await backup.OpenAsync(Cancel);
        await reader.OpenAsync(Cancel);
        await using var reading = await backup.BeginTransactionAsync(Cancel);
        await ExecuteAsync(backup, "lock table club.clubs, club.squads in access share mode");

        var migrating = DataSetup.MigrateAsync(database.OwnerConnectionString, Cancel);
        var slowest = TimeSpan.Zero;
        for (var watch = Stopwatch.StartNew(); watch.Elapsed < TimeSpan.FromSeconds(6);)
        {
            var from = Stopwatch.GetTimestamp();
            await ExecuteAsync(reader, "select from club.clubs, club.squads");
            var took = Stopwatch.GetElapsedTime(from);
            slowest = took > slowest ? took : slowest;
            await Task.Delay(50, Cancel);
        }

        Assert.False(migrating.IsCompleted);
        Assert.InRange(slowest, TimeSpan.Zero, TimeSpan.FromSeconds(3));
        await reading.RollbackAsync(Cancel);
        await migrating;
        Assert.Empty(await db.Database.GetPendingMigrationsAsync(Cancel));
    }

    private static async Task ExecuteAsync(NpgsqlConnection connection, string sql)
    {
        await using NpgsqlCommand command = new(sql, connection) { CommandTimeout = 5 };
        await command.ExecuteNonQueryAsync(Cancel);
    }
}
