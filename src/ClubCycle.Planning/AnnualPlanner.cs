using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Templates;
using ClubCycle.Planning.Weeks;
using ClubCycle.Planning.Workouts;
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
            .. SwapProblems(request),
        ];
        if (problems.Count > 0)
        {
            return new Result<SquadPlan>.Failed([.. problems.Distinct()]);
        }

        return CyclePhases.Of(request.Season, request.Template, request.FirstWeekday, request.Fixtures?.Select(f => (NodaTime.LocalDate?)f.Date).Min(), Joins(request)) switch
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
            Findings = [.. year.Findings.Concat(PlanRules.Check(request, draft)).OrderBy(f => f.Week is null).ThenBy(f => f.Week).ThenBy(f => f.Strength).ThenBy(f => f.Rule, StringComparer.Ordinal)],
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

            if (fixture.Opponent is { } opponent && !IsLabel(opponent, LongestLabel))
            {
                yield return new Problem("fixture.opponent", $"The opponent's name has {LongestLabel} characters at most, on one line. Shorten it.", $"fixtures[{i}].opponent");
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

            if (!IsLabel(days.Why, ClosedDays.LongestWhy))
            {
                yield return new Problem("closed.why", $"The reason has {ClosedDays.LongestWhy} characters at most, on one line. Shorten it.", $"closed[{i}].why");
            }
        }
    }

    private static IEnumerable<Problem> SwapProblems(PlanRequest request)
    {
        foreach (var (i, pin) in (request.Pins ?? []).Index())
        {
            if (pin.Workout is { } name && WorkoutCatalogue.Find(name)?.AllowedFor(request.Squad.AgeGroup) != true)
            {
                yield return new Problem(
                    "pin.workout",
                    $"'{name}' is no workout for {request.Squad.AgeGroup.Name}. These are: {string.Join(", ", WorkoutCatalogue.All.Where(w => w.AllowedFor(request.Squad.AgeGroup)).Select(w => w.Name))}.",
                    $"pins[{i}].workout");
            }
        }
    }

    private static bool IsLabel(string text, int most) => TypedText.Length(text) <= most && !text.Any(char.IsControl);

    private static string Iso(NodaTime.LocalDate date) => LocalDatePattern.Iso.Format(date);
}
