using ClubCycle.PlacementModel;
using ClubCycle.Planning.Weeks.Placement;
using CsCheck;

namespace ClubCycle.Planning.Tests.Weeks.Placement;

/// <summary>
/// The engine against a general solver that knows <c>docs/placement.md</c> alone. Cases are the same each time; more where <see cref="Cases.Count"/> is above 10,000, down to a tenth where it is below 1,000.
/// </summary>
public class ConstraintModelTests(ITestOutputHelper output)
{
    private const ulong Seed = 20260803;

    private static readonly Gen<IReadOnlyList<WeekToPlace>> BaseWeeks = RandomRun.BaseWeek(5).Select(IReadOnlyList<WeekToPlace> (week) => [week]);

    [Fact]
    public void A_week_is_placed_as_cheaply_as_the_paper_allows() => Compare(RandomRun.Of(1, 6), 300);

    [Fact]
    public void A_week_with_odd_windows_and_surroundings_is_placed_as_cheaply_as_the_paper_allows() =>
        Compare(RandomWeek.Of(6, 8).Select(IReadOnlyList<WeekToPlace> (week) => [week]), 300);

    [Fact]
    public void Neighbouring_weeks_are_placed_as_cheaply_as_the_paper_allows() => Compare(RandomRun.Of(2, 4), 150);

    [Fact]
    public void Eight_weeks_in_a_row_are_placed_as_cheaply_as_the_paper_allows() => Compare(RandomRun.Of(8, 4), 60);

    [Fact]
    public void Weeks_that_are_nearly_equal_are_placed_as_cheaply_as_the_paper_allows() => Compare(RandomRun.OfNearlyEqual(4, 5), 100);

    [Fact]
    public void A_base_week_is_placed_as_cheaply_as_the_paper_allows() => Compare(BaseWeeks, 150, repeats: true);

    [Fact]
    public void Neighbours_of_random_runs_get_in_each_others_way()
    {
        var runs = Enumerable.Range(0, 60).Select(number => Case(RandomRun.Of(8, 4), number)).ToList();

        Assert.InRange(runs.Count(weeks => ConstraintModel.Cheapest(weeks).Cost > weeks.Sum(week => ConstraintModel.Cheapest([week]).Cost)), 20, 60);
    }

    [Theory]
    [MemberData(nameof(Changes))]
    public void A_model_with_one_wrong_number_is_told_from_the_engine(string number)
    {
        var runs = RandomRun.Of(3, 4);
        var differs = Enumerable.Range(0, 1000).FirstOrDefault(n => Case(runs, n) is var weeks && ConstraintModel.Cheapest(weeks, paper: WrongPapers[number]).Cost != Engine(weeks).Cost, -1);

        output.WriteLine($"Case {differs} of seed {Seed} differs.");
        Assert.NotEqual(-1, differs);
    }

    public static TheoryData<string> Changes => [.. WrongPapers.Keys];

    private static readonly Dictionary<string, Paper> WrongPapers = new()
    {
        ["rule 1: two sessions a day"] = new() { SessionsADay = 2 },
        ["rule 2: one active day more"] = new() { ActiveDaysBeyondLimit = 1 },
        ["rule 3: one hard session more"] = new() { HardSessionsBeyondLimit = 1 },
        ["rule 4: 47 h to a match"] = new() { HoursToMatch = 47 },
        ["rule 4: 71 h after a second match"] = new() { HoursAfterSecondMatch = 71 },
        ["rule 4: a second match within 47 h"] = new() { HoursThatMakeASecondMatch = 47 },
        ["rule 5: one hour less between hard sessions"] = new() { HoursBetweenHardBeyondLimit = -1 },
        ["rule 6: 47 h between heavy lifts"] = new() { HoursBetweenLifts = 47 },
        ["rule 6: 47 h between jumps"] = new() { HoursBetweenJumps = 47 },
        ["rule 6: 71 h between high jumps"] = new() { HoursBetweenHighJumps = 71 },
        ["places: three later starts"] = new() { LaterStarts = 3 },
        ["places: 10 minutes into practice"] = new() { MinutesIntoPractice = 10 },
        ["cost: dropped"] = new() { Dropped = 1_000_001 },
        ["cost: less valuable dropped"] = new() { DroppedStep = 50_001 },
        ["cost: kept dropped"] = new() { KeptDropped = 500_001 },
        ["cost: kept on another day"] = new() { KeptOnAnotherDay = 2_001 },
        ["cost: kept at another time"] = new() { KeptAtAnotherTime = 501 },
        ["cost: not on its base day"] = new() { NotOnBaseDay = 301 },
        ["cost: inside practice"] = new() { InsidePractice = 11 },
        ["cost: weekend"] = new() { Weekend = 5 },
        ["cost: half hour later"] = new() { HalfHourLater = 4 },
        ["cost: day after day"] = new() { DayAfterDay = 9 },
        ["cost: fourth day in a row"] = new() { FourthInARow = 16 },
        ["cost: sixth active day"] = new() { SixthActiveDay = 13 },
        ["cost: not easy after hard"] = new() { NotEasyAfterHard = 13 },
        ["cost: easy before a match"] = new() { EasyBeforeMatch = 7 },
        ["cost: not easy before a match"] = new() { NotEasyBeforeMatch = 26 },
        ["cost: strength of minors"] = new() { StrengthOfMinorsNextDay = 41 },
    };

    private void Compare(Gen<IReadOnlyList<WeekToPlace>> gen, int cases, bool repeats = false)
    {
        cases = Cases.Count < 1_000 ? Math.Max(cases / 10, cases * Cases.Count / 1_000) : cases * Math.Max(1, Cases.Count / 10_000);
        output.WriteLine($"{cases} cases of seed {Seed}");

        for (var number = 0; number < cases; number++)
        {
            var weeks = Case(gen, number);
            var model = ConstraintModel.Cheapest(weeks, repeats);
            var engine = Engine(weeks, repeats);

            Assert.True(model.Cost == engine.Cost && engine.Cost == ConstraintModel.CostOf(weeks, engine.Weeks, repeats), $"""
                Case {number}: the engine says {engine.Cost}, the model {model.Cost}
                {string.Join("\n", engine.Weeks.SelectMany(w => w.Placed).Select(p => $"{p.Wanted.Slot} {p.Date} {p.Start} {(p.InsidePractice ? "inside" : "")}"))}
                {string.Join("\n", model.Chosen)}
                {RandomRun.Print(weeks)}
                """);
        }
    }

    private static PlacedCycle Engine(IReadOnlyList<WeekToPlace> weeks, bool repeats = false) => repeats ? CyclePlacement.PlaceRepeating(weeks[0]) : CyclePlacement.Place(weeks);

    private static IReadOnlyList<WeekToPlace> Case(Gen<IReadOnlyList<WeekToPlace>> gen, int number) => gen.Generate(new PCG((uint)number, Seed), null, out _);
}
