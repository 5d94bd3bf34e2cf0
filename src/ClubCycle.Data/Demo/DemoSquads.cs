using ClubCycle.Data.Fixtures;
using ClubCycle.Planning;
using ClubCycle.Planning.Players;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using NodaTime;

namespace ClubCycle.Data.Demo;

/// <summary>A squad of the demo club.</summary>
/// <param name="Stints">Its own season's; null follows the club's.</param>
/// <param name="Players">First names with an initial; all invented.</param>
/// <param name="HasFixtures">Its matches are entered, with opponents; else it plays on each match day.</param>
internal sealed record DemoSquad(Squad Squad, IReadOnlyList<YearlyStint>? Stints, IReadOnlyList<string> Players, bool HasFixtures)
{
    /// <summary>A match on each match day, against invented clubs in turn.</summary>
    public IReadOnlyList<Fixture> MatchesOf(Season season) =>
        [.. UsualMatches.Of(Squad.Key, Squad.MatchDay, season, []).Select((match, i) => match with { Opponent = DemoSquads.Opponents[i % DemoSquads.Opponents.Count] })];
}

/// <summary>A stint by month and day, the same each year. The last day may be written as one past the month's end.</summary>
/// <param name="LastsIntoNextYear">The last day falls in the year after the first.</param>
/// <param name="YearsOn">Years after the season's first stint began.</param>
internal sealed record YearlyStint(int FirstMonth, int FirstDay, int LastMonth, int LastDay, int YearsOn = 0, bool LastsIntoNextYear = false)
{
    public Stint In(int year) => new(Day(year + YearsOn, FirstMonth, FirstDay), Day(year + YearsOn + (LastsIntoNextYear ? 1 : 0), LastMonth, LastDay));

    private static LocalDate Day(int year, int month, int day) =>
        new(year, month, Math.Min(day, CalendarSystem.Iso.GetDaysInMonth(year, month)));
}

/// <summary>The invented squads of an invented club: every age, and seasons of every shape.</summary>
internal static class DemoSquads
{
    /// <summary>Younger squads of the demo are not tested.</summary>
    public const int YoungestTested = 16;

    /// <summary>Field tests of one player of each tested squad, by how long ago.</summary>
    public static IReadOnlyList<(int WeeksAgo, FieldTestResult Result)> Tests { get; } =
    [
        (9, new(TestKind.ShuttleRun, default, 8)),
        (3, new(TestKind.ShuttleRun, default, 9)),
        (3, new(TestKind.MaximumHeartRate, default, 193)),
        (2, new(TestKind.RestingHeartRate, default, 58)),
        (2, new(TestKind.Lift, default, 40, 8, "Goblet squat")),
    ];

    /// <summary>Four months in two halves, with December free.</summary>
    public static IReadOnlyList<YearlyStint> ClubStints { get; } = [new(10, 1, 11, 30), new(1, 1, 2, 31, YearsOn: 1)];

    public static IReadOnlyList<string> Opponents { get; } = ["Quillford", "Marrowby", "Thistledown", "Ostermill", "Pellwick", "Grenside", "Haverbeck"];

    private static readonly IReadOnlyList<YearlyStint> Autumn = [new(9, 1, 11, 30)];
    private static readonly IReadOnlyList<YearlyStint> Spring = [new(4, 1, 5, 31)];
    private static readonly IReadOnlyList<YearlyStint> OutdoorIndoorOutdoor = [new(9, 5, 11, 22), new(12, 5, 2, 14, LastsIntoNextYear: true), new(3, 6, 6, 20, YearsOn: 1)];

