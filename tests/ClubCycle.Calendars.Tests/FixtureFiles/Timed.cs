using ClubCycle.Calendars.FixtureFiles;

namespace ClubCycle.Calendars.Tests.FixtureFiles;

/// <summary>Tests with a time limit run alone, so that they measure themselves.</summary>
[CollectionDefinition(nameof(Timed), DisableParallelization = true)]
public sealed class Timed
{
    private const int Times = 2;
    private const int Tries = 3;

    private static TimeSpan? _limit;

    /// <summary>
    /// Fails when the work takes more than twice the processor time of <see cref="Files.Large"/>. A miss counts when both were measured one after the other three times, so a slow
    /// or busy machine makes no difference.
    /// </summary>
    public static async Task IsQuickAsync(Func<Task> work)
    {
        var limit = _limit ??= await LimitAsync();
        var took = await WorkedAsync(work);
        for (var tries = 0; took > limit && tries < Tries; tries++)
        {
            _limit = limit = await LimitAsync();
            took = await WorkedAsync(work);
        }

        Assert.InRange(took, TimeSpan.Zero, limit);
    }

    private static async Task<TimeSpan> LimitAsync() => Times * await WorkedAsync(
        () => FixtureIcs.ReadAsync(Files.Large, Files.Lisbon, TimeSpan.FromMinutes(1), TestContext.Current.CancellationToken));

    /// <summary>Processor time of this program: waiting for a busy machine is not in it.</summary>
    private static async Task<TimeSpan> WorkedAsync(Func<Task> work)
    {
        var before = Environment.CpuUsage.TotalTime;
        await work();
        return Environment.CpuUsage.TotalTime - before;
    }
}
