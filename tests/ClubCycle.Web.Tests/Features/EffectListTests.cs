using Bunit;
using ClubCycle.Data;
using ClubCycle.Data.Plans;
using ClubCycle.Planning;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;
using ClubCycle.Web.Features.Plans;
using NodaTime;

namespace ClubCycle.Web.Tests.Features;

public sealed class EffectListTests
{
    private static readonly LocalDate Monday = new(2026, 10, 5);

    [Fact]
    public async Task A_new_finding_is_told_by_its_message_and_week()
    {
        await using var context = new BunitContext();

        var list = Render(context, Effect("Blue", After: Findings(A.Finding(Strength.Must, Monday))));

        Assert.Contains("Too much. week from 5 Oct", Words(list.Find(".effect-findings li").TextContent), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Many_new_findings_of_a_rule_are_one_line_by_the_rules_name()
    {
        await using var context = new BunitContext();
        var name = PlanRules.All.Single(r => r.Id == "R36").Sentence;

        var list = Render(context, Effect("Blue", After: Findings(A.Finding(Strength.Should, Monday), A.Finding(Strength.Should, Monday.PlusWeeks(1)))));

        Assert.Contains($"{name} weeks from 5 Oct, 12 Oct", Words(Assert.Single(list.FindAll(".effect-findings li")).TextContent), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_finding_that_was_there_before_is_not_new()
    {
        await using var context = new BunitContext();
        var plan = Findings(A.Finding(Strength.Must, Monday));

        var list = Render(context, Effect("Blue", plan, plan));

        Assert.Empty(list.FindAll(".effect-findings"));
    }

    [Fact]
    public async Task Squads_are_told_from_the_one_that_cannot_be_planned_to_the_one_that_stays_the_same()
    {
        await using var context = new BunitContext();
        var plan = Findings();

        var list = Render(
            context,
            Effect("Same", plan, plan),
            Effect("Should", plan, Findings(A.Finding(Strength.Should, Monday))),
            Effect("Must", plan, Findings(A.Finding(Strength.Must, Monday))),
            new SquadEffect(NewId.Create(), "Broken", plan, null, [new Problem("season.too-short", "Too short.")]));

        Assert.Equal(["Broken", "Must", "Should", "Same"], list.FindAll("summary strong").Select(s => s.TextContent));
        Assert.Contains("4 squads: 1 cannot be planned, 2 with new findings, 1 unchanged.", list.Markup, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1, true)]
    [InlineData(6, false)]
    public async Task Each_squad_is_folded_away_when_there_are_many(int squads, bool open)
    {
        await using var context = new BunitContext();

        var list = Render(context, [.. Enumerable.Range(0, squads).Select(i => Effect($"Squad {i}", Findings(), Findings()))]);

        Assert.All(list.FindAll("details"), d => Assert.Equal(open, d.HasAttribute("open")));
    }

    [Fact]
    public async Task Sessions_moved_added_and_dropped_are_listed_with_reasons()
    {
        await using var context = new BunitContext();
        var moved = A.Session(Monday);
        var dropped = A.Session(Monday.PlusDays(2), title: "Hill runs");
        var added = A.Session(Monday.PlusDays(3), title: "Sprints");

        var list = Render(context, Effect("Blue", A.Plan([], [moved, dropped]), A.Plan([], [moved with { Date = Monday.PlusDays(1) }, added])));

        Assert.Contains("0 kept, 1 moved, 1 added, 1 dropped", Words(list.Find("summary").TextContent), StringComparison.Ordinal);
        Assert.Contains("Its day no longer fits", list.Find(".diff-moved").TextContent, StringComparison.Ordinal);
        Assert.Contains("It is no longer part of the plan.", list.Find(".diff-dropped").TextContent, StringComparison.Ordinal);
        Assert.Contains("Sprints", list.Find(".diff-added").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_session_that_only_changes_its_length_tells_its_time_once()
    {
        await using var context = new BunitContext();
        var session = A.Session(Monday);

        var list = Render(context, Effect("Blue", A.Plan([], [session]), A.Plan([], [session with { Minutes = 60 }])));

        Assert.Equal("Strength circuit: Mon 5 Oct, 18:00. It lasts 60 minutes instead of 45.", Words(list.Find(".diff-moved").TextContent));
    }

    [Fact]
    public async Task A_phase_that_changes_says_what_it_was()
    {
        await using var context = new BunitContext();

        var list = Render(context, Effect("Blue", Phases(4), Phases(6)));

        Assert.Contains("Mixed 6 (was 4) weeks", list.Markup, StringComparison.Ordinal);
    }

    private static SquadPlan Findings(params Finding[] findings) => A.Plan([], findings: findings);

    private static SquadPlan Phases(int weeks) => A.Plan([]) with { Phases = [new Phase(PhaseKind.Mixed, Monday, Monday.PlusWeeks(weeks).PlusDays(-1), weeks, "")] };

    private static SquadEffect Effect(string name, SquadPlan? Before = null, SquadPlan? After = null) => new(NewId.Create(), name, Before, After, []);

    private static string Words(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static IRenderedComponent<EffectList> Render(BunitContext context, params SquadEffect[] effects) => context.Render<EffectList>(p => p.Add(c => c.Effects, effects));
}
