using System.Globalization;
using System.Text.RegularExpressions;
using ClubCycle.Planning.Workouts;
using ClubCycle.Web.Features.Exercises;

namespace ClubCycle.Web.Tests.Features;

/// <summary>What has to hold for the set-up of every drill, before it is drawn and on paper.</summary>
public sealed class SketchesTests
{
    /// <summary>Drills that a picture would not make clearer, each with its reason.</summary>
    private static readonly Dictionary<string, string> WithoutSketch = [];

    private static readonly HashSet<ExerciseUse> Drawn =
        [ExerciseUse.AgilityPlanned, ExerciseUse.AgilityCued, ExerciseUse.SmallGame, ExerciseUse.Acceleration, ExerciseUse.FlyingSprint, ExerciseUse.HillSprint];

    public static TheoryData<string> Names => [.. Sketches.All.Select(sketch => sketch.Exercise)];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_sketch_belongs_to_an_exercise_of_the_library(string name) => Assert.NotNull(ExerciseLibrary.Find(name));

    [Fact]
    public void Every_agility_drill_and_every_sprint_has_a_sketch() =>
        Assert.Equal([], ExerciseLibrary.All.Where(e => e.Uses.Any(Drawn.Contains)).Select(e => e.Name).Except(WithoutSketch.Keys).Except(Sketches.All.Select(sketch => sketch.Exercise)));

    [Fact]
    public void Only_drills_of_the_library_that_have_no_sketch_are_excused() =>
        Assert.All(WithoutSketch.Keys, name => Assert.True(ExerciseLibrary.Find(name) is not null && Sketches.Find(name) is null, name));

