using System.Globalization;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Players;

/// <summary>How a kind of test is named, done and entered.</summary>
/// <param name="Unit">Of the value.</param>
/// <param name="Least">Smallest value that can be true.</param>
/// <param name="Step">Values are multiples of it; 0 for any.</param>
/// <param name="Second">Unit and range of the second number; null without one.</param>
/// <param name="How">In one or two sentences.</param>
public sealed record FieldTest(TestKind Kind, string Title, string Unit, double Least, double Most, double Step, (string Unit, int Least, int Most)? Second, string How);

/// <summary>The tests that a coach can enter, and what a result of each can be.</summary>
/// <remarks>Ranges are those of the published tables where there is one (shuttle run, intermittent runs); the others are editorial: wide, against slips of the hand.</remarks>
public static class FieldTests
{
    public static IReadOnlyList<FieldTest> All { get; } =
    [
        new(TestKind.MaximumHeartRate, "Highest heart rate", "b/min", 120, 230, 1, null, "The highest rate seen in the last minute of a test that ended in exhaustion. Never test for it alone."),
        new(TestKind.RestingHeartRate, "Resting heart rate", "b/min", 30, 110, 1, null, "Counted for a minute on waking, lying down, on three mornings; enter the mean."),
        new(TestKind.ShuttleRun, "20 m shuttle run", "stage", 1, 21, 1, null, "The last stage that was completed. The first stage is run at 8.5 km/h, each lasts a minute."),
        new(TestKind.IntermittentRunOne, "Intermittent recovery run, level 1", "m", 40, 3640, 40, null, "Metres run until the second missed line; 40 m a run, 10 s of walking after each."),
        new(TestKind.IntermittentRunTwo, "Intermittent recovery run, level 2", "m", 40, 2680, 40, null, "As level 1 at higher speeds, for trained players."),
        new(TestKind.ThirtyFifteen, "30-15 intermittent run", "km/h", 8, 25, 0.5, null, "Speed of the last stage that was completed; 30 s of running, 15 s of walking."),
        new(TestKind.TwelveMinuteRun, "Twelve-minute run", "m", 800, 4200, 0, null, "As far as possible in twelve minutes on a flat course."),
        new(TestKind.TimeTrial, "Five- or six-minute run", "m", 500, 2700, 0, ("s", 270, 390), "As far as possible in about five minutes, or a set distance that takes 4.5 to 6.5 minutes."),
        new(TestKind.Lift, "Lift", "kg", 1, 400, 0, ("repetitions", 1, 10), "A load and the repetitions that were possible with good technique. Estimates are good up to ten; nobody under 18 tries for one repetition alone."),
    ];

    public static FieldTest Of(TestKind kind) => All.Single(t => t.Kind == kind);

    /// <summary>What keeps a result from being true; null when nothing does.</summary>
    public static Problem? Check(FieldTestResult result)
    {
        if (All.FirstOrDefault(t => t.Kind == result.Kind) is not { } test)
        {
            return new Problem("test.kind", $"There is no such test. Choose one of: {string.Join(", ", All.Select(t => t.Title))}.", "test.kind");
        }

        if (!(result.Value >= test.Least && result.Value <= test.Most))
        {
            return new Problem("test.value", $"{test.Title}: {Words(test.Least)} to {Words(test.Most)} {test.Unit}. Check what was written down.", "test.value");
        }

        if (test.Step > 0 && Math.Abs(Math.IEEERemainder(result.Value, test.Step)) > 1e-9)
        {
            return new Problem("test.value", $"{test.Title}: in steps of {Words(test.Step)} {test.Unit}. Check what was written down.", "test.value");
        }

        if (test.Second is { } second && !(result.Second >= second.Least && result.Second <= second.Most))
        {
            return new Problem("test.second", $"{test.Title}: {second.Least} to {second.Most} {second.Unit}. Check what was written down.", "test.second");
        }

        if (test.Second is null && result.Second is not null)
        {
            return new Problem("test.second", $"{test.Title} has one number only. Leave the second empty.", "test.second");
        }

        return result.Kind == TestKind.Lift
            ? ExerciseLibrary.Find(result.Exercise ?? "") is { Loaded: true } ? null : new Problem("test.exercise", "Say which lift it was: one of the library's exercises with a load.", "test.exercise")
            : result.Exercise is null ? null : new Problem("test.exercise", $"{test.Title} has no exercise. Leave it empty.", "test.exercise");
    }

    private static string Words(double number) => number.ToString("0.##", CultureInfo.InvariantCulture);
}
