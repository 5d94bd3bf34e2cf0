using System.Collections.Concurrent;
using ClubCycle.PlacementModel;
using ClubCycle.Planning.Weeks.Placement;
using CsCheck;

namespace ClubCycle.Planning.Tests.Weeks.Placement;

/// <summary>
/// The engine against a general solver that knows <c>docs/placement.md</c> alone. Cases are the same each time: all where <see cref="Cases.Count"/> is 10,000, a tenth where it is 1,000 or less.
/// </summary>
[Trait(Cases.Trait, Cases.Random)]
public class ConstraintModelTests(ITestOutputHelper output)
{
    private const ulong Seed = 20260803;

    private static readonly Gen<IReadOnlyList<WeekToPlace>> EightWeeks = RandomRun.Of(8, 4);

    private static readonly ConcurrentDictionary<int, Optimum> OfEightWeeks = new();

    private static readonly Gen<IReadOnlyList<WeekToPlace>> BaseWeeks = RandomRun.BaseWeek(5).Select(IReadOnlyList<WeekToPlace> (week) => [week]);

    [Fact]
    public void A_week_is_placed_as_cheaply_as_the_paper_allows() => Compare(RandomRun.Of(1, 6), 300);

    [Fact]
    public void A_week_with_odd_windows_and_surroundings_is_placed_as_cheaply_as_the_paper_allows() =>
        Compare(RandomWeek.Of(6, 8).Select(IReadOnlyList<WeekToPlace> (week) => [week]), 300);

    [Fact]
    public void Neighbouring_weeks_are_placed_as_cheaply_as_the_paper_allows() => Compare(RandomRun.Of(2, 4), 150);

    [Fact]
    public void Eight_weeks_in_a_row_are_placed_as_cheaply_as_the_paper_allows() => Compare(EightWeeks, 60);

    [Fact]
    public void Weeks_that_are_nearly_equal_are_placed_as_cheaply_as_the_paper_allows() => Compare(RandomRun.OfNearlyEqual(4, 5), 100);

    [Fact]
    public void A_base_week_is_placed_as_cheaply_as_the_paper_allows() => Compare(BaseWeeks, 150, repeats: true);

    [Fact]
    public void Neighbours_of_random_runs_get_in_each_others_way()
    {
        var gettingInTheWay = Enumerable.Range(0, 60).Count(number =>
            CheapestEight(number).Cost > Case(EightWeeks, number).Sum(week => ConstraintModel.Cheapest([week]).Cost));

        Assert.InRange(gettingInTheWay, 20, 60);
    }

    [Theory]
    [MemberData(nameof(Changes))]
    public void A_model_with_one_wrong_number_is_told_from_the_engine(string number)
    {
        var runs = RandomRun.Of(3, 4);
        var (wrong, told) = WrongPapers[number];
        var differs = Enumerable.Range(0, 1000).Prepend(told).FirstOrDefault(n => Case(runs, n) is var weeks && ConstraintModel.Cheapest(weeks, paper: wrong).Cost != Engine(weeks).Cost, -1);

        output.WriteLine($"Case {differs} of seed {Seed} differs.");
        Assert.NotEqual(-1, differs);
    }

    public static TheoryData<string> Changes => [.. WrongPapers.Keys];

