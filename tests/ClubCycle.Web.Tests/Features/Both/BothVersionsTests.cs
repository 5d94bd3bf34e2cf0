using Bunit;
using ClubCycle.Data.Edits;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Templates;
using ClubCycle.Web.Features.Both;
using Microsoft.AspNetCore.Components;
using NodaTime;

namespace ClubCycle.Web.Tests.Features.Both;

public sealed class BothVersionsTests : BunitContext
{
    private static readonly IReadOnlyList<Difference> Differences = Difference.Of(("Name", "Blue", "Azure"), ("Start", "14:00", "14:00"), ("Opponent", "", "Northgate"));

    [Fact]
    public void Only_what_differs_stands_side_by_side_and_an_empty_field_is_called_so()
    {
        var rows = Part().FindAll("tbody tr").Select(r => r.Children.Select(c => c.TextContent));

        Assert.Equal([["Name", "Blue", "Azure"], ["Opponent", "nothing", "Northgate"]], rows);
    }

    [Fact]
    public void It_says_who_was_first_and_when_and_that_nothing_is_lost()
    {
        var words = Part().Find("p").TextContent;

        Assert.Contains("Ana saved", words, StringComparison.Ordinal);
        Assert.Contains("at 20:14", words, StringComparison.Ordinal);
        Assert.Contains("nothing you typed is lost", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_name_it_speaks_of_somebody() => Assert.Contains("Somebody saved", Part(last: null).Find("p").TextContent, StringComparison.Ordinal);

    [Fact]
    public async Task Each_button_does_its_own_act_once()
    {
        List<string> done = [];
        var part = Part(mine: () => done.Add("mine"), theirs: () => done.Add("theirs"));

        await part.FindAll("button")[0].ClickAsync();
        await part.FindAll("button")[1].ClickAsync();

        Assert.Equal(["mine", "theirs"], done);
    }

    [Fact]
    public void A_name_from_right_to_left_stays_in_its_place() =>
        Assert.Equal("محمد", Part(last: new LastSave("محمد", new LocalDateTime(2026, 3, 3, 20, 14))).Find("p bdi").TextContent);

    [Fact]
    public void What_was_typed_is_text_and_no_markup() =>
        Assert.Empty(Part(Difference.Of(("Name", "<b>x</b>", "y"))).FindAll("b"));

    [Fact]
    public void Templates_are_told_apart_as_a_coach_would()
    {
        var theirs = BuiltInTemplates.For(AgeGroup.Senior);
        var mine = theirs with { Title = "Ours", Loading = theirs.Loading with { FirstWeekVolume = 0.55 } };

        var part = Render<TemplateDifferences>(p => p.Add(c => c.Mine, mine).Add(c => c.Theirs, theirs));

        Assert.Contains("Yours is called Ours instead of Senior standard.", part.Find("p").TextContent, StringComparison.Ordinal);
        Assert.StartsWith("A phase starts with 55 %", Assert.Single(part.FindAll("li")).TextContent, StringComparison.Ordinal);
    }

    private IRenderedComponent<BothVersions> Part(IReadOnlyList<Difference>? differences = null, Action? mine = null, Action? theirs = null) =>
        Part(new LastSave("Ana", new LocalDateTime(2026, 3, 3, 20, 14)), differences, mine, theirs);

    private IRenderedComponent<BothVersions> Part(LastSave? last, IReadOnlyList<Difference>? differences = null, Action? mine = null, Action? theirs = null) => Render<BothVersions>(p => p
        .Add(c => c.Key, "it").Add(c => c.Thing, "these dates").Add(c => c.Last, last).Add(c => c.Differences, differences ?? Differences)
        .Add(c => c.OnMine, EventCallback.Factory.Create(this, mine ?? (() => { }))).Add(c => c.OnTheirs, EventCallback.Factory.Create(this, theirs ?? (() => { }))));
}
