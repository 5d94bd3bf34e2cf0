using ClubCycle.Planning.Players;

namespace ClubCycle.Planning.Tests.Players;

public class FieldTestsTests
{
    [Fact]
    public void Every_kind_of_test_is_described_once() => Assert.Equal(Enum.GetValues<TestKind>(), FieldTests.All.Select(t => t.Kind));

    [Theory]
    [InlineData(TestKind.MaximumHeartRate, 120, 230)]
    [InlineData(TestKind.RestingHeartRate, 30, 110)]
    [InlineData(TestKind.ShuttleRun, 1, 21)]
    [InlineData(TestKind.IntermittentRunOne, 40, 3640)]
    [InlineData(TestKind.IntermittentRunTwo, 40, 2680)]
    [InlineData(TestKind.ThirtyFifteen, 8, 25)]
    [InlineData(TestKind.TwelveMinuteRun, 800, 4200)]
    [InlineData(TestKind.TimeTrial, 500, 2700)]
    [InlineData(TestKind.Lift, 1, 400)]
    public void A_value_outside_its_range_is_refused_with_the_range(TestKind kind, double least, double most)
    {
        Assert.Null(FieldTests.Check(A(kind, least)));
        Assert.Null(FieldTests.Check(A(kind, most)));
        Assert.All([least - 0.5, most + 0.5, double.NaN, double.PositiveInfinity, -1], value =>
        {
            var problem = FieldTests.Check(A(kind, value))!;
            Assert.Equal(("test.value", "test.value"), (problem.Code, problem.At));
            Assert.Contains($"{least} to {most} ", problem.Message, StringComparison.Ordinal);
        });
    }

    [Theory]
    [InlineData(TestKind.ShuttleRun, 8.5)]
    [InlineData(TestKind.IntermittentRunOne, 1000 + 20)]
    [InlineData(TestKind.ThirtyFifteen, 17.25)]
    [InlineData(TestKind.MaximumHeartRate, 190.5)]
    public void Tests_that_go_in_steps_take_whole_steps_only(TestKind kind, double value) =>
        Assert.Contains("in steps of", FieldTests.Check(A(kind, value))!.Message, StringComparison.Ordinal);

    [Theory]
    [InlineData(TestKind.TimeTrial, 269)]
    [InlineData(TestKind.TimeTrial, 391)]
    [InlineData(TestKind.TimeTrial, null)]
    [InlineData(TestKind.Lift, 0)]
    [InlineData(TestKind.Lift, 11)]
    [InlineData(TestKind.Lift, null)]
    [InlineData(TestKind.ShuttleRun, 3)]
    public void The_second_number_has_its_own_range(TestKind kind, int? second) =>
        Assert.Equal("test.second", FieldTests.Check(A(kind, FieldTests.Of(kind).Most) with { Second = second })!.Code);

    [Theory]
    [InlineData(TestKind.Lift, null)]
    [InlineData(TestKind.Lift, "Body-weight squat")]
    [InlineData(TestKind.Lift, "Juggling")]
    [InlineData(TestKind.ShuttleRun, "Goblet squat")]
    public void Only_a_lift_has_an_exercise_and_it_takes_a_load(TestKind kind, string? exercise) =>
        Assert.Equal("test.exercise", FieldTests.Check(A(kind, 10) with { Exercise = exercise })!.Code);

    [Fact]
    public void A_test_that_does_not_exist_is_refused() => Assert.Equal("test.kind", FieldTests.Check(new FieldTestResult((TestKind)99, Tests.A.Date("2026-03-01"), 1))!.Code);

    /// <summary>A result with a fitting second number and exercise.</summary>
    private static FieldTestResult A(TestKind kind, double value) => new(
        kind, Tests.A.Date("2026-03-01"), value, kind switch { TestKind.TimeTrial => 300, TestKind.Lift => 5, _ => null }, kind == TestKind.Lift ? "Goblet squat" : null);
}
