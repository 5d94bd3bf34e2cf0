using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Templates;
using ClubCycle.Planning.Weeks;
using NodaTime.Text;

namespace ClubCycle.Planning;

/// <summary>The front door: a request in, a squad's year and what is wrong with it out. No clock, no chance, no I/O.</summary>
public static class AnnualPlanner
{
    private const int LongestLabel = 100;

    public static Result<SquadPlan> Plan(PlanRequest request)
    {
        IReadOnlyList<Problem> problems =
        [
            .. SquadCheck.Check(request.Squad),
            .. TemplateCheck.Check(request.Template),
            .. TemplateCheck.CheckFor(request.Template, request.Squad.AgeGroup),
            .. FixtureProblems(request),
            .. ClosedProblems(request.Closed),
            .. PinProblems(request),
            .. LengthProblems(request),
            .. BeforeProblems(request),
        ];
        if (problems.Count > 0)
        {
            return new Result<SquadPlan>.Failed([.. problems.Distinct()]);
        }

        return CyclePhases.Of(request.Season, request.Template, request.FirstWeekday, request.Fixtures?.Select(f => (NodaTime.LocalDate?)f.Date).Min(), Joins(request), GivenPhases.Of(request)) switch
        {
            Result<CyclePhases>.Ok(var phases) => Planned(request, phases),
            Result<CyclePhases>.Failed failed => new Result<SquadPlan>.Failed(failed.Problems),
            var other => throw new InvalidOperationException($"Unknown result {other.GetType()}"),
        };
    }

    /// <summary>A squad of which nothing is published joins on the first planned day; once it has joined, it stays so.</summary>
    private static NodaTime.LocalDate? Joins(PlanRequest request) => request.Published is not { } published ? request.PlanFrom
        : published.Phases.FirstOrDefault(p => p.Chain == CyclePhases.BeforeJoining)?.Last.PlusDays(1);

    private static SquadPlan Planned(PlanRequest request, CyclePhases phases)
    {
        var year = YearBuilder.Build(request, phases);
        var draft = new SquadPlan(
            request.Season.Cycle, phases.Phases, year.Weeks, year.Sessions, [],
            PlanDiff.Between(request.Published?.Sessions, year.Sessions, uid => year.WhyGone.GetValueOrDefault(uid)))
        {
            LeftOut = year.LeftOut,
        };
        return draft with
        {
            Findings = [.. year.Findings.Concat(phases.Findings).Concat(PlanRules.Check(request, draft)).OrderBy(f => f.Week is null).ThenBy(f => f.Week).ThenBy(f => f.Strength).ThenBy(f => f.Rule, StringComparer.Ordinal)],
        };
    }

    private static IEnumerable<Problem> FixtureProblems(PlanRequest request)
    {
        var cycle = request.Season.Cycle;
        HashSet<Guid> keys = [];
        foreach (var (i, fixture) in (request.Fixtures ?? []).Index())
        {
            if (!cycle.Contains(fixture.Date))
            {
                yield return new Problem(
                    "fixture.outside-cycle",
                    $"The match on {Iso(fixture.Date)} lies outside the planning year {Iso(cycle.Start)} to {Iso(cycle.End)}. Move it, or change the season dates.",
                    $"fixtures[{i}].date");
            }

            if (fixture.Opponent is { } opponent && !IsLabel(opponent))
            {
                yield return new Problem("fixture.opponent", $"The opponent's name has {LongestLabel} characters at most, on one line. Shorten it.", $"fixtures[{i}].opponent");
            }

            if (fixture.Place is { } place && !IsLabel(place))
            {
                yield return new Problem("fixture.place", $"The place has {LongestLabel} characters at most, on one line. Shorten it.", $"fixtures[{i}].place");
            }

            if (fixture.Key is { } key && !keys.Add(key))
            {
                yield return new Problem("fixture.duplicate-id", "Two matches have the same id. Give each its own, or leave ids out.", $"fixtures[{i}].id");
            }
        }
    }

    private static IEnumerable<Problem> ClosedProblems(IReadOnlyList<ClosedDays> closed)
    {
        foreach (var (i, days) in closed.Index())
        {
            if (days.Last < days.First)
            {
                yield return new Problem("closed.reversed", $"The closed days end on {Iso(days.Last)}, before they start on {Iso(days.First)}. Swap the two dates.", $"closed[{i}].last");
            }

            if (!IsLabel(days.Why))
            {
                yield return new Problem("closed.why", $"The reason has {LongestLabel} characters at most, on one line. Shorten it.", $"closed[{i}].why");
            }
        }
    }

    private static IEnumerable<Problem> PinProblems(PlanRequest request)
    {
        Dictionary<NodaTime.LocalDate, HashSet<string>> added = [];
        foreach (var (i, pin) in (request.Pins ?? []).Index())
        {
            foreach (var problem in PinCheck.Check(pin, request.Squad.AgeGroup, $"pins[{i}]"))
            {
                yield return problem;
            }

            if (!pin.IsAdded)
            {
                continue;
            }

            var ofWeek = added.TryGetValue(pin.WeekFirst, out var known) ? known : added[pin.WeekFirst] = new(StringComparer.Ordinal);
            if (!ofWeek.Add(pin.Slot))
            {
                yield return new Problem("pin.duplicate", $"The week of {Iso(pin.WeekFirst)} has two added sessions '{pin.Slot}'. Give each its own number.", $"pins[{i}].slot");
            }
            else if (ofWeek.Count == PinCheck.MostAdded + 1)
            {
                yield return new Problem("pin.too-many", $"A week takes {PinCheck.MostAdded} added sessions at most. Remove one.", $"pins[{i}]");
            }
        }
    }

    private static IEnumerable<Problem> LengthProblems(PlanRequest request)
    {
        HashSet<(int, string, int)> seen = [];
        foreach (var (i, length) in (request.Lengths ?? []).Index())
        {
            if (length.Gap < 0 || length.Phase < 0 || length.Weeks is < 0 or > PhaseLength.MostWeeks)
            {
                yield return new Problem("length.range", $"Gap and phase count from 0, and a phase lasts 0 to {PhaseLength.MostWeeks} weeks.", $"lengths[{i}]");
            }

            if (!seen.Add((length.Gap, length.Chain, length.Phase)))
            {
                yield return new Problem("length.duplicate", "This phase has two lengths. Keep one.", $"lengths[{i}]");
            }
        }
    }

    private static IEnumerable<Problem> BeforeProblems(PlanRequest request)
    {
        foreach (var (i, session) in (request.Before ?? []).Index())
        {
            if (session.Date >= request.Season.Cycle.Start)
            {
                yield return new Problem(
                    "before.in-cycle",
                    $"'{session.Title}' on {Iso(session.Date)} is not before the planning year, which starts on {Iso(request.Season.Cycle.Start)}. Leave it out.",
                    $"before[{i}].date");
            }
        }
    }

    private static bool IsLabel(string text) => text.Length <= LongestLabel && !text.Any(char.IsControl);

    private static string Iso(NodaTime.LocalDate date) => LocalDatePattern.Iso.Format(date);
}
