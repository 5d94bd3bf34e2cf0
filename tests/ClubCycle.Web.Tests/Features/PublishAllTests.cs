using Bunit;
using ClubCycle.Data;
using ClubCycle.Data.Plans;
using ClubCycle.Planning;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Squads;
using ClubCycle.Web.Features.Board;

namespace ClubCycle.Web.Tests.Features;

public sealed class PublishAllTests
{
    private static readonly PlanRequest Request = PlanFile.ReadRequest(A.PlanRequest()).OrThrow();
    private static readonly BoardDraft Ready = Draft("Blue", 0);
    private static readonly BoardDraft ReadyToo = Draft("Red", 0);
    private static readonly BoardDraft InTheWay = Draft("Green", 0, A.Finding(Strength.Must));
    private static readonly BoardDraft Broken = new(NewId.Create(), "White", AgeGroup.Senior, new Problem("season.missing", "No season yet."));
    private static readonly BoardDraft Same = Draft("Black", 3);

    [Fact]
    public async Task It_asks_first_with_the_counts_and_says_who_waits_and_why()
    {
        await using var context = new BunitContext();

        var panel = Render(context, (_, _, _, _) => throw new InvalidOperationException("Nobody has confirmed yet"));

        Assert.Equal("Publish 2 squads to players?", panel.Find("h2").TextContent);
        var lines = panel.FindAll(".outcomes li").Select(l => l.TextContent).ToList();
        Assert.Equal(4, lines.Count);
        Assert.All(lines.Take(2), l => Assert.Contains("for the first time", l, StringComparison.Ordinal));
        var waiting = lines[2..];
        Assert.Contains("One binding finding stands in the way: Too much.", waiting[0], StringComparison.Ordinal);
        Assert.Contains("No season yet.", waiting[1], StringComparison.Ordinal);
        Assert.Contains("1 squad has nothing new.", panel.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_ready_squads_are_asked_for_with_the_revision_that_is_shown_and_the_outcome_is_told_squad_by_squad()
    {
        await using var context = new BunitContext();
        IReadOnlyList<SquadToPublish> asked = [];

        var panel = Render(context, (squads, _, _, _) =>
        {
            asked = squads;
            return Task.FromResult<Result<IReadOnlyList<SquadOutcome<Revision>>>>(new Result<IReadOnlyList<SquadOutcome<Revision>>>.Ok(
            [
                new(Ready.SquadId, new Revision(1, default, null, "")),
                new(ReadyToo.SquadId, new Problem("plan.changed-meanwhile", "Somebody was first.")),
            ]));
        });
        await panel.FindAll("button").Single(b => b.TextContent == "Publish 2 squads").ClickAsync();

        Assert.Equal([(Ready.SquadId, 0), (ReadyToo.SquadId, 0)], asked.Select(a => (a.SquadId, a.ExpectedRevision)));
        Assert.Equal("1 squad published", panel.Find("h2").TextContent);
        Assert.Contains("published as revision 1", panel.FindAll(".outcomes li")[0].TextContent, StringComparison.Ordinal);
        Assert.Contains("was left out. Somebody was first.", panel.FindAll(".outcomes li")[1].TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Pressing_again_after_a_refusal_asks_with_the_same_commands()
    {
        await using var context = new BunitContext();
        List<IReadOnlyList<Guid>> commands = [];

        var panel = Render(context, (squads, _, _, _) =>
        {
            commands.Add([.. squads.Select(s => s.CommandId)]);
            return Task.FromResult<Result<IReadOnlyList<SquadOutcome<Revision>>>>(new Problem("account.head-coach-only", "Only a head coach."));
        });
        await panel.FindAll("button").Single(b => b.TextContent == "Publish 2 squads").ClickAsync();
        await panel.FindAll("button").Single(b => b.TextContent == "Publish 2 squads").ClickAsync();

        Assert.Equal(commands[0], commands[1]);
        Assert.Contains("Only a head coach.", panel.Find("[role=alert]").TextContent, StringComparison.Ordinal);
    }

    private static BoardDraft Draft(string name, int revision, params Finding[] findings) => new(
        NewId.Create(), name, AgeGroup.Senior,
        new SquadDraft(revision == 0 ? Request : Request with { Published = A.Year() }, A.Plan([], findings: findings) with { Changes = PlanChanges.None }, revision, []));

    private static IRenderedComponent<PublishAll> Render(
        BunitContext context, Func<IReadOnlyList<SquadToPublish>, string, IProgress<SquadsDone>?, CancellationToken, Task<Result<IReadOnlyList<SquadOutcome<Revision>>>>> publish) =>
        context.Render<PublishAll>(p => p.Add(c => c.Drafts, [Ready, ReadyToo, InTheWay, Broken, Same]).Add(c => c.Publish, publish));
}
