using ClubCycle.Data.Embedded;
using ClubCycle.NothingLost.Kills;

namespace ClubCycle.Web.Tests.NothingLost;

/// <summary>A few rounds of what <c>deploy/bench.sh kills</c> does hundreds of.</summary>
public sealed class KillRoundTests(ITestOutputHelper output)
{
    private const int Rounds = 3;

    [Fact]
    public async Task Whatever_is_killed_nothing_acknowledged_is_lost_and_nothing_is_half_published()
    {
        var seed = Environment.ProcessId;
        output.WriteLine($"seed {seed}");
        KillFigures figures;
        try
        {
            figures = await KillRounds.RunAsync(Path.Combine(AppContext.BaseDirectory, "ClubCycle.Web.dll"), Rounds, seed, output.WriteLine);
        }
        catch (DatabaseUnavailableException missing) when (missing.Problem.Code is "database.no-programs" or "database.programs-too-old" && Environment.GetEnvironmentVariable("CI") is not "true")
        {
            Assert.Skip(missing.Message);
            return;
        }

        Assert.Empty(figures.Wrong);
        Assert.InRange(figures.Published, 1, figures.Saved);
        Assert.All(figures.DatabaseReady, took => Assert.InRange(took, TimeSpan.Zero, TimeSpan.FromSeconds(30)));
        Assert.All(figures.WebReady, took => Assert.InRange(took, TimeSpan.Zero, TimeSpan.FromSeconds(20)));
    }
}
