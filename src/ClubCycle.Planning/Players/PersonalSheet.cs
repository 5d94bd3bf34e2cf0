using System.Globalization;
using ClubCycle.Planning.Measures;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Players;

/// <summary>A step as one player does it.</summary>
/// <param name="Own">The player's own ceiling, pace, load or brake in a sentence; null where nothing is known.</param>
public sealed record PersonalStep(Step Step, string? Own = null);

/// <summary>A squad's session seen through one player's numbers. Worked out when it is shown, never stored.</summary>
public static class PersonalSheet
{
    public static IReadOnlyList<PersonalStep> Of(PlannedSession session, PlayerNumbers player, PersonalValues values) => [.. session.Steps.Select(s => Of(s, player, values))];

    private static PersonalStep Of(Step step, PlayerNumbers player, PersonalValues values)
    {
        var kind = KnownExercise.Find(step.Name)?.Kind ?? StepKind.Other;
        if (player.GrowingFast && step.Part != "warm-up" && kind is StepKind.Jump or StepKind.Acceleration or StepKind.TopSpeed)
        {
            return Braked(step);
        }

        if (kind == StepKind.SteadyRun)
        {
            return new PersonalStep(step, Sentence("Yours: ", values.HeartCeiling(), values.EasyPace()));
        }

        return new PersonalStep(step, step.PercentOfMaximum is { } percent ? Sentence("Your load: ", values.Load(step.Name, percent)) : null);
    }

    /// <summary>Fewer repetitions, or fewer sets of one (R45); at least one is left.</summary>
    private static PersonalStep Braked(Step step)
    {
        var (sets, reps) = (step.Sets ?? 1, step.Reps ?? 1);
        var most = (int)(sets * reps * Growth.BrakedShare);
        var (fewerSets, fewerReps) = reps > 1 ? (sets, Math.Max(1, most / sets)) : (Math.Max(1, most), reps);
        while (fewerSets > 1 && fewerSets * fewerReps > most)
        {
            fewerSets--;
        }

        var braked = step with
        {
            Sets = step.Sets is null ? null : fewerSets,
            Reps = step.Reps is null ? null : fewerReps,
            FootContacts = step.FootContacts is { } contacts ? contacts * fewerSets * fewerReps / (sets * reps) : null,
        };
        return new PersonalStep(braked, "Fewer for you while you grow fast. A sore knee or heel: leave them out and tell your coach.");
    }

    /// <summary>The values with how sure they are; null when there are none.</summary>
    private static string? Sentence(string opening, params ReadOnlySpan<PersonalValue?> values)
    {
        List<string> said = [];
        foreach (var value in values)
        {
            if (value is not null)
            {
                said.Add($"{char.ToLower(value.Text[0], CultureInfo.InvariantCulture)}{value.Text[1..]} ({value.HowSure})");
            }
        }

        return said.Count == 0 ? null : $"{opening}{string.Join(", ", said)}.";
    }
}
