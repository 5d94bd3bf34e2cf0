using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Templates;
using ClubCycle.Planning.Weeks.Placement;
using ClubCycle.Planning.Workouts;
using NodaTime;

namespace ClubCycle.Planning.Weeks;

/// <summary>What stands fast in a week before its sessions are placed.</summary>
/// <param name="From">First day of the week that is planned; days before it are history.</param>
/// <param name="Past">All of it is history.</param>
/// <param name="Contacts">Practices and matches.</param>
/// <param name="Happened">Published sessions of the days before <paramref name="From"/>.</param>
/// <param name="Slots">Sessions that the mix asks for in a week with so many contacts, most valuable first.</param>
/// <param name="ToPlace">The placement problem of the days from <paramref name="From"/> on.</param>
/// <param name="LeftOut">Slots that a coach left out this week, that the squad's age does not allow, or that a coach added where nothing can stand, with the reason.</param>
internal sealed record WeekFrame(
    CycleWeek Week,
    WeeklyMix Mix,
    LocalDate From,
    bool Past,
    IReadOnlyList<Contact> Contacts,
    IReadOnlyList<PlannedSession> Happened,
    IReadOnlyList<WeekSlot> Slots,
    WeekToPlace ToPlace,
    IReadOnlyList<(WeekSlot Slot, string Why)> LeftOut)
{
    /// <summary>Slots that have no session this week because the week would hold too much.</summary>
    public IReadOnlyList<WeekSlot> TooMuch { get; private init; } = [];

    /// <summary>What happened under this identity; null when nothing did.</summary>
    public PlannedSession? HappenedOf(Guid uid)
    {
        foreach (var happened in Happened)
        {
            if (happened.Uid == uid)
            {
                return happened;
            }
        }

        return null;
    }

    /// <summary>Number of the slot with this name.</summary>
    public int SlotOf(string name)
    {
        var slot = 0;
        while (Slots[slot].Name != name)
        {
            slot++;
        }

        return slot;
    }

    /// <summary>The week without sessions for these slots; what a person fixed stays.</summary>
    public WeekFrame Without(IReadOnlyList<WeekSlot> slots)
    {
        var gone = slots.Where(s => s.GivenMinutes is null && !ToPlace.Wanted.Any(w => w.Pinned && w.Slot == s.Name)).ToList();
        return gone.Count == 0 ? this : this with
        {
            TooMuch = [.. TooMuch, .. gone],
            ToPlace = ToPlace with { Wanted = [.. ToPlace.Wanted.Where(w => gone.TrueForAll(s => s.Name != w.Slot))] },
        };
    }

    public bool HasMatch => Contacts.Any(c => c.IsMatch);
}

/// <param name="Name">Phase and slot: <c>recovery.muscular-endurance.1</c>.</param>
/// <param name="Uid">Identity of the session in this week.</param>
/// <param name="Minutes">Of a full loading week.</param>
/// <param name="InsteadOf">What the template asks for, when a coach swapped it for <paramref name="Workout"/>; else null.</param>
/// <param name="Known">In the running week: what players know already, whose minutes stay; else null.</param>
/// <param name="Pin">What a coach decided about it; null for nothing.</param>
internal sealed record WeekSlot(string Name, Guid Uid, Workout Workout, int Minutes, Workout? InsteadOf = null, PlannedSession? Known = null, Pin? Pin = null)
{
    /// <summary>What a coach said, whatever the week's load; null when none did.</summary>
    public int? GivenMinutes => Pin?.Minutes;

    public bool IsAdded => Pin is { IsAdded: true };
}
