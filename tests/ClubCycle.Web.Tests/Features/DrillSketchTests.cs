using System.Globalization;
using System.Text.RegularExpressions;
using Bunit;
using ClubCycle.Web.Features.Exercises;
using ClubCycle.Web.Tests.Shell;

namespace ClubCycle.Web.Tests.Features;

public sealed class DrillSketchTests
{
    public static TheoryData<string> Names => [.. Sketches.All.Select(sketch => sketch.Exercise)];

    [Fact]
    public async Task An_exercise_without_a_sketch_shows_nothing()
    {
        await using var context = new BunitContext();

        Assert.Equal("", Render(context, "Slow walk and story").Markup.Trim());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public async Task A_sketch_is_read_as_its_name_and_its_set_up(string name)
    {
        await using var context = new BunitContext();

        var picture = Render(context, name).Find("svg[role=img]");

        Assert.Equal([$"Set-up: {name}", Sketches.Find(name)!.Setup], picture.Children.Take(2).Select(child => child.TextContent));
        Assert.Equal(["title", "desc"], picture.Children.Take(2).Select(child => child.LocalName));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public async Task The_key_names_everybody_in_the_sketch(string name)
    {
        await using var context = new BunitContext();

        var key = Render(context, name).FindAll("figcaption span").Select(sign => sign.LastChild!.TextContent).ToList();

        Assert.Distinct(key);
        Assert.Subset(key.ToHashSet(), Sketches.Find(name)!.Items.OfType<SketchItem.Person>().Select(person => person.Role.ToString().ToLowerInvariant()).ToHashSet());
    }

    [Fact]
    public async Task The_key_tells_apart_every_way_of_the_game()
    {
        await using var context = new BunitContext();

        Assert.Equal(["attacker", "defender", "gate", "ball", "run", "pass"], Render(context, "Small-sided game").FindAll("figcaption span").Select(sign => sign.LastChild!.TextContent));
    }

    [Fact]
    public async Task No_two_people_look_alike_without_colour()
    {
        await using var context = new BunitContext();

        var signs = Sketches.All
            .SelectMany(sketch => Render(context, sketch.Exercise).FindAll("figcaption .sketch-person").Select(sign => (Role: sign.ParentElement!.LastChild!.TextContent, Sign: sign)))
            .DistinctBy(pair => pair.Role)
            .Select(pair => (pair.Sign.QuerySelector("text")!.TextContent, pair.Sign.QuerySelector("path")!.OuterHtml))
            .ToList();

        Assert.Equal(Enum.GetValues<Role>().Length, signs.Count);
        Assert.Distinct(signs.Select(sign => sign.Item1));
        Assert.Distinct(signs.Select(sign => sign.Item2));
    }

    /// <summary>Also leaves the page below artifacts, for a look at all sketches side by side.</summary>
    [Fact]
    public async Task A_page_of_all_sketches_needs_neither_script_nor_inline_style()
    {
        await using var context = new BunitContext();

        var sketches = Sketches.All.Select(sketch => $"<section><h2>{sketch.Exercise}</h2>{Render(context, sketch.Exercise).Markup}</section>").ToList();

        var css = StyleSheet.PathOf("clubcycle.css");
        var root = css[..css.IndexOf(Path.Combine("src", "ClubCycle.Web"), StringComparison.Ordinal)];
        await File.WriteAllTextAsync(
            Path.Combine(root, "artifacts", "sketches.html"),
            $"<!DOCTYPE html><html lang=\"en\"><meta charset=\"utf-8\"><title>Sketches</title><link rel=\"stylesheet\" href=\"../src/ClubCycle.Web/wwwroot/css/clubcycle.css\"><link rel=\"stylesheet\" href=\"sketches.css\"><body>{string.Concat(sketches)}</body></html>",
            Xunit.TestContext.Current.CancellationToken);
        Assert.All(sketches, sketch => Assert.DoesNotMatch(new Regex(@"<script|\sstyle=|\son[a-z]+=", RegexOptions.IgnoreCase), sketch));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Numbers_are_written_with_a_point_whatever_the_language(string name)
    {
        await using var context = new BunitContext();
        var before = Render(context, name).Markup;

        var language = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = new("de-DE");
        try
        {
            Assert.Equal(before, Render(context, name).Markup);
            Assert.DoesNotMatch(@" d=""[^""]*,", before);
        }
        finally
        {
            CultureInfo.CurrentCulture = language;
        }
    }

    private static IRenderedComponent<DrillSketch> Render(BunitContext context, string exercise) => context.Render<DrillSketch>(p => p.Add(c => c.Exercise, exercise));
}
