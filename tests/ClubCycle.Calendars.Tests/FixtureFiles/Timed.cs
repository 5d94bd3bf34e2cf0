namespace ClubCycle.Calendars.Tests.FixtureFiles;

/// <summary>Tests with a time limit run alone, so that they measure themselves.</summary>
[CollectionDefinition(nameof(Timed), DisableParallelization = true)]
public sealed class Timed;
