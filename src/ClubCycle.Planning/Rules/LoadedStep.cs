using System.Globalization;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Rules;

/// <summary>The steps of a sheet that carry a load.</summary>
internal static class LoadedStep
{
    /// <summary>The step that misses by most; null when all fit.</summary>
    public static Breach? Worst(CheckedSession sheet, Func<Step, Breach?> find)
    {
        if (!sheet.HasLoads)
        {
            return null;
        }

        Breach? worst = null;
        for (var i = 0; i < sheet.Steps.Count; i++)
        {
            if (find(sheet.Steps[i]) is { } breach && !(breach.Size <= worst?.Size))
            {
                worst = breach with { Step = i };
            }
        }

        return worst;
    }

    /// <summary><c>Back squat 4 × 5 at 83 % with 180 s of rest</c>.</summary>
    public static string Words(CheckedSession sheet, Breach breach)
    {
        var step = sheet.Steps[breach.Step!.Value];
        var rest = step.RestSeconds is { } seconds ? string.Create(CultureInfo.InvariantCulture, $" with {seconds} s of rest") : "";
        var load = step.PercentOfMaximum is { } percent ? string.Create(CultureInfo.InvariantCulture, $" at {percent} %") : "";
        return string.Create(CultureInfo.InvariantCulture, $"{step.Name} {step.Sets ?? 1} × {step.Reps ?? 1}{load}{rest}");
    }
}