    [Fact]
    public void No_two_set_ups_read_the_same()
    {
        Assert.Distinct(Sketches.All.Select(sketch => sketch.Exercise));
        Assert.Distinct(Sketches.All.Select(sketch => sketch.Setup));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_set_up_is_one_sentence(string name) => Assert.Matches(@"^[A-Z][^.!?]{40,240}\.$", Find(name).Setup);

    [Theory]
    [MemberData(nameof(Names))]
    public void The_set_up_tells_of_everything_that_is_drawn(string name)
    {
        var sketch = Find(name);
        var things = sketch.Items.Select(item => item switch
        {
            SketchItem.Person person => person.Role.ToString(),
            SketchItem.Ball => "ball",
            SketchItem.Mark => "mark|home",
            SketchItem.Gate => "gate",
            SketchItem.Line => "line|barrier",
            SketchItem.Area => "area|channel|zone|base",
            SketchItem.Distance distance => Regex.Escape(distance.Words),
            SketchItem.Slope => "slope of 5 to 7 in 100",
            SketchItem.Pass => "pass",
            SketchItem.Choice => "either|at will|without warning|names one|chooses",
            _ => "",
        });

        Assert.All(things, thing => Assert.Matches(new Regex(thing, RegexOptions.IgnoreCase), sketch.Setup));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Everything_lies_on_the_ground(string name)
    {
        var (sketch, paper) = OnPaper(name);
        SketchBox ground = new(0, 0, SketchPaper.Across, paper.Down);

        Assert.All(sketch.Items.SelectMany(item => Inks(paper, item).Concat(Corners(paper.Text(item)?.Box))), at => Assert.True(ground.Holds(at), $"{at}"));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void An_arrow_leads_from_somebody_or_something_to_a_place_with_a_sign(string name)
    {
        var sketch = Find(name);

        Assert.All(Ways(sketch), way =>
        {
            Assert.True(Signed(way.From) || Ways(sketch).Any(other => other.To == way.From), $"{way.Item} starts nowhere");
            Assert.True(way.Item is SketchItem.Run { Easy: true } || Signed(way.To) || Ways(sketch).Any(other => other.Item != way.Item && Distance(way.To, other.From, other.To) < 0.1), $"{way.Item} ends nowhere");
        });

        bool Signed(Spot at) => sketch.Items.Any(item => item switch
        {
            SketchItem.Person person => person.At == at,
            SketchItem.Mark mark => mark.At == at,
            SketchItem.Ball ball => ball.At == at,
            SketchItem.Gate gate => Distance(at, gate.One, gate.Other) < 0.1,
            SketchItem.Line line => Distance(at, line.From, line.To) < 0.1,
            SketchItem.Area area => at.X >= area.From.X && at.X <= area.To.X && at.Y >= area.From.Y && at.Y <= area.To.Y && area.To.X - area.From.X < sketch.Width / 2 || OnEdge(at, area),
            _ => false,
        });
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void An_arrow_is_long_enough_to_be_one_and_its_tip_keeps_clear_of_signs(string name)
    {
        var (sketch, paper) = OnPaper(name);

        foreach (var item in sketch.Items)
        {
            Assert.All(paper.Arrows(item), arrow => Assert.True(arrow.Way[0].To(arrow.Tip) > 20, $"{item} is too short"));
            Assert.All(paper.Arrows(item), arrow => Assert.All(arrow.Head, at => Assert.DoesNotContain(Signs(paper, sketch), sign => sign.At.To(at) < sign.Radius)));
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void No_way_runs_through_a_sign(string name)
    {
        var (sketch, paper) = OnPaper(name);
        var signs = Signs(paper, sketch).ToList();

        Assert.All(sketch.Items.SelectMany(paper.Arrows).SelectMany(arrow => arrow.Way), at => Assert.DoesNotContain(signs, sign => sign.At.To(at) < sign.Radius));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void No_two_signs_touch(string name)
    {
        var (sketch, paper) = OnPaper(name);
        var signs = Signs(paper, sketch).ToList();

        Assert.All(signs.Index(), sign => Assert.DoesNotContain(signs.Skip(sign.Index + 1), other => other.At.To(sign.Item.At) < other.Radius + sign.Item.Radius));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Words_are_free_of_all_other_ink(string name)
    {
        var (sketch, paper) = OnPaper(name);
        var words = sketch.Items.Select(item => paper.Text(item)).OfType<(string Words, SketchBox Box)>().ToList();
        var ink = sketch.Items.SelectMany(item => Inks(paper, item)).ToList();

        Assert.All(words.Index(), text =>
        {
            Assert.DoesNotContain(words.Skip(text.Index + 1), other => other.Box.Touches(text.Item.Box));
            Assert.True(!ink.Any(text.Item.Box.Holds), $"{text.Item.Words} at {text.Item.Box} is crossed");
            Assert.True(!Signs(paper, sketch).Any(sign => text.Item.Box.Touches(SketchBox.Around(sign.At, 2 * sign.Radius, 2 * sign.Radius))), $"{text.Item.Words} covers a sign");
        });
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_written_distance_is_the_drawn_one_or_a_span_around_it(string name) =>
        Assert.All(Find(name).Items.OfType<SketchItem.Distance>(), distance =>
        {
            var numbers = Regex.Matches(distance.Words, @"\d+(\.\d+)?").Select(m => double.Parse(m.Value, CultureInfo.InvariantCulture)).ToList();
            Assert.InRange(distance.From.To(distance.To), numbers.Min() - 0.05, numbers.Max() + 0.05);
        });

    [Theory]
    [MemberData(nameof(Names))]
    public void A_distance_leaves_room_for_its_words(string name)
    {
        var (sketch, paper) = OnPaper(name);

        Assert.All(sketch.Items.OfType<SketchItem.Distance>().SelectMany(paper.Sides), side => Assert.True(side.From.To(side.To) > 4, $"{side}"));
    }

    [Fact]
    public void The_box_check_sees_a_word_on_a_line()
    {
        var paper = new SketchPaper(new("", 10, 10, "", []));
        var word = paper.Text(new SketchItem.Label((5, 5), "word"))!.Value.Box;

        Assert.Contains(Inks(paper, new SketchItem.Line((1, 5), (9, 5))), word.Holds);
        Assert.DoesNotContain(Inks(paper, new SketchItem.Line((1, 6), (9, 6))), word.Holds);
    }

    private static Sketch Find(string name) => Sketches.Find(name)!;

    private static (Sketch Sketch, SketchPaper Paper) OnPaper(string name) => (Find(name), new SketchPaper(Find(name)));

    private static IEnumerable<(SketchItem Item, Spot From, Spot To)> Ways(Sketch sketch) => sketch.Items.SelectMany(item => item switch
    {
        SketchItem.Run run => [(item, run.From, run.To)],
        SketchItem.Pass pass => [(item, pass.From, pass.To)],
        SketchItem.Choice choice => choice.To.Select(to => (item, choice.From, to)),
        _ => Enumerable.Empty<(SketchItem, Spot, Spot)>(),
    });

    /// <summary>The places of people, marks and balls on paper.</summary>
    private static IEnumerable<(Spot At, double Radius)> Signs(SketchPaper paper, Sketch sketch)
    {
        return sketch.Items.SelectMany(item => item switch
        {
            SketchItem.Person person => [(paper.On(person.At), SketchPaper.PersonRadius)],
            SketchItem.Mark mark => [(paper.On(mark.At), SketchPaper.MarkRadius)],
            SketchItem.Gate gate => [(paper.On(gate.One), SketchPaper.MarkRadius), (paper.On(gate.Other), SketchPaper.MarkRadius)],
            SketchItem.Ball ball => [(paper.On(ball.At), SketchPaper.BallRadius)],
            _ => Enumerable.Empty<(Spot, double)>(),
        });
    }

    /// <summary>Points close together on everything that is drawn as a stroke.</summary>
    private static IEnumerable<Spot> Inks(SketchPaper paper, SketchItem item) => item switch
    {
        SketchItem.Line line => Between(paper.On(line.From), paper.On(line.To)),
        SketchItem.Gate gate => Between(paper.On(gate.One), paper.On(gate.Other)),
        SketchItem.Area area => Edges(area).SelectMany(edge => Between(paper.On(edge.From), paper.On(edge.To))),
        SketchItem.Distance distance => paper.Sides(distance).SelectMany(side => Between(side.From, side.To)),
        SketchItem.Slope slope => Between(paper.On(slope.From), paper.On(slope.To)).SelectMany(at => new[] { at, new Spot(at.X, at.Y - SketchPaper.SlopeHeight) }),
        _ => paper.Arrows(item).SelectMany(arrow => arrow.Way.Concat(arrow.Head)),
    };

    private static IEnumerable<Spot> Between(Spot from, Spot to) => Enumerable.Range(0, 101).Select(i => from.Towards(to, i / 100.0));

    private static IEnumerable<Spot> Corners(SketchBox? box) => box is { } b ? [new(b.Left, b.Top), new(b.Right, b.Bottom)] : [];

    private static IEnumerable<(Spot From, Spot To)> Edges(SketchItem.Area area)
    {
        Spot right = (area.To.X, area.From.Y);
        Spot left = (area.From.X, area.To.Y);
        return [(area.From, right), (right, area.To), (area.To, left), (left, area.From)];
    }

    private static bool OnEdge(Spot at, SketchItem.Area area) => Edges(area).Any(edge => Distance(at, edge.From, edge.To) < 0.1);

    /// <summary>Metres from a place to the nearest point of a straight line.</summary>
    private static double Distance(Spot at, Spot from, Spot to)
    {
        var along = ((at.X - from.X) * (to.X - from.X)) + ((at.Y - from.Y) * (to.Y - from.Y));
        return at.To(from.Towards(to, Math.Clamp(along / Math.Pow(from.To(to), 2), 0, 1)));
    }
}
