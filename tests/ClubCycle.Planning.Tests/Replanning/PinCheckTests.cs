using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Squads;

namespace ClubCycle.Planning.Tests.Replanning;

public class PinCheckTests
{
    private static readonly Pin Good = AddedSessionTests.Added(A.Date("2026-06-01"), 2);

    public static TheoryData<string, string> Bad => new()
    {
        { "pin.workout", "workout" }, { "pin.minutes", "minutes" }, { "pin.note", "note" }, { "pin.date", "date" }, { "pin.outside-week", "date" }, { "pin.slot", "slot" },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public void A_bad_pin_is_answered_with_the_place(string code, string part) =>
        Assert.All(Spoiled(code), pin => Assert.Equal((code, $"pins[3].{part}"), Assert.Single(PinCheck.Check(pin, AgeGroup.Senior, "pins[3]").Select(p => (p.Code, p.At)))));

    [Theory]
    [InlineData(10, "")]
    [InlineData(120, "Line one\nline two, with 😀")]
    public void What_just_holds_is_let_through(int minutes, string note) =>
        Assert.Empty(PinCheck.Check(Good with { Minutes = minutes, Note = note.PadRight(Pin.LongestNote, '.') }, AgeGroup.Senior, "pin"));

    [Fact]
    public void A_workout_that_the_age_does_not_allow_is_refused() =>
        Assert.Equal("pin.workout", Assert.Single(PinCheck.Check(Good with { Workout = "heavy-lift" }, AgeGroup.Youth(12), "pin")).Code);

    [Fact]
    public void Two_added_sessions_of_a_week_need_two_numbers() =>
        Assert.Equal("pin.duplicate", Assert.IsType<Result<SquadPlan>.Failed>(AnnualPlanner.Plan(A.Request(pins: [Good, Good]))).First.Code);

    [Fact]
    public void A_week_takes_seven_added_sessions_and_no_more()
    {
        Pin[] pins = [.. Enumerable.Range(1, 8).Select(n => Good with { Slot = $"added.{n}" })];

        Assert.IsType<Result<SquadPlan>.Ok>(AnnualPlanner.Plan(A.Request(pins: pins[..7])));
        Assert.Equal("pin.too-many", Assert.IsType<Result<SquadPlan>.Failed>(AnnualPlanner.Plan(A.Request(pins: pins))).First.Code);
    }

    [Theory]
    [InlineData(" \r\n ", null)]
    [InlineData(null, null)]
    [InlineData(" one\r\ntwo ", "one\ntwo")]
    public void Notes_are_kept_without_blank_ends(string? typed, string? kept) => Assert.Equal(kept, PinCheck.Trimmed(typed));

    private static Pin[] Spoiled(string code) => code switch
    {
        "pin.workout" => [Good with { Workout = null }, Good with { Workout = "handstand" }],
        "pin.minutes" => [Good with { Minutes = null }, Good with { Minutes = 9 }, Good with { Minutes = 121 }],
        "pin.note" => [Good with { Note = new string('x', 201) }, Good with { Note = "a\0b" }, Good with { Note = "a\tb" }, Good with { Note = "a\ud83d" }, Good with { Note = "\ude00a" }],
        "pin.date" => [Good with { Date = null }],
        "pin.outside-week" => [Good with { Date = A.Date("2026-05-31") }, Good with { Date = A.Date("2026-06-08") }],
        "pin.slot" => [Good with { Slot = "added.0" }, Good with { Slot = "added.01" }, Good with { Slot = "added.x" }, Good with { Slot = "added.1000" }],
        _ => throw new ArgumentOutOfRangeException(nameof(code), code, "Not a problem of pins"),
    };
}
