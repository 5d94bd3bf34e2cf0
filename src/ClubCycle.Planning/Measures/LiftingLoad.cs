using System.Globalization;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Measures;

/// <summary>The load to put on the bar, in kg, rounded down to what the plates allow.</summary>
public static class LiftingLoad
{
    private static readonly Limits Ages =
        new("measure.load-age", "Age for loads", 9, 90, "years", "Younger children train with their own body weight: plan that.");

    private static readonly Limits Maxima = new("measure.maximum-load", "One-repetition maximum", 0.5, 900, "kg", "Estimate it again from a set of about 5.");

    private static readonly Limits Steps = new("measure.plate-step", "Plate step", 0.25, 25, "kg", "Enter the smallest change of load the equipment allows.");

    private static readonly Limits Repetitions = new("measure.table-repetitions", "Repetitions", 1, 15, "", "The table ends at 15: use lighter circuits for more.");

    /// <summary>Load at a percentage of the maximum.</summary>
    /// <param name="maximum">0.5 to 900 kg.</param>
    /// <param name="percent">1 to 100, for minors at most <see cref="YouthLifting.CeilingPercent"/>.</param>
    /// <param name="plateStep">0.25 to 25 kg.</param>
    /// <param name="age">Completed years, 9 to 90: younger children lift their own weight.</param>
    public static Result<Estimate> AtPercent(double maximum, double percent, double plateStep, int age) => Limits.Answer(
        [Maxima.Check(maximum), Steps.Check(plateStep), Ages.Check(age) ?? Shares(age).Check(percent)],
        () => Load(maximum, percent, plateStep, "Share of the maximum"));

    /// <summary>The heaviest load that allows these repetitions, for minors at most the ceiling of their age.</summary>
    /// <param name="maximum">0.5 to 900 kg.</param>
    /// <param name="repetitions">1 to 15.</param>
    /// <param name="plateStep">0.25 to 25 kg.</param>
    /// <param name="age">Completed years, 9 to 90: younger children lift their own weight.</param>
    /// <remarks><see cref="RepetitionTable"/>; people differ widely: Nuzzo et al. 2024, Sports Med 54:303–321.</remarks>
    public static Result<Estimate> ForRepetitions(double maximum, int repetitions, double plateStep, int age) => Limits.Answer(
        [Maxima.Check(maximum), Steps.Check(plateStep), Repetitions.Check(repetitions), Ages.Check(age)],
        () => Load(maximum, HeaviestPercent(repetitions, age), plateStep, "Haff and Triplett 2016, Essentials of Strength Training and Conditioning, 4th ed., ch. 17 (above 10 repetitions from memory)"));

    private static int HeaviestPercent(int repetitions, int age)
    {
        var percent = YouthLifting.Ceiling(age);
        while (RepetitionTable.MostReps(percent) < repetitions)
        {
            percent--;
        }

        return percent;
    }

    private static Limits Shares(int age) => new("measure.load-percent", "Share of the maximum", 1, YouthLifting.Ceiling(age), "percent at this age", "Choose a lighter load.");

    private static Result<Estimate> Load(double maximum, double percent, double plateStep, string source)
    {
        // Decimal, so that 85 % of 100 kg is a whole number of plates.
        var (target, step) = ((decimal)maximum * (decimal)percent / 100, (decimal)plateStep);
        return target < step
            ? new Problem("measure.load-too-light", string.Create(CultureInfo.InvariantCulture, $"{target:0.##} kg must be at least one plate step of {step} kg. Use smaller steps or the own body weight."))
            : new Estimate((double)(decimal.Floor(target / step) * step), "kg", "Training load", "rounded down; lower it when technique changes", source);
    }
}