    public static IReadOnlyList<DemoSquad> All { get; } =
    [
        Of("Under 10", AgeGroup.Youth(10), TrainingAge.New, Spring, IsoDayOfWeek.Saturday, new(10, 0), [On(IsoDayOfWeek.Wednesday, 17, 0, 60)], "Ana P.,Bo L.,Cleo M.,Dani R.,Elif S.,Finn T.,Gia W.,Hugo B."),
        Of("Under 12", AgeGroup.Youth(12), TrainingAge.New, Autumn, IsoDayOfWeek.Saturday, new(10, 30), [On(IsoDayOfWeek.Tuesday, 17, 0, 60), On(IsoDayOfWeek.Thursday, 17, 0, 60)], "Ines K.,Jonah D.,Kaia F.,Lev G.,Mina H.,Nilo C.,Oona V.,Pia J.,Remy A."),
        Of("Under 14", AgeGroup.Youth(14), TrainingAge.Some, Autumn, IsoDayOfWeek.Saturday, new(11, 0), [On(IsoDayOfWeek.Monday, 17, 30, 75), On(IsoDayOfWeek.Wednesday, 17, 30, 75)], "Saga E.,Timo N.,Una Q.,Vera Z.,Wim O.,Yara I.,Zeno U.,Alma K.,Bram D.,Cora F.", hasFixtures: true),
        Of("Under 16", AgeGroup.Youth(16), TrainingAge.Some, null, IsoDayOfWeek.Saturday, new(12, 0), [On(IsoDayOfWeek.Tuesday, 18, 0, 75), On(IsoDayOfWeek.Thursday, 18, 0, 75)], "Dora G.,Emil H.,Faye C.,Gus V.,Hana J.,Ivo A.,Juno E.,Kian N.,Lia Q.", hasFixtures: true),
        Of("Under 18", AgeGroup.Youth(18), TrainingAge.Some, null, IsoDayOfWeek.Sunday, new(12, 0), [On(IsoDayOfWeek.Tuesday, 18, 30, 90), On(IsoDayOfWeek.Thursday, 18, 30, 90)], "Milo Z.,Nora O.,Otis I.,Petra U.,Quinn K.,Rosa D.,Sven F.,Tova G."),
        Of("Women 1", AgeGroup.Senior, TrainingAge.Trained, null, IsoDayOfWeek.Saturday, new(14, 0), [On(IsoDayOfWeek.Tuesday, 19, 30, 90), On(IsoDayOfWeek.Thursday, 19, 30, 90)], "Ulla H.,Viv C.,Willa V.,Xenia J.,Yuna A.,Zora E.,Ada N.,Bea Q.,Cleo Z.,Dina O.,Esme I.,Freya U.", hasFixtures: true),
        Of("Men 1", AgeGroup.Senior, TrainingAge.Trained, null, IsoDayOfWeek.Sunday, new(14, 0), [On(IsoDayOfWeek.Tuesday, 20, 0, 90), On(IsoDayOfWeek.Thursday, 20, 0, 90)], "Abel K.,Basil D.,Cato F.,Dirk G.,Enzo H.,Felix C.,Gil V.,Hal J.,Ilya A.,Jan E.", hasFixtures: true),
        Of("Women 2", AgeGroup.Senior, TrainingAge.Some, Spring, IsoDayOfWeek.Saturday, new(15, 30), [On(IsoDayOfWeek.Monday, 19, 30, 90)], "Katya N.,Lena Q.,Maud Z.,Nell O.,Olga I.,Pam U."),
        Of("Indoor squad", AgeGroup.Senior, TrainingAge.Trained, OutdoorIndoorOutdoor, IsoDayOfWeek.Sunday, new(16, 0), [On(IsoDayOfWeek.Wednesday, 20, 0, 90)], "Rae K.,Sol D.,Tam F.,Uri G.,Val H.,Wen C."),
        Of("Masters", AgeGroup.Masters, TrainingAge.Trained, Autumn, IsoDayOfWeek.Sunday, new(10, 30), [On(IsoDayOfWeek.Wednesday, 19, 0, 75)], "Xander V.,Yvette J.,Zelda A.,Arlo E.,Blythe N."),
    ];

    private static DemoSquad Of(
        string name, AgeGroup age, TrainingAge trainingAge, IReadOnlyList<YearlyStint>? stints, IsoDayOfWeek matchDay, LocalTime matchStart, IReadOnlyList<Practice> practices, string players, bool hasFixtures = false) =>
        new(new Squad(NamedId.From("demo", "squad", name), name, age, trainingAge, practices, matchDay, matchStart, []), stints, players.Split(','), hasFixtures);

    private static Practice On(IsoDayOfWeek day, int hour, int minute, int minutes) => new(day, new LocalTime(hour, minute), minutes, Practice.UsualPhases);
}
