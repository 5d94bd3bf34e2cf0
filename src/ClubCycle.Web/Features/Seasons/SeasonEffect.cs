using ClubCycle.Planning;

namespace ClubCycle.Web.Features.Seasons;

/// <summary>What one squad's year would become with other season dates or closed days.</summary>
/// <param name="Before">Null when there was no plan.</param>
/// <param name="After">Null when the new dates give none; then there are problems.</param>
public sealed record SeasonEffect(Guid Squad, string Name, SquadPlan? Before, SquadPlan? After, IReadOnlyList<Problem> Problems);
