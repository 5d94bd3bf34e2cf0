namespace ClubCycle.Web.Features.Exercises;

/// <summary>An arrow on paper: its way, and its head with the tip first.</summary>
internal sealed record SketchArrow(IReadOnlyList<Spot> Way, IReadOnlyList<Spot> Head)
{
    public Spot Tip => Head[0];
}

/// <summary>A box on paper.</summary>
internal readonly record struct SketchBox(double Left, double Top, double Right, double Bottom)
{
    public static SketchBox Around(Spot at, double width, double height) => new(at.X - (width / 2), at.Y - (height / 2), at.X + (width / 2), at.Y + (height / 2));

    public bool Touches(SketchBox other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;

    public bool Holds(Spot at) => at.X > Left && at.X < Right && at.Y > Top && at.Y < Bottom;
}

/// <summary>A sketch on paper. Always 320 units across, whatever the ground, so that signs and words have one size on a small phone.</summary>
internal sealed class SketchPaper(Sketch sketch)
{
    public const double Across = 320;
    public const double TextSize = 13;
    public const double PersonRadius = 10;
    public const double MarkRadius = 6;
    public const double BallRadius = 4;
    public const double SlopeHeight = 14;
    private const double HeadLength = 9;
    private const double HeadWidth = 8;
    private const double Air = 3;

    private readonly double _unitsPerMetre = Across / sketch.Width;

    public double Down => sketch.Length * _unitsPerMetre;

    public Spot On(Spot metres) => new(metres.X * _unitsPerMetre, metres.Y * _unitsPerMetre);

    /// <summary>All arrows of an item; none for things that stand still.</summary>
    public IEnumerable<SketchArrow> Arrows(SketchItem item) => item switch
    {
        SketchItem.Run run => [Arrow(run.From, run.To, run.Bend)],
        SketchItem.Pass pass => [Arrow(pass.From, pass.To, null)],
        SketchItem.Choice choice => choice.To.Select(to => Arrow(choice.From, to, null)),
        _ => [],
    };

    /// <summary>The words of an item and the box they fill; null when it has none.</summary>
    public (string Words, SketchBox Box)? Text(SketchItem item) => item switch
    {
        SketchItem.Label label => Said(On(label.At), label.Text),
        SketchItem.Distance distance => Said(On(distance.From.Towards(distance.To, 0.5)), distance.Words),
        SketchItem.Slope slope => Said(Below(On(slope.From.Towards(slope.To, 0.5))), slope.Text),
        SketchItem.Choice choice => ("?", SketchBox.Around(On(choice.Ask), 10, 16)),
        _ => null,
    };

    /// <summary>What is drawn of a distance: a line on either side of its words.</summary>
    public IEnumerable<(Spot From, Spot To)> Sides(SketchItem.Distance distance)
    {
        var (from, to, box) = (On(distance.From), On(distance.To), Text(distance)!.Value.Box);
        var words = Math.Abs(to.X - from.X) > Math.Abs(to.Y - from.Y) ? box.Right - box.Left : box.Bottom - box.Top;
        var share = ((words / 2) + Air) / from.To(to);
        return [(from, from.Towards(to, 0.5 - share)), (to, to.Towards(from, 0.5 - share))];
    }

    private SketchArrow Arrow(Spot from, Spot to, Spot? bend)
    {
        var whole = Way(On(from), On(to), bend is { } through ? On(through) : null);
        var free = Cut(whole, Room(from), Room(to));
        var (tip, neck) = (free[^1], Cut(free, 0, HeadLength)[^1]);
        var (alongX, alongY) = ((tip.X - neck.X) / HeadLength, (tip.Y - neck.Y) / HeadLength);
        Spot left = (neck.X - (alongY * HeadWidth / 2), neck.Y + (alongX * HeadWidth / 2));
        Spot right = (neck.X + (alongY * HeadWidth / 2), neck.Y - (alongX * HeadWidth / 2));
        return new(Cut(free, 0, HeadLength - 1), [tip, left, right]);
    }

    /// <summary>Points close together along the way, so that it can be cut and checked.</summary>
    private static List<Spot> Way(Spot from, Spot to, Spot? bend)
    {
        var middle = bend ?? from.Towards(to, 0.5);
        var steps = (int)Math.Ceiling((from.To(middle) + middle.To(to)) / 3);
        return [.. Enumerable.Range(0, steps + 1).Select(i => (double)i / steps).Select(t => from.Towards(middle, t).Towards(middle.Towards(to, t), t))];
    }

    private static List<Spot> Cut(List<Spot> way, double fromStart, double fromEnd)
    {
        var left = CutStart(way, fromStart);
        left.Reverse();
        left = CutStart(left, fromEnd);
        left.Reverse();
        return left;
    }

    private static List<Spot> CutStart(IEnumerable<Spot> way, double length)
    {
        List<Spot> left = [.. way];
        while (left.Count > 2 && left[0].To(left[1]) <= length)
        {
            length -= left[0].To(left[1]);
            left.RemoveAt(0);
        }

        left[0] = left[0].Towards(left[1], length / left[0].To(left[1]));
        return left;
    }

    /// <summary>How far an arrow keeps from what stands at its end.</summary>
    private double Room(Spot at) => sketch.Items.Select(item => item switch
    {
        SketchItem.Person person when person.At == at => PersonRadius + Air,
        SketchItem.Mark mark when mark.At == at => MarkRadius + Air,
        SketchItem.Ball ball when ball.At == at => BallRadius + Air,
        _ => 0,
    }).Max();

    private static Spot Below(Spot baseLine) => (baseLine.X, baseLine.Y + TextSize);

    private static (string Words, SketchBox Box) Said(Spot at, string english)
    {
        var words = SayPlan(english);
        return (words, TextBox(at, words));
    }

    // An em is 13 units; the widest words of the sketches take about 0.52 em a letter.
    private static SketchBox TextBox(Spot at, string words) => SketchBox.Around(at, words.Length * TextSize * 0.52, TextSize);
}
