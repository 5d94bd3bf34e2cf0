using System.Net;
using ClubCycle.Data.Backups;
using ClubCycle.TestKit;
using ClubCycle.Web.Hosting;
using NodaTime;
using Npgsql;

namespace ClubCycle.Web.Tests.Hosting;

/// <summary>Each test has an application of its own: an answer is kept for two seconds.</summary>
public sealed class HealthTests : IAsyncLifetime
{
    private readonly TestApp _app = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync() => _app.InitializeAsync();

    public ValueTask DisposeAsync() => _app.DisposeAsync();

    [Theory]
    [InlineData(Health.Live)]
    [InlineData(Health.Ready)]
    public async Task An_app_that_works_says_so_in_a_word(string address) => Assert.Equal((HttpStatusCode.OK, "Healthy"), await AskAsync(address));

    [Fact]
    public async Task An_app_whose_database_lacks_a_migration_lives_but_is_not_ready()
    {
        await ExecuteAsync("delete from public.\"__EFMigrationsHistory\" where migration_id = (select max(migration_id) from public.\"__EFMigrationsHistory\")");

        Assert.Equal((HttpStatusCode.ServiceUnavailable, "Unhealthy"), await AskAsync(Health.Ready));
        Assert.Equal((HttpStatusCode.OK, "Healthy"), await AskAsync(Health.Live));
    }

    [Fact]
    public async Task While_the_next_version_migrates_a_node_that_works_stays_ready()
    {
        Assert.Equal(HttpStatusCode.OK, (await AskAsync(Health.Ready)).Status);
        await using NpgsqlConnection migrating = new(_app.ConnectionString);
        await migrating.OpenAsync(Cancel);
        await using var transaction = await migrating.BeginTransactionAsync(Cancel);
        await using NpgsqlCommand command = new("lock table public.\"__EFMigrationsHistory\" in access exclusive mode", migrating, transaction);
        await command.ExecuteNonQueryAsync(Cancel);
        await Task.Delay(TimeSpan.FromSeconds(2.1), Cancel);

        Assert.Equal(HttpStatusCode.OK, (await AskAsync(Health.Ready)).Status);
    }

    [Fact]
    public async Task A_node_that_is_told_to_stop_says_that_it_is_not_ready_and_goes_on_answering_for_a_while()
    {
        await using var node = await StartedProgram.StartAsync(
            Path.Combine(AppContext.BaseDirectory, "ClubCycle.Web.dll"), address => ["serve", $"--urls={address}", "--Stop:DrainSeconds=4"], Health.Ready,
            new Dictionary<string, string> { ["ConnectionStrings__ClubCycle"] = _app.ConnectionString });
        using HttpClient http = new() { BaseAddress = new Uri(node.Address) };
        Assert.Equal(HttpStatusCode.OK, await StatusAsync(Health.Ready));

        var stopped = node.StopAsync();
        for (var asked = 0; asked < 100 && await StatusAsync(Health.Ready) == HttpStatusCode.OK; asked++)
        {
            await Task.Delay(20, Cancel);
        }

        Assert.Equal((HttpStatusCode.ServiceUnavailable, HttpStatusCode.OK), (await StatusAsync(Health.Ready), await StatusAsync(Health.Live)));
        Assert.Equal(0, await stopped);

        async Task<HttpStatusCode> StatusAsync(string address)
        {
            using var answer = await http.GetAsync(address, Cancel);
            return answer.StatusCode;
        }
    }

    [Fact]
    public async Task A_key_ring_that_cannot_be_read_is_not_ready()
    {
        await ExecuteAsync("drop table accounts.data_protection_keys");

        Assert.Equal(HttpStatusCode.ServiceUnavailable, (await AskAsync(Health.Ready)).Status);
    }

    [Fact]
    public async Task A_club_without_a_backup_for_26_hours_is_ready_but_says_that_something_is_wrong()
    {
        await _app.NewClubAsync();
        _app.Clock.Now += BackupStore.Late + Duration.FromMinutes(1);

        Assert.Equal((HttpStatusCode.OK, "Degraded"), await AskAsync(Health.Ready));
    }

    [Fact]
    public async Task A_recent_backup_is_told_to_head_coaches_and_an_old_one_is_a_warning()
    {
        var club = await _app.NewClubAsync();
        var browser = await club.SignedInAsync(club.Head);
        Assert.Contains("No backup has been made yet.", await browser.GetStringAsync("/settings", Cancel), StringComparison.Ordinal);

        await ExecuteAsync($"select set_config('app.club', '*', true); insert into club.audit (club_id, id, at, what, details) values ('{club.Id}', gen_random_uuid(), '2026-03-03 03:00Z', '{BackupStore.Made}', '')");
        var recent = await browser.GetStringAsync("/settings", Cancel);
        Assert.Contains("3 Mar 2026, 03:00", recent, StringComparison.Ordinal);
        Assert.DoesNotContain("There should be one every day", recent, StringComparison.Ordinal);

        _app.Clock.Now += Duration.FromHours(30);
        Assert.Contains("There should be one every day", await (await club.SignedInAsync(club.Head)).GetStringAsync("/settings", Cancel), StringComparison.Ordinal);
    }

    private async Task<(HttpStatusCode Status, string Word)> AskAsync(string address)
    {
        using var answer = await _app.Browser().GetAsync(address, Cancel);
        return (answer.StatusCode, await answer.Content.ReadAsStringAsync(Cancel));
    }

    /// <summary>As the owner, and without starting the application, which keeps what it has read.</summary>
    private async Task ExecuteAsync(string sql)
    {
        await using NpgsqlConnection connection = new(_app.OwnerConnectionString);
        await connection.OpenAsync(Cancel);
        await using NpgsqlCommand command = new(sql, connection);
        await command.ExecuteNonQueryAsync(Cancel);
    }
}
