using System.Text.Json.Nodes;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Seasons;

namespace ClubCycle.Planning.Tests.PlanFiles;

/// <summary>Plans are stored as this JSON: whatever the planner gives must read back as the same plan.</summary>
public class PublishedPlanTests
{
    private static readonly Guid Postponed = NamedId.From("fixture", "postponed");

    [Fact]
    public void Every_plan_of_the_grid_reads_back_as_it_was_written() =>
        Assert.All(PlanGrid.All().Where((_, i) => i % 41 == 0), g =>
        {
            var plan = A.Plan(g.Request);
            var text = PlanFile.WritePlan(plan);
            var again = PlanFile.ReadPlan(text).OrThrow();

            Assert.Equal(text, PlanFile.WritePlan(again));
            Assert.Equal(plan.Cycle, again.Cycle);
            Assert.Equal(plan.Phases, again.Phases);
            Assert.Equal(plan.Weeks, again.Weeks);
            Assert.Equal(plan.Findings.Select(Kept), again.Findings);
            Assert.Equal(plan.Sessions.SelectMany(s => s.Steps), again.Sessions.SelectMany(s => s.Steps));
        });

    [Fact]
    public void Changes_read_back_too()
    {
        var plan = A.Plan(A.Request()) with
        {
            Changes = new PlanChanges(
                3,
                [new Moved(Postponed, "Match: Löwen", A.Date("2026-10-03").At(A.Time("14:00")), A.Date("2026-10-04").At(A.Time("09:05")), "The match moved.")],
                [new Added(Postponed, "Easy run", A.Date("2026-10-05").At(A.Time("18:00")))],
                [new Dropped(Postponed, "Jumps", A.Date("2026-10-06").At(A.Time("18:30")), "A coach left it out.")]),
        };

        var again = PlanFile.ReadPlan(PlanFile.WritePlan(plan)).OrThrow().Changes;

        Assert.Equal(plan.Changes.Moved, again.Moved);
        Assert.Equal(plan.Changes.Added, again.Added);
        Assert.Equal(plan.Changes.Dropped, again.Dropped);
    }

    [Fact]
    public void A_match_that_is_postponed_from_the_past_stays_one_match()
    {
        var before = A.Plan(A.Request(fixtures: [new Fixture(A.Date("2026-10-03"), Key: Postponed)]));
        var after = A.Plan(A.Request(fixtures: [new Fixture(A.Date("2026-10-14"), Key: Postponed)], planFrom: A.Date("2026-10-06"), published: before));

        Assert.Equal(A.Date("2026-10-14"), Assert.Single(after.Sessions, s => s.Kind == SessionKind.Match).Date);
        Assert.Single(after.Changes.Moved, m => m.Title == "Match");
        Assert.Empty(PlanFile.ReadPlan(PlanFile.WritePlan(after)) is Result<SquadPlan>.Failed failed ? failed.Problems : []);
    }

    [Fact]
    public void A_week_closed_for_many_reasons_can_be_stored()
    {
        ClosedDays[] closed = [.. Enumerable.Range(0, 150).Select(i => new ClosedDays(A.Date("2026-07-20"), A.Date("2026-08-02"), $"{i} {new string('x', 90)}"))];
        var plan = A.Plan(A.Request(closed: closed));

        Assert.Contains(plan.Findings, f => f.Rule == "closed-week");
        Assert.Equal(plan.Findings.Select(Kept), PlanFile.ReadPlan(PlanFile.WritePlan(plan)).OrThrow().Findings);
    }

    [Theory]
    [InlineData("\"uid\": \"", "\"uid\": \"x", "request.bad-id")]
    [InlineData("\"hardness\": \"easy\"", "\"hardness\": \"light\"", "request.unknown-value")]
    [InlineData("\"plannedEffort\": 3", "\"plannedEffort\": 11", "request.out-of-range")]
    [InlineData("\"minutes\": ", "\"minutes\": -", "request.out-of-range")]
    [InlineData("\"slot\": ", "\"spot\": ", "request.unknown-property")]
    [InlineData("\"cautions\": [", "\"cautions\": 1, \"steps\": [", "request.wrong-type")]
    public void A_plan_that_was_tampered_with_is_refused(string find, string put, string code)
    {
        var text = PlanFile.WritePlan(A.Plan(A.Request()));
        Assert.Contains(find, text, StringComparison.Ordinal);

        var failed = Assert.IsType<Result<SquadPlan>.Failed>(PlanFile.ReadPlan(text.Replace(find, put, StringComparison.Ordinal)));

        Assert.Contains(failed.Problems, p => p.Code == code && p.At.StartsWith("sessions[", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("phases[0]", "phases", null)]
    [InlineData("weeks[0]", "weeks", null)]
    [InlineData("sessions[0]", "sessions", null)]
    [InlineData("leftOut[0]", "leftOut", null)]
    [InlineData("changes.moved[0]", "changes", "moved")]
    [InlineData("changes.added[0]", "changes", "added")]
    [InlineData("changes.dropped[0]", "changes", "dropped")]
    public void A_number_instead_of_a_part_of_a_plan_is_refused(string at, string part, string? inner)
    {
        var plan = JsonNode.Parse(PlanFile.WritePlan(A.Plan(A.Request())))!;
        var list = (inner is null ? plan[part] : plan[part]![inner])!.AsArray();
        list.Clear();
        list.Add(1);

        Assert.Contains(Assert.IsType<Result<SquadPlan>.Failed>(PlanFile.ReadPlan(plan.ToJsonString())).Problems, p => p.Code == "request.wrong-type" && p.At == at);
    }

    [Theory]
    [InlineData("\"2026-10-05 18:00\"", "request.bad-time")]
    [InlineData("\"2026-10-05T18:00:00\"", "request.bad-time")]
    [InlineData("20261005", "request.wrong-type")]
    public void A_change_needs_a_plain_date_and_time(string at, string code)
    {
        var plan = A.Plan(A.Request()) with { Changes = new PlanChanges(0, [], [new Added(Postponed, "Easy run", A.Date("2026-10-05").At(A.Time("18:00")))], []) };
        var text = PlanFile.WritePlan(plan).Replace("\"2026-10-05T18:00\"", at, StringComparison.Ordinal);

        Assert.Equal(code, Assert.Single(Assert.IsType<Result<SquadPlan>.Failed>(PlanFile.ReadPlan(text)).Problems, p => p.At == "changes.added[0].at").Code);
    }

    [Fact]
    public void A_plan_from_before_findings_said_what_forced_them_reads_too()
    {
        var text = PlanFile.WritePlan(A.Plan(A.Request()));
        var old = System.Text.RegularExpressions.Regex.Replace(text, ",\\s*\"forcedBy\": \"[a-z-]+\"", "");

        Assert.NotEqual(text, old);
        Assert.All(PlanFile.ReadPlan(old).OrThrow().Findings, f => Assert.Null(f.ForcedBy));
    }

    /// <summary>What a plan file keeps of a finding.</summary>
    private static Finding Kept(Finding finding) => finding with { Facts = null };

    [Fact]
    public void Two_sessions_with_one_uid_are_refused()
    {
        var plan = A.Plan(A.Request());
        var doubled = plan with { Sessions = [plan.Sessions[0], plan.Sessions[1] with { Uid = plan.Sessions[0].Uid }] };

        Assert.Equal("published.duplicate-uid", Assert.IsType<Result<SquadPlan>.Failed>(PlanFile.ReadPlan(PlanFile.WritePlan(doubled))).First.Code);
    }
}
