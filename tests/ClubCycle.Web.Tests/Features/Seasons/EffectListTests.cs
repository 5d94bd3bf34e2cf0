using Bunit;
using ClubCycle.Planning;
using ClubCycle.Planning.Rules;
using ClubCycle.Web.Features.Seasons;
using NodaTime;

namespace ClubCycle.Web.Tests.Features.Seasons;

public sealed class EffectListTests
{
    private static readonly LocalDate Monday = new(2026, 10, 5);

    [Fact]
    public async Task Each_squad_says_what_stays_moves_comes_and_goes_and_how_findings_change()
    {
        await using var context = new BunitContext();
        var kept = A.Session(Monday);
        var moved = A.Session(Monday.PlusDays(1));
        var before = A.Plan([A.Week(Monday)], [kept, moved, A.Session(Monday.PlusDays(2))], [A.Finding(Strength.Should)]);
        var after = A.Plan([A.Week(Monday)], [kept, moved with { Date = Monday.PlusDays(3) }], []);

        var list = context.Render<EffectList>(p => p.Add(c => c.Effects, [new SeasonEffect(Guid.Empty, "Blue", before, after, [])]).Add(c => c.Nobody, "nobody"));

        Assert.Equal(["Blue", "1", "1", "0", "1", "1 → 0"], list.FindAll("tbody tr > *").Select(c => c.TextContent.Trim()));
    }

    [Fact]
    public async Task A_squad_that_cannot_be_planned_says_why()
    {
        await using var context = new BunitContext();

        var list = context.Render<EffectList>(p => p.Add(c => c.Effects, [new SeasonEffect(Guid.Empty, "Blue", null, null, [new Problem("x", "No chain fits.")])]).Add(c => c.Nobody, "nobody"));

        Assert.Equal("No chain fits.", list.Find("[role=alert]").TextContent.Trim());
    }

    [Fact]
    public async Task Without_a_squad_it_says_so()
    {
        await using var context = new BunitContext();

        Assert.Equal("nobody", context.Render<EffectList>(p => p.Add(c => c.Effects, []).Add(c => c.Nobody, "nobody")).Find("p").TextContent);
    }
}
