using ClubCycle.Data.Embedded;
using ClubCycle.TestKit;
using Npgsql;

namespace ClubCycle.Data.Tests.Embedded;

public sealed class DatabaseChoiceTests : IAsyncLifetime
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;
    private TestDatabase database = null!;

    public async ValueTask InitializeAsync() => database = await TestDatabase.CreateAsync(_ => Task.CompletedTask, "empty");

    public ValueTask DisposeAsync() => database.DisposeAsync();

    [Fact]
    public async Task A_given_connection_string_is_used_as_it_is()
    {
        await using var choice = await DatabaseChoice.OpenAsync(database.ConnectionString, cancel: Cancel);

        Assert.Equal(database.ConnectionString, choice.ConnectionString);
        var password = new NpgsqlConnectionStringBuilder(database.ConnectionString).Password!;
        Assert.DoesNotContain(password, choice.Description, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_a_connection_string_a_private_server_is_started_in_the_folder()
    {
        _ = database.ConnectionString;
        Assert.SkipWhen((await PostgresPrograms.FindAsync(PostgresPrograms.UsualFolders(), Cancel)).Count == 0, "No PostgreSQL programs here");
        using var folder = TemporaryFolder.ReachableByAll();

        await using var choice = await DatabaseChoice.OpenAsync(" ", privateServer: new PrivatePostgresSettings { DataFolder = folder.Path, Durable = false }, cancel: Cancel);

        Assert.Contains(folder.Path, choice.Description, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(folder.Path, "postgres", "cluster", "PG_VERSION")));
        Assert.Equal(
            [PrivatePostgres.App, PrivatePostgres.Backup, PrivatePostgres.Owner],
            new[] { choice.ConnectionString, choice.BackupConnectionString, choice.OwnerConnectionString }.Select(role => new NpgsqlConnectionStringBuilder(role).Username!));
    }

    [Fact]
    public async Task A_server_that_does_not_answer_is_told_in_one_line()
    {
        // Port 1 is reserved and nothing listens there.
        var refused = await RefusedAsync("Host=127.0.0.1;Port=1;Database=clubcycle;Username=clubcycle;Password=secret");

        Assert.Equal("database.not-reachable", refused.Problem.Code);
        Assert.Contains("127.0.0.1:1", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_refused_sign_in_is_told_in_one_line_without_the_password()
    {
        var refused = await RefusedAsync(new NpgsqlConnectionStringBuilder(database.ConnectionString) { Username = "nobody_here", Password = "secret" }.ConnectionString);

        Assert.Equal("database.not-reachable", refused.Problem.Code);
    }

    [Theory]
    [InlineData("Hots=localhost;Password=secret")]
    [InlineData("secret")]
    [InlineData("Host=localhost;Port=secret")]
    [InlineData("Database=clubcycle;Password=secret")]
    public async Task A_connection_string_that_makes_no_sense_is_told_in_one_line(string text)
    {
        var refused = await RefusedAsync(text);

        Assert.Contains("ConnectionStrings__ClubCycle", refused.Message, StringComparison.Ordinal);
    }

    private static async Task<DatabaseUnavailableException> RefusedAsync(string connectionString)
    {
        var refused = await Assert.ThrowsAsync<DatabaseUnavailableException>(() => DatabaseChoice.OpenAsync(connectionString, cancel: Cancel));
        Assert.DoesNotContain('\n', refused.Message);
        Assert.DoesNotContain("secret", refused.Message, StringComparison.Ordinal);
        return refused;
    }
}
