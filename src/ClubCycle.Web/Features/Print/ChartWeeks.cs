using ClubCycle.Planning;
using ClubCycle.Web.Features.Board;
using NodaTime;

namespace ClubCycle.Web.Features.Print;

/// <summary>The weeks that a chart shows: all of the squads' years, or as many around today as it holds.</summary>
/// <param name="Cut">Some weeks are left out.</param>
internal readonly record struct ChartWeeks(LocalDate First, int Count, bool Cut)
{
    /// <summary>Of a chart that must leave weeks out: so many of them lie before today.</summary>
    private const int Back = 22;

    public LocalDate Last => First.PlusWeeks(Count).PlusDays(-1);

    /// <summary>Null when there is no week at all.</summary>
    public static ChartWeeks? Of(IEnumerable<SquadPlan?> plans, LocalDate today)
    {
        var weeks = plans.SelectMany(p => p?.Weeks ?? []).Select(w => w.First).Distinct().Order().ToList();
        if (weeks.Count == 0)
        {
            return null;
        }

        var all = (Period.DaysBetween(weeks[0], weeks[^1]) / 7) + 1;
        var before = all <= BoardView.MostWeeks ? 0 : Math.Clamp((Period.DaysBetween(weeks[0], today) / 7) - Back, 0, all - BoardView.MostWeeks);
        return new ChartWeeks(weeks[0].PlusWeeks(before), Math.Min(all, BoardView.MostWeeks), all > BoardView.MostWeeks);
    }
}
