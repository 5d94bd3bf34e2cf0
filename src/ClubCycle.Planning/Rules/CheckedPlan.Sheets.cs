using ClubCycle.Planning.Phases;

namespace ClubCycle.Planning.Rules;

public sealed partial class CheckedPlan
{
    private CheckedSession[]? _sheets;

    /// <summary><see cref="Active"/> with the sheets read, by start.</summary>
    internal IReadOnlyList<CheckedSession> Sheets => _sheets ??= ReadSheets();

    /// <summary>Sheets of each phase, in order; phases without sessions are left out.</summary>
    internal IReadOnlyList<(Phase Phase, ArraySegment<CheckedSession> Sheets)> SheetsByPhase => field ??= Runs(s => s.Phase);

    /// <summary>Sheets of each week, in order; weeks without sessions are left out.</summary>
    internal IReadOnlyList<(CheckedWeek Week, ArraySegment<CheckedSession> Sheets)> SheetsByWeek => field ??= Runs(s => s.Week);

    private List<(T Whole, ArraySegment<CheckedSession> Sheets)> Runs<T>(Func<CheckedSession, T?> wholeOf)
        where T : class
    {
        var sheets = _sheets ??= ReadSheets();
        List<(T, ArraySegment<CheckedSession>)> runs = [];
        for (int first = 0, end; first < sheets.Length; first = end)
        {
            var whole = wholeOf(sheets[first]);
            end = first + 1;
            while (end < sheets.Length && ReferenceEquals(wholeOf(sheets[end]), whole))
            {
                end++;
            }

            if (whole is not null)
            {
                runs.Add((whole, new(sheets, first, end - first)));
            }
        }

        return runs;
    }

    private CheckedSession[] ReadSheets()
    {
        var sheets = new CheckedSession[Active.Count];
        var (phase, week) = (0, 0);
        CheckedSession? practice = null, match = null;
        for (var i = 0; i < sheets.Length; i++)
        {
            var session = Active[i];
            while (phase < Plan.Phases.Count && Plan.Phases[phase].Last < session.Date)
            {
                phase++;
            }

            while (week < Weeks.Count && Weeks[week].Week.Last < session.Date)
            {
                week++;
            }

            var inPhase = phase < Plan.Phases.Count && Plan.Phases[phase].First <= session.Date ? Plan.Phases[phase] : null;
            var inWeek = week < Weeks.Count && Weeks[week].Week.First <= session.Date ? Weeks[week] : null;

            // All practices share one sheet, all matches another.
            var alike = session.Kind == SessionKind.Match ? match : practice;
            sheets[i] = alike is not null && ReferenceEquals(alike.Steps, session.Steps) ? alike.Again(session, inPhase, inWeek) : new(session, inPhase, inWeek);
            (practice, match) = session.Kind switch
            {
                SessionKind.Practice => (sheets[i], match),
                SessionKind.Match => (practice, sheets[i]),
                _ => (practice, match),
            };
        }

        return sheets;
    }
}
