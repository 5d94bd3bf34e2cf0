using System.Globalization;

namespace ClubCycle.Web.Features.Exercises;

/// <summary>A place on the ground, in metres: to the right, and down the picture.</summary>
public readonly record struct Spot(double X, double Y)
{
    public static implicit operator Spot((double X, double Y) at) => new(at.X, at.Y);

    public double To(Spot other) => Math.Sqrt(Math.Pow(other.X - X, 2) + Math.Pow(other.Y - Y, 2));

    /// <summary>The place this share of the way to another.</summary>
    public Spot Towards(Spot other, double share) => new(X + ((other.X - X) * share), Y + ((other.Y - Y) * share));
}

/// <summary>Who somebody is in a drill; each has a letter and a shape of its own.</summary>
public enum Role
{
    Runner,
    Attacker,
    Defender,
    Caller,
    Partner,
}

/// <summary>One thing in a sketch. Words are centred on their place.</summary>
public abstract record SketchItem
{
    private SketchItem()
    {
    }

    public sealed record Mark(Spot At) : SketchItem;

    /// <summary>Two marks to run between.</summary>
    public sealed record Gate(Spot One, Spot Other) : SketchItem;

    public sealed record Line(Spot From, Spot To) : SketchItem;

    /// <summary>A part of the ground, from its upper left to its lower right corner.</summary>
    public sealed record Area(Spot From, Spot To) : SketchItem;

    public sealed record Person(Role Role, Spot At) : SketchItem;

    public sealed record Ball(Spot At) : SketchItem;

    /// <param name="Bend">Where the way is drawn to; null for a straight one.</param>
    /// <param name="Easy">A jog, a build-up or a coasting out; otherwise at the pace of the drill.</param>
    public sealed record Run(Spot From, Spot To, Spot? Bend = null, bool Easy = false) : SketchItem;

    public sealed record Pass(Spot From, Spot To) : SketchItem;

    /// <summary>One of several ways, not known beforehand.</summary>
    /// <param name="Ask">Where the question mark stands.</param>
    public sealed record Choice(Spot From, Spot Ask, params Spot[] To) : SketchItem;

    /// <param name="Text">Null for the length as drawn.</param>
    public sealed record Distance(Spot From, Spot To, string? Text = null) : SketchItem
    {
        public string Words => Text ?? string.Create(CultureInfo.CurrentCulture, $"{From.To(To):0.#} m");
    }

    public sealed record Label(Spot At, string Text) : SketchItem;

    /// <summary>The ground rises from one place to the other: a wedge with words below.</summary>
    public sealed record Slope(Spot From, Spot To, string Text) : SketchItem;
}