    /// <summary>Each with the first case that tells it, which is looked at before the others.</summary>
    private static readonly Dictionary<string, (Paper Wrong, int Told)> WrongPapers = new()
    {
        ["rule 1: two sessions a day"] = (new() { SessionsADay = 2 }, 1),
        ["rule 2: one active day more"] = (new() { ActiveDaysBeyondLimit = 1 }, 0),
        ["rule 3: one hard session more"] = (new() { HardSessionsBeyondLimit = 1 }, 64),
        ["rule 4: 47 h to a match"] = (new() { HoursToMatch = 47 }, 19),
        ["rule 4: 71 h after a second match"] = (new() { HoursAfterSecondMatch = 71 }, 748),
        ["rule 4: a second match within 47 h"] = (new() { HoursThatMakeASecondMatch = 47 }, 221),
        ["rule 5: one hour less between hard sessions"] = (new() { HoursBetweenHardBeyondLimit = -1 }, 36),
        ["rule 6: 47 h between heavy lifts"] = (new() { HoursBetweenLifts = 47 }, 57),
        ["rule 6: 47 h between jumps"] = (new() { HoursBetweenJumps = 47 }, 337),
        ["rule 6: 71 h between high jumps"] = (new() { HoursBetweenHighJumps = 71 }, 99),
        ["places: three later starts"] = (new() { LaterStarts = 3 }, 41),
        ["places: 10 minutes into practice"] = (new() { MinutesIntoPractice = 10 }, 28),
        ["cost: dropped"] = (new() { Dropped = 1_000_001 }, 0),
        ["cost: less valuable dropped"] = (new() { DroppedStep = 50_001 }, 0),
        ["cost: kept dropped"] = (new() { KeptDropped = 500_001 }, 2),
        ["cost: kept on another day"] = (new() { KeptOnAnotherDay = 2_001 }, 2),
        ["cost: kept at another time"] = (new() { KeptAtAnotherTime = 501 }, 0),
        ["cost: not on its base day"] = (new() { NotOnBaseDay = 301 }, 0),
        ["cost: inside practice"] = (new() { InsidePractice = 11 }, 1),
        ["cost: weekend"] = (new() { Weekend = 5 }, 0),
        ["cost: half hour later"] = (new() { HalfHourLater = 4 }, 41),
        ["cost: day after day"] = (new() { DayAfterDay = 9 }, 0),
        ["cost: fourth day in a row"] = (new() { FourthInARow = 16 }, 3),
        ["cost: sixth active day"] = (new() { SixthActiveDay = 13 }, 12),
        ["cost: not easy after hard"] = (new() { NotEasyAfterHard = 13 }, 0),
        ["cost: easy before a match"] = (new() { EasyBeforeMatch = 7 }, 28),
        ["cost: not easy before a match"] = (new() { NotEasyBeforeMatch = 26 }, 8),
        ["cost: strength of minors"] = (new() { StrengthOfMinorsNextDay = 41 }, 35),
    };

    private void Compare(Gen<IReadOnlyList<WeekToPlace>> gen, int cases, bool repeats = false)
    {
        cases = (int)Math.Max(cases / 10, (long)cases * Cases.Count / 10_000);
        output.WriteLine($"{cases} cases of seed {Seed}");

        for (var number = 0; number < cases; number++)
        {
            var weeks = Case(gen, number);
            var model = gen == EightWeeks ? CheapestEight(number) : ConstraintModel.Cheapest(weeks, repeats);
            var engine = Engine(weeks, repeats);

            Assert.True(model.Cost == engine.Cost && engine.Cost == ConstraintModel.CostOf(weeks, engine.Weeks, repeats), $"""
                Case {number}: the engine says {engine.Cost}, the model {model.Cost}
                {string.Join("\n", engine.Weeks.SelectMany(w => w.Placed).Select(p => $"{p.Wanted.Slot} {p.Date} {p.Start} {(p.InsidePractice ? "inside" : "")}"))}
                {string.Join("\n", model.Chosen)}
                {RandomRun.Print(weeks)}
                """);
        }
    }

    /// <summary>The longest to solve; two tests want them.</summary>
    private static Optimum CheapestEight(int number) => OfEightWeeks.GetOrAdd(number, n => ConstraintModel.Cheapest(Case(EightWeeks, n)));

    private static PlacedCycle Engine(IReadOnlyList<WeekToPlace> weeks, bool repeats = false) => repeats ? CyclePlacement.PlaceRepeating(weeks[0]) : CyclePlacement.Place(weeks);

    private static IReadOnlyList<WeekToPlace> Case(Gen<IReadOnlyList<WeekToPlace>> gen, int number) => gen.Generate(new PCG((uint)number, Seed), null, out _);
}
