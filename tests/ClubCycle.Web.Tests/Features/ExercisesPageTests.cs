using Bunit;
using ClubCycle.Planning.Workouts;
using ClubCycle.Web.Features.Exercises;

namespace ClubCycle.Web.Tests.Features;

public sealed class ExercisesPageTests
{
    [Fact]
    public void The_list_starts_short_and_shows_the_whole_library_when_asked()
    {
        using BunitContext context = new();
        var page = Render(context);

        Assert.Equal(40, Rows(page));
        page.Find("button").Click();

        Assert.Equal(ExerciseLibrary.All.Count, Rows(page));
    }

    [Fact]
    public void Filters_narrow_the_list_together()
    {
        using BunitContext context = new();
        var page = Render(context);

        page.Find("#quality").Change("Agility");
        page.Find("#ages").Change("U12");
        page.Find("input[type=checkbox]").Change(true);

        Assert.DoesNotContain("Show the other", page.Markup, StringComparison.Ordinal);
        Assert.Equal(ExerciseLibrary.All.Count(e => e.Qualities.Contains(Quality.Agility) && e.YoungestAge <= 10 && e.Equipment.Count == 0), Rows(page));
        Assert.InRange(Rows(page), 1, ExerciseLibrary.All.Count - 1);
    }

    [Fact]
    public void Words_that_fit_nothing_say_so()
    {
        using BunitContext context = new();
        var page = Render(context);

        page.Find("#words").Input("parachute");

        Assert.Contains("Nothing fits", page.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void An_exercise_shows_faults_variants_equipment_and_whom_it_is_for()
    {
        using BunitContext context = new();
        var exercise = ExerciseLibrary.All.First(e => e is { Easier: not null, Harder: not null, Caution: not null, WithoutEquipment: not null });

        var page = context.Render<ExercisesPage>(p => p.Add(c => c.Name, exercise.Name));

        Assert.All(exercise.Faults, fault => Assert.Contains(fault, page.Find(".details").TextContent, StringComparison.Ordinal));
        Assert.Equal(ExerciseText.Address(exercise.Easier!), page.FindAll(".details a")[0].GetAttribute("href"));
        Assert.Contains(ExerciseText.Equipment(exercise), page.Find(".details").TextContent, StringComparison.Ordinal);
        Assert.Contains(exercise.Caution!, page.Find(".cautions").TextContent, StringComparison.Ordinal);
        Assert.Contains(page.FindAll("p"), p => p.TextContent.EndsWith(exercise.WithoutEquipment!, StringComparison.Ordinal));
    }

    [Fact]
    public void A_name_that_the_library_does_not_know_leads_to_the_list()
    {
        using BunitContext context = new();

        var page = context.Render<ExercisesPage>(p => p.Add(c => c.Name, "Skydiving"));

        Assert.Contains("There is no exercise 'Skydiving'", page.Markup, StringComparison.Ordinal);
        Assert.Contains($"{ExerciseLibrary.All.Count} of them fit", page.Markup, StringComparison.Ordinal);
    }

    private static IRenderedComponent<ExercisesPage> Render(BunitContext context) => context.Render<ExercisesPage>();

    private static int Rows(IRenderedComponent<ExercisesPage> page) => page.FindAll("tbody tr").Count;
}
