using Bunit;
using ClubCycle.Planning.Workouts;
using ClubCycle.Web.Features.Weeks;

namespace ClubCycle.Web.Tests.Features;

public sealed class SheetStepsTests
{
    [Fact]
    public async Task Steps_stand_under_the_parts_of_the_session_in_its_order()
    {
        await using var context = new BunitContext();

        var sheet = Render(context, [new("warm-up", "Jog", ""), new("main", "Squat", ""), new("main", "Lunge", ""), new("cool-down", "Walk", "")]);

        Assert.Equal(
            ["Warm-up: Jog", "Main: Squat, Lunge", "Cool-down: Walk"],
            sheet.FindAll("section").Select(s => $"{s.QuerySelector("h3")!.TextContent}: {string.Join(", ", s.QuerySelectorAll("ol > li .sheet-name").Select(n => n.TextContent))}"));
    }

    [Fact]
    public async Task The_amount_reads_as_in_the_players_calendar()
    {
        await using var context = new BunitContext();

        var sheet = Render(context, [new("core", "Side plank", "", Sets: 2, Reps: 5, Seconds: 8, RestSeconds: 30)]);

        Assert.Equal("2 × 5 × 8 s, rest 30 s", sheet.Find(".sheet-dose").TextContent);
    }

    [Fact]
    public async Task A_step_without_numbers_has_its_note_alone()
    {
        await using var context = new BunitContext();

        var step = Render(context, [new("main", "Tag games", "Keep everybody moving.")]).Find("li");

        Assert.Equal(["Tag games", "Keep everybody moving."], step.Children.Select(c => c.TextContent));
    }

    [Fact]
    public async Task Cautions_are_listed_apart()
    {
        await using var context = new BunitContext();

        var cautions = Render(context, [], "Stop if it hurts.", "Land softly.").Find("aside");

        Assert.Equal("Take care", cautions.GetAttribute("aria-label"));
        Assert.Equal(["Stop if it hurts.", "Land softly."], cautions.QuerySelectorAll("li").Select(c => c.TextContent));
    }

    [Fact]
    public async Task Without_cautions_nothing_is_said_about_them()
    {
        await using var context = new BunitContext();

        Assert.Empty(Render(context, [new("main", "Squat", "")]).FindAll("aside"));
    }

    private static IRenderedComponent<SheetSteps> Render(BunitContext context, IReadOnlyList<Step> steps, params IReadOnlyList<string> cautions) =>
        context.Render<SheetSteps>(p => p.Add(c => c.Steps, steps).Add(c => c.Cautions, cautions));
}
