using ClubCycle.Planning;
using NodaTime;

namespace ClubCycle.Data.Seasons;

internal static class EffectiveSeason
{
    public static Problem Missing { get; } = new("season.missing", "There are no season dates yet, so no year can be planned. Set the club's season dates first.", "season");

    /// <summary>A squad's own seasons count alone once it has any. Of those: the one under way or next, else the last.</summary>
    public static StoredSeason? Of(IReadOnlyList<StoredSeason> seasons, Guid squadId, LocalDate today)
    {
        var own = seasons.Where(s => s.SquadId == squadId).ToList();
        var inOrder = (own.Count > 0 ? own : seasons.Where(s => s.SquadId is null)).OrderBy(s => s.Season.Cycle.End).ToList();
        return inOrder.Find(s => s.Season.Cycle.End >= today) ?? inOrder.LastOrDefault();
    }
}
