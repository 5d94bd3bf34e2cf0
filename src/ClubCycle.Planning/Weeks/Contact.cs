using ClubCycle.Planning.Loads;
using NodaTime;

namespace ClubCycle.Planning.Weeks;

/// <summary>A practice or a match that takes place whatever the planner does.</summary>
internal sealed record Contact(Guid Uid, string Slot, LocalDate Date, LocalTime Start, int Minutes, bool IsMatch, string Title, string? Place = null)
{
    /// <summary>CR10.</summary>
    public int Effort => IsMatch ? LoadTable.MatchEffort : LoadTable.PracticeEffort;

    public int LoadAu => Minutes * Effort;
}
