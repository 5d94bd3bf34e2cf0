namespace ClubCycle.Mutants;

/// <summary>A part of the planning and the test classes that answer for it.</summary>
/// <param name="Files">A folder or file below the planning project.</param>
/// <param name="Tests">Class filters of the test program; what survives them meets the tests of whole plans.</param>
internal sealed record Area(string Name, string Files, params string[] Tests)
{
    public static IReadOnlyList<Area> All { get; } =
    [
        new("loads", "Loads", "*.Loads.*"),
        new("phases", "Phases", "*.Phases.*"),
        new("rules", "Rules", "*.Rules.*"),
        new("placement", "Weeks/Placement", "*.HardRuleTests", "*Tests.Weeks.Placement.Sessions*", "*.WeekEndTests", "*.RandomWeekTests", "*.RandomYearTests"),
        new("replanning", "Replanning", "*.Replanning.*"),
        new("templates", "Templates/TemplateCheck.cs", "*.Templates.*"),
        new("seasons", "Seasons", "*.Seasons.*"),
        new("squads", "Squads", "*.Squads.*", "*.RequestCheckTests"),
    ];

    /// <summary>Quick tests first.</summary>
    public IReadOnlyList<string[]> Stages => [Tests, ["*.GoldenPlanTests", "*.ReplanningTests"], ["*.AnyPlanTests"]];
}
