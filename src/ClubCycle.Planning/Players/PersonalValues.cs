using System.Globalization;
using ClubCycle.Planning.Measures;
using ClubCycle.Planning.Squads;
using NodaTime;

namespace ClubCycle.Planning.Players;

/// <summary>A value of a player's own, ready to read.</summary>
/// <param name="Text"><c>Ceiling of easy running: 147 b/min</c>.</param>
/// <param name="HowSure">In plain words, with the age of the test where that matters.</param>
public sealed record PersonalValue(string Text, string HowSure, string Source);

/// <summary>What a player's own numbers say about training. Children's squads get no numbers, whatever is entered.</summary>
public sealed class PersonalValues
{
    /// <summary>Nobody younger than this in a squad: its players may see numbers (editorial).</summary>
    public const int YoungestWithNumbers = 11;

    /// <summary>Older tests are still used, and say that they are old (editorial).</summary>
    private const int MonthsFresh = 6;
    private const double PlateStep = 2.5;

    private readonly PlayerNumbers _player;
    private readonly AgeGroup _ages;
    private readonly LocalDate _today;
    private readonly int? _age;

    public PersonalValues(PlayerNumbers player, AgeGroup ages, LocalDate today)
    {
        (_player, _ages, _today) = (player, ages, today);
        _age = player.BirthYear is { } year ? today.Year - year : null;
        AerobicSpeed = HasNumbers ? AerobicSpeedOf(player) : null;
    }

    public bool HasNumbers => _ages.YoungestAge >= YoungestWithNumbers;

    /// <summary>m/s; null without a running test.</summary>
    public Estimate? AerobicSpeed { get; }

    /// <summary>Everything that follows from the player's numbers, for the coach.</summary>
    public IReadOnlyList<PersonalValue> All => !HasNumbers ? [] : [.. Values().OfType<PersonalValue>()];

    /// <summary>Null without a heart rate of the player's own.</summary>
    public PersonalValue? HeartCeiling()
    {
        var (maximum, rest) = (_player.Latest(TestKind.MaximumHeartRate), _player.Latest(TestKind.RestingHeartRate));
        return HasNumbers && (maximum ?? rest) is { } test && Answer(HeartRate.AerobicBaseCeiling(_age, maximum?.Value, rest?.Value)) is { } ceiling
            ? Value(ceiling, Number(Math.Floor(ceiling.Value)), test)
            : null;
    }

    /// <summary>Null without a running test.</summary>
    public PersonalValue? EasyPace() => AerobicSpeed is { } speed && Answer(RunningPace.EasyCeiling(speed.Value)) is { } ceiling
        ? new PersonalValue($"Easy runs no faster than {Pace(ceiling.Value)} min/km", Join(speed.HowSure, ceiling.HowSure), $"{speed.Source}; {ceiling.Source}")
        : null;

    /// <summary>The load of a lift that the player was tested in; null otherwise.</summary>
    public PersonalValue? Load(string exercise, int percent)
    {
        if (!HasNumbers || _player.Latest(TestKind.Lift, exercise) is not { Second: { } repetitions } test
            || Answer(OneRepetitionMaximum.Epley(test.Value, repetitions)) is not { } maximum
            || Answer(LiftingLoad.AtPercent(maximum.Value, percent, PlateStep, _age ?? _ages.YoungestAge)) is not { } load)
        {
            return null;
        }

        return new PersonalValue(
            $"{Number(load.Value)} kg ({percent} % of about {Number(Math.Round(maximum.Value))} kg)", Join(maximum.HowSure, load.HowSure, HowOld(test)), maximum.Source);
    }

