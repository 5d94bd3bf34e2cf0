using ClubCycle.Planning.Seasons;

namespace ClubCycle.Data.Plans;

/// <summary>What would be different from what is stored.</summary>
/// <param name="Season">Other dates for every squad that is loaded; null for each squad's own.</param>
/// <param name="SeasonId">The stored season whose dates these replace; empty for a season that is not stored yet.</param>
/// <param name="Closed">More closed days.</param>
public sealed record InputChange(Season? Season = null, Guid SeasonId = default, IReadOnlyList<ClosedDays>? Closed = null);
