namespace ClubCycle.Web.Features.Print;

/// <summary>A place on a sheet, millimetres of the design from the top left corner.</summary>
internal readonly record struct Box(double X, double Y, double Width, double Height)
{
    public double Right => X + Width;

    public double Bottom => Y + Height;

    public double MiddleX => X + (Width / 2);

    public double MiddleY => Y + (Height / 2);

    public Box Inside(double margin) => new(X + margin, Y + margin, Width - (2 * margin), Height - (2 * margin));
}