    private IEnumerable<PersonalValue?> Values()
    {
        yield return HeartCeiling();
        yield return EasyPace();
        if (AerobicSpeed is { } speed)
        {
            yield return new($"Maximal aerobic speed: {Number(Math.Round(speed.Value * 3.6, 1))} km/h", speed.HowSure, speed.Source);
            yield return Interval(RunningPace.Metres(speed.Value, 120, 15), "15 s at 120 %, 15 s of rest");
            yield return Interval(RunningPace.Metres(speed.Value, 100, 120), "2 minutes at 100 %, 2 minutes of rest");
        }

        if (_player.Latest(TestKind.ThirtyFifteen) is { } intermittent)
        {
            yield return Interval(RunningPace.MetresByEndSpeed(intermittent.Value, 95, 15), "15 s at 95 % of the 30-15 end speed");
        }

        foreach (var (kind, estimate) in new (TestKind, Func<FieldTestResult, Result<Estimate>>)[]
        {
            (TestKind.ShuttleRun, r => ShuttleRun.OxygenUptake((int)r.Value, _age ?? _ages.YoungestAge)),
            (TestKind.IntermittentRunOne, r => IntermittentTests.Recovery1((int)r.Value)),
            (TestKind.IntermittentRunTwo, r => IntermittentTests.Recovery2((int)r.Value)),
            (TestKind.TwelveMinuteRun, r => TimedRun.TwelveMinutes(r.Value)),
        })
        {
            if (_player.Latest(kind) is { } test && Answer(estimate(test)) is { } uptake)
            {
                yield return Value(uptake, Number(Math.Round(uptake.Value, 1)), test);
            }
        }

        foreach (var lift in _player.Results.Where(r => r.Kind == TestKind.Lift).Select(r => r.Exercise).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal))
        {
            var test = _player.Latest(TestKind.Lift, lift)!;
            yield return Answer(OneRepetitionMaximum.Epley(test.Value, test.Second ?? 0)) is { } maximum
                ? new($"{lift}: one repetition at about {Number(Math.Round(maximum.Value))} kg", Join(maximum.HowSure, HowOld(test)), maximum.Source)
                : null;
        }
    }

    private Estimate? AerobicSpeedOf(PlayerNumbers player)
    {
        var tests = new[] { TestKind.TimeTrial, TestKind.ShuttleRun, TestKind.TwelveMinuteRun }.Select(k => player.Latest(k)).OfType<FieldTestResult>();
        return tests.MaxBy(t => t.On) is { } test && Answer(SpeedOf(test)) is { } speed ? speed with { HowSure = Join(speed.HowSure, HowOld(test)) } : null;
    }

    private static Result<Estimate> SpeedOf(FieldTestResult test) => test.Kind switch
    {
        TestKind.TimeTrial => TimedRun.SetDistance(test.Value, test.Second ?? 0),
        TestKind.ShuttleRun => Speed(ShuttleRun.MaximalAerobicSpeed((int)test.Value), 1 / 3.6),
        _ => Speed(TimedRun.TwelveMinutes(test.Value).TryGet(out var uptake, out var problems) ? OxygenCost.RunningSpeed(uptake.Value) : new Result<Estimate>.Failed(problems), 1 / 60.0),
    };

    /// <summary>In m/s, whatever it was in.</summary>
    private static Result<Estimate> Speed(Result<Estimate> estimate, double factor) =>
        estimate.TryGet(out var speed, out var problems) ? speed with { Value = speed.Value * factor, Unit = "m/s" } : new Result<Estimate>.Failed(problems);

    private static PersonalValue? Interval(Result<Estimate> metres, string what) =>
        Answer(metres) is { } distance ? new($"{what}: {Number(Math.Round(distance.Value))} m a run", distance.HowSure, distance.Source) : null;

    private PersonalValue Value(Estimate estimate, string number, FieldTestResult test) =>
        new($"{estimate.Name}: {number} {estimate.Unit}", Join(estimate.HowSure, HowOld(test)), estimate.Source);

    private string? HowOld(FieldTestResult test) => test.On.PlusMonths(MonthsFresh) < _today
        ? string.Create(CultureInfo.InvariantCulture, $"tested on {test.On:d MMM uuuu}: test again")
        : null;

    /// <summary>What was entered passed its check; a value that a formula still refuses, for age say, is left out.</summary>
    private static T? Answer<T>(Result<T> result) => result.TryGet(out var estimate, out _) ? estimate : default;

    private static string Join(params ReadOnlySpan<string?> words)
    {
        List<string> said = [];
        foreach (var word in words)
        {
            if (word is not null)
            {
                said.Add(word);
            }
        }

        return string.Join("; ", said);
    }

    private static string Pace(double metresPerSecond)
    {
        // Rounded up: the pace is a ceiling of speed.
        var seconds = (int)Math.Ceiling(1000 / metresPerSecond);
        return string.Create(CultureInfo.InvariantCulture, $"{seconds / 60}:{seconds % 60:00}");
    }

    private static string Number(double number) => number.ToString("0.##", CultureInfo.InvariantCulture);
}
