using ClubCycle.Planning.Weeks;
using NodaTime;

namespace ClubCycle.Planning.Loads;

/// <summary>What the weeks before the cycle's first one held.</summary>
internal static class LoadsBefore
{
    /// <summary>So many weeks back are looked at.</summary>
    public const int Weeks = 4;

    /// <summary>A week without a match and with clearly less to do is an easier week.</summary>
    public const double EasierWeekShare = 0.8;

    /// <summary>A history that begins with the weeks before; an empty one when nothing is known of them.</summary>
    /// <param name="firstWeek">First day of the cycle's first planning week.</param>
    public static LoadHistory HistoryOf(PlanRequest request, LocalDate firstWeek)
    {
        var history = new LoadHistory();
        if (Active(request).Select(s => (LocalDate?)s.Date).Min() is not { } earliest)
        {
            return history;
        }

        for (var week = firstWeek.PlusWeeks(-Weeks); week < firstWeek; week = week.PlusWeeks(1))
        {
            var last = week.PlusDays(6);
            if (last < earliest)
            {
                continue;
            }

            var load = LoadBetween(request, week, last);
            var kind = Active(request).Any(s => s.Kind == SessionKind.Match && s.Date >= week && s.Date <= last) ? WeekLoading.Match
                : history.MeanOfRun is { } mean && load < EasierWeekShare * mean ? WeekLoading.Unloading
                : WeekLoading.Loading;
            history.Add(kind, load);
        }

        return history;
    }

    /// <summary>Planned effort times minutes of these days, AU. Both ends inclusive.</summary>
    public static int LoadBetween(PlanRequest request, LocalDate first, LocalDate last) =>
        Active(request).Where(s => s.Date >= first && s.Date <= last && !s.InsidePractice).Sum(s => s.PlannedLoadAu);

    /// <summary>The last day on which the squad was active; null when nothing is known.</summary>
    public static LocalDate? LastActive(PlanRequest request) => Active(request).Select(s => (LocalDate?)s.Date).Max();

    private static IEnumerable<PlannedSession> Active(PlanRequest request) => request.Before?.Where(s => s.Kind != SessionKind.ActiveRecovery) ?? [];
}
