using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Squads;

namespace ClubCycle.Planning.Templates;

/// <summary>How a cycle is built: phase chains by gap length, the weekly mix of each phase, loading. A plain immutable value; check with <c>TemplateCheck</c>.</summary>
/// <param name="Name">Lower-case words and hyphens: <c>senior-standard</c>.</param>
/// <param name="Title">As coaches read it.</param>
/// <param name="AgeGroups">The age groups it is made for.</param>
/// <param name="Chains">By gap length; the first that fits a gap fills it.</param>
/// <param name="Mixes">One for each phase kind that the chains and the season use.</param>
public sealed record Template(
    string Name,
    string Title,
    IReadOnlyList<AgeGroup> AgeGroups,
    IReadOnlyList<Chain> Chains,
    IReadOnlyList<WeeklyMix> Mixes,
    LoadingPattern Loading)
{
    /// <summary>The slot that a session fills; null for practices, matches, active recovery and what is no longer in the mix.</summary>
    /// <param name="sessionSlot">Phase and slot, as in <see cref="PlannedSession.Slot"/>.</param>
    public Slot? SlotOf(string sessionSlot)
    {
        foreach (var mix in Mixes)
        {
            var phase = FileName.Of(mix.Phase);
            if (sessionSlot.Length > phase.Length && sessionSlot[phase.Length] == '.' && sessionSlot.StartsWith(phase, StringComparison.Ordinal))
            {
                return mix.Slots.FirstOrDefault(s => sessionSlot.AsSpan(phase.Length + 1).SequenceEqual(s.Name));
            }
        }

        return null;
    }
}

/// <summary>The phases that fill a gap of <paramref name="MinWeeks"/> to <paramref name="MaxWeeks"/> whole weeks, in order.</summary>
public sealed record Chain(string Name, int MinWeeks, int MaxWeeks, IReadOnlyList<ChainPhase> Phases);

/// <param name="IdealShare">Share of the gap, 0 to 1.</param>
/// <param name="FixedWeeks">A coach's own length, which the others re-allocate around; null leaves it to the planner.</param>
public sealed record ChainPhase(PhaseKind Kind, int MinWeeks, double IdealShare, int MaxWeeks, int? FixedWeeks = null);

/// <summary>What a phase asks of an ordinary loading week.</summary>
/// <param name="Slots">Most valuable first: when not all fit, the last is dropped.</param>
/// <param name="ActiveDaysAtMost">Days with a session, practice or match.</param>
/// <param name="HoursBetweenHard">48 for most, 72 for masters.</param>
/// <param name="SessionsPerContactDay">0 or 1: how many sessions may share a day with a practice.</param>
public sealed record WeeklyMix(PhaseKind Phase, IReadOnlyList<Slot> Slots, int ActiveDaysAtMost, int HoursBetweenHard = 48, int SessionsPerContactDay = 0);

/// <summary>One wanted session of the weekly mix.</summary>
/// <param name="Name">Unique in its mix: <c>easy-run.1</c>. With the phase in front it is the slot of the session.</param>
/// <param name="Workouts">Names of workouts; more than one take turns from week to week of the phase.</param>
/// <param name="Minutes">In a full loading week, 10 to 120.</param>
/// <param name="WhenContactsAtMost">Only wanted in weeks with at most this many practices and matches; null for always.</param>
/// <param name="WhenContactsAtLeast">Only wanted in weeks with at least this many practices and matches; null for always.</param>
public sealed record Slot(string Name, IReadOnlyList<string> Workouts, int Minutes, int? WhenContactsAtMost = null, int? WhenContactsAtLeast = null)
{
    /// <param name="weekInPhase">1-based.</param>
    public string WorkoutIn(int weekInPhase) => Workouts[(weekInPhase - 1) % Workouts.Count];
}

/// <summary>How weeks of a building phase rise and unload.</summary>
/// <param name="UnloadEvery">Every n-th week of a phase unloads: 4 for adults, 3 for under-16s and new players.</param>
/// <param name="UnloadVolume">Minutes in an unloading week as a share of the mean of the loading weeks before it, 0.4 to 0.8.</param>
/// <param name="FirstWeekVolume">Minutes in a phase's first week as a share of the slot's minutes, 0.5 to 1.</param>
/// <param name="WeeklyRise">Largest rise from one loading week to the next, 0 to 0.10.</param>
public sealed record LoadingPattern(int UnloadEvery, double UnloadVolume, double FirstWeekVolume, double WeeklyRise);
