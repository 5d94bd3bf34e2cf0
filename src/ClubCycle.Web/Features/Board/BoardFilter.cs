using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;
using NodaTime;

namespace ClubCycle.Web.Features.Board;

/// <summary>Which squads the board shows, and the chart that is printed from it. It travels in the address; null asks for nothing.</summary>
/// <param name="Age">An age group such as <c>U14</c>, or <see cref="Youth"/> or <see cref="Adults"/>.</param>
/// <param name="Phase">The phase of today's week, as in style classes.</param>
/// <param name="With"><see cref="Must"/>, <see cref="Should"/> or <see cref="Draft"/>.</param>
/// <param name="First">One of two squads to compare. With both, nothing else counts.</param>
public sealed record BoardFilter(string? Age = null, string? Phase = null, string? With = null, string? First = null, string? Second = null)
{
    public const string Youth = "youth";
    public const string Adults = "adults";
    public const string Must = "must";
    public const string Should = "should";
    public const string Draft = "draft";

    public bool Compares => Guid.TryParse(First, out _) && Guid.TryParse(Second, out _);

    public bool Wants(BoardSquad squad, LocalDate today) => Compares
        ? squad.Id == Guid.Parse(First!) || squad.Id == Guid.Parse(Second!)
        : OfAge(squad) && InPhase(squad, today) && Has(squad);

    /// <summary>As it stands in an address: starts with <c>&amp;</c> or is empty.</summary>
    public string Query => string.Concat(
        from part in (IReadOnlyList<(string Name, string? Value)>)[("age", Age), ("phase", Phase), ("with", With), ("first", First), ("second", Second)]
        where !string.IsNullOrEmpty(part.Value)
        select $"&{part.Name}={Uri.EscapeDataString(part.Value)}");

    // Names of age groups under 18 are U8 to U18.
    private bool OfAge(BoardSquad squad) => Age switch
    {
        null or "" => true,
        Youth => squad.AgeGroup.StartsWith('U'),
        Adults => !squad.AgeGroup.StartsWith('U'),
        _ => squad.AgeGroup == Age,
    };

    private bool InPhase(BoardSquad squad, LocalDate today) =>
        string.IsNullOrEmpty(Phase) || (squad.Plan?.Weeks.FirstOrDefault(w => w.First <= today && today <= w.Last) is { } week && PhaseText.Key(week.Phase) == Phase);

    private bool Has(BoardSquad squad) => With switch
    {
        Must => squad.Plan is null || squad.Plan.Findings.Any(f => f.Strength == Strength.Must),
        Should => squad.Plan is null || squad.Plan.Findings.Any(f => f.Strength != Strength.Note),
        Draft => squad.HasUnpublishedChanges,
        _ => true,
    };

    /// <summary>Phases that can be asked for.</summary>
    public static IReadOnlyList<PhaseKind> Phases { get; } = Enum.GetValues<PhaseKind>();
}
