namespace ClubCycle.Mutants;

/// <summary>A part of the planning and the tests that answer for it.</summary>
/// <param name="Files">A folder or file below the planning project.</param>
/// <param name="Tests">Method filters of the test program in stages, quick ones first; what survives them meets the tests of whole plans.</param>
internal sealed record Area(string Name, string Files, params string[][] Tests)
{
    /// <summary>Those with weeks written by hand.</summary>
    private static readonly string[] QuickPlacement =
    [
        "SessionsKeepToOpenDays", "MatchDaysHoldNoSession", "SessionsFitTheSquadsTimes", "SessionsDoNotRunIntoPractice", "OneSessionADay", "ActiveDaysAreLimited", "HardWorkIsSpaced",
        "TheDayBeforeAMatchHoldsNothingHard", "HardWorkWaitsAfterTheMatch", "HeavyLiftsAreSpaced", "JumpsAreSpaced", "AWeekHoldsFewHardSessions", "PinsHold", "ChildrensGamesBelongToPractice",
        "PlacementCost", "RepeatingWeek", "NeighbouringWeeks", "PreparedWeek", "PlacementWhy", "WeekKey", "WeekEnd",
    ];

    public static IReadOnlyList<Area> All { get; } =
    [
        new("loads", "Loads", ["*.Loads.*"]),
        new("phases", "Phases", ["*.Phases.*"]),
        new("rules", "Rules", ["*.Rules.*"]),
        new("placement", "Weeks/Placement", [.. QuickPlacement.Select(tests => $"*.Weeks.Placement.{tests}Tests.*")], ["*.RandomWeekTests.*"], ["*_as_the_paper_allows"], ["*.RandomYearTests.*"]),
        new("replanning", "Replanning", ["*.Replanning.*"]),
        new("templates", "Templates/TemplateCheck.cs", ["*.Templates.*"]),
        new("seasons", "Seasons", ["*.Seasons.*"]),
        new("squads", "Squads", ["*.Squads.*", "*.RequestCheckTests.*"]),
    ];

    public IReadOnlyList<string[]> Stages => [.. Tests, ["*.GoldenPlanTests.*", "*.ReplanningTests.*"], ["*.AnyPlanTests.*"]];
}
