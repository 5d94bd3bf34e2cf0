using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Templates;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Tests.Rules;

internal sealed partial class Year
{
    private Template? _template;

    public Year Some()
    {
        _trainingAge = TrainingAge.Some;
        return this;
    }

    /// <summary>A template that asks for these workouts every week of every phase.</summary>
    public Year Asking(params string[] workouts)
    {
        _template = new("test", "Test", [_ages], [], [.. Enum.GetValues<PhaseKind>().Select(p => new WeeklyMix(p, [.. workouts.Select((w, i) => new Slot($"slot.{i + 1}", [w], 45))], 6))], new(4, 0.6, 0.8, 0.08));
        return this;
    }

    /// <summary>The template of <see cref="Asking"/> with a coach's own length of a phase.</summary>
    public Year Fixing(PhaseKind phase, int weeks)
    {
        Asking("easy-run");
        _template = _template! with { Chains = [new("test", 1, 52, [new(phase, 1, 1, 52, weeks)])] };
        return this;
    }

    /// <summary>A coach fixed the last session's day.</summary>
    public Year Pinned()
    {
        _sessions[^1] = _sessions[^1] with { Pinned = true };
        return this;
    }

    /// <summary>The last session is part of a practice.</summary>
    public Year InsidePractice()
    {
        _sessions[^1] = _sessions[^1] with { InsidePractice = true };
        return this;
    }

    /// <summary>A session as in <see cref="With"/>, with what its sheet says.</summary>
    public Year Sheet(string session, params Step[] steps)
    {
        With(session);
        _sessions[^1] = _sessions[^1] with { Steps = steps };
        return this;
    }

    /// <summary>The last session as planned with another effort.</summary>
    public Year WithEffort(int effort)
    {
        _sessions[^1] = _sessions[^1] with { PlannedEffort = effort };
        return this;
    }
}

internal static class Figures
{
    public static (double Measured, double Limit, string Unit) FiguresOf(this Finding finding) => (Math.Round(finding.Facts!.Measured, 2), Math.Round(finding.Facts.Limit, 2), finding.Facts.Unit);
}

/// <summary>Steps of hand-made sheets, with names of the exercise library.</summary>
internal static class Do
{
    public static Step Squat(int sets, int reps, int? percent, int? rest = 180) => Lift("Back squat", sets, reps, percent, rest);

    public static Step Lift(string name, int sets, int reps, int? percent, int? rest = 180) => new("main", name, "", sets, reps, RestSeconds: rest, PercentOfMaximum: percent);

    public static Step LowJumps(int contacts) => new("main", "Line hops", "", 1, contacts, FootContacts: contacts);

    public static Step MediumJumps(int contacts) => new("main", "Alternate bounds", "", 1, contacts, FootContacts: contacts);

    public static Step Named(string name) => new("main", name, "");

    public static Step Sprints(int reps, int metres, int rest = 180, int? seconds = null) => new("main", "Standing-start sprint", "", Reps: reps, Seconds: seconds, Metres: metres, RestSeconds: rest);

    public static Step FlyingSprints(int reps, int metres) => new("main", "Flying sprint", "", Reps: reps, Metres: metres, RestSeconds: 240);

    public static Step Core => new("core", "Front plank", "", 2, 6);

    public static Step Circuit => new("main", "Push-up", "", 2, 12, RestSeconds: 30);

    public static Step EasyRun(string note = "Easy enough to talk all the way.") => new("main", "Steady easy run", note, Minutes: 25);

    public static Step Planned(int minutes) => new("main", "Half turn technique", "", Minutes: minutes);

    public static Step Cued(int minutes) => new("main", "Shadow the runner", "", Minutes: minutes);

    /// <summary>Six minutes of raising, the rest balance.</summary>
    public static Step[] WarmUp(int minutes) => [new("warm-up", "Rope skipping", "", Minutes: 6), new("warm-up", "Single-leg balance and reach", "", Minutes: minutes - 6)];
}
