namespace ClubCycle.Calendars.Tests.FixtureFiles;

/// <summary>Tests with a time limit run alone, so that they measure themselves.</summary>
[CollectionDefinition(nameof(Timed), DisableParallelization = true)]
public sealed class Timed
{
    /// <summary>Processor time of this program: waiting for a busy machine is not in it.</summary>
    public static double WorkedMilliseconds => Environment.CpuUsage.TotalTime.TotalMilliseconds;
}
