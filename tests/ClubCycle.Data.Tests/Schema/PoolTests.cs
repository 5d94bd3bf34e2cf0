using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Npgsql;

namespace ClubCycle.Data.Tests.Schema;

/// <summary>How many connections a node takes of the database's.</summary>
public sealed class PoolTests(ClubData data) : IClassFixture<ClubData>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("", 200, 30)]
    [InlineData(";Max Auto Prepare=0;Timeout=5", 0, 5)]
    [InlineData(";MaxAutoPrepare=7", 7, 30)]
    public async Task What_the_operator_says_stays(string said, int prepared, int seconds)
    {
        await using var services = new ServiceCollection().AddSingleton<IClock>(data.Clock).AddClubCycleData("Host=localhost;Database=club" + said).BuildServiceProvider();
        await using var db = await services.GetRequiredService<IDbContextFactory<ClubCycleDb>>().CreateDbContextAsync(Cancel);

        var used = new NpgsqlConnectionStringBuilder(db.Database.GetConnectionString());

        Assert.Equal((prepared, seconds), (used.MaxAutoPrepare, used.Timeout));
    }

    [Theory]
    [InlineData("", 24)]
    [InlineData(";Maximum Pool Size=3", 3)]
    [InlineData(";MaxPoolSize=4", 4)]
    public async Task More_work_at_once_waits_in_line_for_them(string said, int most)
    {
        var name = $"pool of {most}";
        var address = new NpgsqlConnectionStringBuilder(data.ConnectionString) { ApplicationName = name, Pooling = true };
        address.Remove("Maximum Pool Size");
        await using var services = new ServiceCollection().AddSingleton<IClock>(data.Clock).AddClubCycleData(address.ConnectionString + said).BuildServiceProvider();
        var contexts = services.GetRequiredService<IDbContextFactory<ClubCycleDb>>();

        var seen = await Task.WhenAll(Enumerable.Range(0, 60).Select(_ => ConnectionsAsync()));

        Assert.Equal(most, seen.Max());

        async Task<long> ConnectionsAsync()
        {
            await using var db = await contexts.CreateDbContextAsync(Cancel);
            await db.Database.OpenConnectionAsync(Cancel);
            await Task.Delay(200, Cancel);
            return await db.Database.SqlQuery<long>($"select count(*) as \"Value\" from pg_stat_activity where application_name = {name}").SingleAsync(Cancel);
        }
    }
}
