using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Weeks;
using ClubCycle.Planning.Workouts;
using NodaTime;

namespace ClubCycle.Planning.Tests.Rules;

/// <summary>
/// A hand-made plan for rule tests: seasons of four weeks from Monday 3 August 2026 unless said otherwise, one phase, sessions written as
/// <c>match 2026-08-08 14:00 60</c>. Nothing here comes from the planner.
/// </summary>
internal sealed partial class Year
{
    private readonly List<PlannedSession> _sessions = [];
    private readonly List<(PhaseKind Kind, int Weeks, WeekLoading Loading, int[] Loads)> _parts = [];
    private AgeGroup _ages = AgeGroup.Senior;
    private TrainingAge _trainingAge = TrainingAge.Trained;
    private string _first = "2026-08-03";
    private IReadOnlyList<ClosedDays> _closed = [];
    private LocalDate? _joined;
    private LocalDate? _replannedFrom;

    public static Year Of(AgeGroup ages) => new() { _ages = ages };

    public static Year Of(string ages) => Of(AgeGroup.Find(ages)!.Value);

    public Year New()
    {
        _trainingAge = TrainingAge.New;
        return this;
    }

    public Year From(string first)
    {
        _first = first;
        return this;
    }

    public Year Closed(string first, string last)
    {
        _closed = [.. _closed, new ClosedDays(A.Date(first), A.Date(last), "closed")];
        return this;
    }

    /// <summary>The squad joins the tool on that day; nothing was published before.</summary>
    public Year Joined(string day)
    {
        _joined = A.Date(day);
        return this;
    }

    /// <summary>The plan is published and planned again from that day on: what lies before is history.</summary>
    public Year ReplannedFrom(string day)
    {
        _replannedFrom = A.Date(day);
        return this;
    }

    public Year Phase(PhaseKind kind, int weeks, WeekLoading loading = WeekLoading.Loading, params int[] loads)
    {
        _parts.Add((kind, weeks, loading, loads));
        return this;
    }

    /// <summary><c>sprint-intervals 2026-08-04 19:00 45</c>, <c>practice …</c>, <c>match …</c>, <c>active-recovery …</c>.</summary>
    public Year With(params string[] sessions)
    {
        foreach (var text in sessions)
        {
            var parts = text.Split(' ');
            var workout = WorkoutCatalogue.Find(parts[0]);
            var kind = parts[0] switch
            {
                "match" => SessionKind.Match,
                "practice" => SessionKind.Practice,
                "active-recovery" => SessionKind.ActiveRecovery,
                _ => SessionKind.Session,
            };
            _sessions.Add(new PlannedSession(
                NamedId.From("test", text), parts[0], A.Date(parts[1]), A.Time(parts[2]), int.Parse(parts[3], System.Globalization.CultureInfo.InvariantCulture), kind,
                workout?.Name, workout?.Qualities ?? [], kind == SessionKind.Match ? Hardness.Hard : workout?.Hardness ?? Hardness.Moderate, 5, parts[0], [], [], []));
        }

        return this;
    }

    /// <summary>The same session again and again, every so many days.</summary>
    public Year Every(int days, int times, string session)
    {
        var parts = session.Split(' ');
        return With([.. Enumerable.Range(0, times).Select(i => $"{parts[0]} {A.Date(parts[1]).PlusDays(i * days):uuuu-MM-dd} {parts[2]} {parts[3]}")]);
    }

    /// <summary>Gives every such session one lift at that percentage of maximum.</summary>
    public Year Lifting(string workout, int percent)
    {
        for (var i = 0; i < _sessions.Count; i++)
        {
            _sessions[i] = _sessions[i].Workout == workout ? _sessions[i] with { Steps = [new Step("main", "squat", "", PercentOfMaximum: percent)] } : _sessions[i];
        }

        return this;
    }

    public IReadOnlyList<Finding> Check(Rule rule)
    {
        if (_parts.Count == 0)
        {
            Phase(PhaseKind.InSeason, 4);
        }

        List<Phase> phases = [];
        List<PlanWeek> weeks = [];
        var first = A.Date(_first);
        foreach (var (kind, count, loading, loads) in _parts)
        {
            phases.Add(new Phase(kind, first, first.PlusWeeks(count).PlusDays(-1), count, kind == PhaseKind.InSeason ? "" : "test"));
            for (var i = 0; i < count; i++, first = first.PlusWeeks(1))
            {
                weeks.Add(new PlanWeek("", first, kind, i + 1, loading, loads.Length == 0 ? 0 : loads[Math.Min(i, loads.Length - 1)]));
            }
        }

        var plan = new SquadPlan(new DateInterval(A.Date(_first), first.PlusDays(-1)), phases, weeks, [.. _sessions.OrderBy(s => s.StartsAt)], [], PlanChanges.None);
        var request = A.Request(squad: A.Squad(_ages, _trainingAge), template: _template, closed: _closed, planFrom: _joined ?? _replannedFrom, published: _replannedFrom is null ? null : plan);
        return [.. rule.Check(rule, new CheckedPlan(request, plan))];
    }
}
