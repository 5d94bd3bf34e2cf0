using System.Net;
using System.Net.Sockets;
using ClubCycle.Data;
using ClubCycle.TestKit;

namespace ClubCycle.Web.Tests.Commands;

public sealed class ServeCommandTests
{
    [Fact]
    public async Task A_database_that_cannot_be_reached_is_one_message_with_the_next_step()
    {
        var run = await CommandRun.OfAsync(["serve", "--urls=http://127.0.0.1:0"], environment: new Dictionary<string, string>
        {
            ["ConnectionStrings__ClubCycle"] = "Host=127.0.0.1;Port=1;Database=none;Username=none;Password=secret-word",
        });

        AssertOneMessage(run, "ConnectionStrings__ClubCycle");
        Assert.DoesNotContain("secret-word", run.Errors + run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_taken_port_is_one_message_with_the_next_step()
    {
        await using var database = await TestDatabase.CreateAsync(owner => DataSetup.MigrateAsync(owner, TestContext.Current.CancellationToken));
        using var other = new TcpListener(IPAddress.Loopback, 0);
        other.Start();

        var run = await CommandRun.OfAsync([$"--urls=http://127.0.0.1:{((IPEndPoint)other.LocalEndpoint).Port}"], environment: new Dictionary<string, string>
        {
            ["ConnectionStrings__ClubCycle"] = database.ConnectionString,
        });

        AssertOneMessage(run, "ASPNETCORE_URLS");
    }

    [Theory]
    [InlineData("--demo", "--empty")]
    [InlineData("--dmeo")]
    public async Task Arguments_that_make_no_sense_are_one_message(params string[] arguments)
    {
        var run = await CommandRun.OfAsync(["serve", .. arguments]);

        Assert.Equal(2, run.ExitCode);
        Assert.Single(run.Errors.TrimEnd().Split('\n'));
    }

    private static void AssertOneMessage(CommandRun run, string nextStep)
    {
        Assert.Equal(1, run.ExitCode);
        Assert.Contains(nextStep, run.Errors, StringComparison.Ordinal);
        Assert.Single(run.Errors.TrimEnd().Split('\n'));
        Assert.DoesNotContain("   at ", run.Errors + run.Output, StringComparison.Ordinal);
    }
}
