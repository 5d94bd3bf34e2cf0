using Bunit;
using ClubCycle.Planning;
using ClubCycle.Planning.Workouts;
using ClubCycle.Web.Features.Weeks;
using Microsoft.AspNetCore.Components;
using NodaTime;

namespace ClubCycle.Web.Tests.Features;

public sealed class SessionEditorTests
{
    private static readonly LocalDate Monday = new(2026, 10, 5);

    [Fact]
    public async Task Days_that_are_over_cannot_be_chosen()
    {
        await using var context = new BunitContext();

        Assert.Equal([true, true, false, false, false, false, false], Render(context, SessionForm.New(Monday.PlusDays(2))).FindAll("#edit-day option").Select(o => o.HasAttribute("disabled")));
    }

    [Fact]
    public async Task What_is_filled_in_is_in_the_form_when_it_is_saved()
    {
        await using var context = new BunitContext();
        var form = SessionForm.New(Monday.PlusDays(2));
        var saved = 0;
        var editor = Render(context, form, () => saved++);

        await editor.Find("#edit-day").ChangeAsync("2026-10-09");
        await editor.Find("#edit-start").ChangeAsync("18:15");
        await editor.Find("#edit-minutes").ChangeAsync("25");
        await editor.Find("#edit-workout").ChangeAsync("easy-run");
        await editor.Find("#edit-note").ChangeAsync("Bring a mat.");
        await editor.Find("button").ClickAsync();

        Assert.Equal((Monday.PlusDays(4), new LocalTime(18, 15), 25, "easy-run", "Bring a mat."), (form.Date, form.Start!.Value, form.Minutes!.Value, form.Workout, form.Note));
        Assert.Equal(1, saved);
    }

    [Fact]
    public async Task Nothing_is_added_before_it_is_said_what_it_is()
    {
        await using var context = new BunitContext();

        Assert.True(Render(context, SessionForm.New(Monday.PlusDays(2))).Find("button").HasAttribute("disabled"));
    }

    [Fact]
    public async Task Problems_are_shown_beside_the_buttons()
    {
        await using var context = new BunitContext();

        var editor = Render(context, SessionForm.New(Monday.PlusDays(2)), problems: [new Problem("pin.minutes", "A session lasts 10 to 120 minutes.", "pin.minutes")]);

        Assert.Contains("A session lasts 10 to 120 minutes.", editor.Markup, StringComparison.Ordinal);
    }

    private static IRenderedComponent<SessionEditor> Render(BunitContext context, SessionForm form, Action? save = null, IReadOnlyList<Problem>? problems = null) =>
        context.Render<SessionEditor>(p => p.Add(c => c.Title, "Add a session").Add(c => c.Verb, "Add it").Add(c => c.Form, form).Add(c => c.WeekFirst, Monday).Add(c => c.Today, Monday.PlusDays(2))
            .Add(c => c.Workouts, [.. WorkoutCatalogue.All]).Add(c => c.MinutesNeeded, true).Add(c => c.Problems, problems ?? []).Add(c => c.OnSave, EventCallback.Factory.Create(form, save ?? (() => { }))));
}
