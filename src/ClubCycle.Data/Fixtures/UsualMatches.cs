using ClubCycle.Planning;
using ClubCycle.Planning.Seasons;
using NodaTime;
using NodaTime.Text;

namespace ClubCycle.Data.Fixtures;

/// <summary>The matches of a squad that has entered none: one on each match day of its stints that is not closed.</summary>
/// <remarks>They carry ids from the start, so that a match keeps its place on players' phones when the list is written out and the match is moved.</remarks>
internal static class UsualMatches
{
    public static IReadOnlyList<Fixture> Of(Guid squadId, IsoDayOfWeek matchDay, Season season, IReadOnlyList<ClosedDays> closed)
    {
        List<Fixture> matches = [];
        foreach (var stint in season.Stints)
        {
            for (var date = stint.First; date <= stint.Last; date = date.PlusDays(1))
            {
                if (date.DayOfWeek == matchDay && !closed.Any(c => c.Contains(date)))
                {
                    matches.Add(new Fixture(date, Key: NamedId.From("fixture", squadId.ToString("N"), LocalDatePattern.Iso.Format(date))));
                }
            }
        }

        return matches;
    }
}
