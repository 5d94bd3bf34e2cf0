namespace ClubCycle.Web.Features.Print;

/// <summary>A sheet of paper, millimetres as it is looked at. Sizes of the A series by ISO 216 (from memory).</summary>
/// <param name="Unit">How many millimetres one millimetre of the design takes: charts are designed for A3, week sheets for A4.</param>
public sealed record PaperSize(string Name, double Width, double Height, double Unit)
{
    public const double PointsPerMillimetre = 72 / 25.4;

    public static readonly PaperSize A4 = new("a4", 210, 297, 1);

    public static readonly PaperSize A3 = new("a3", 420, 297, 1);

    public static readonly PaperSize A2 = new("a2", 594, 420, 420 / 297.0);

    /// <summary>Of a wall chart; null for a size that charts do not come in.</summary>
    public static PaperSize? OfChart(string? name) => name?.ToLowerInvariant() switch
    {
        null or "a3" => A3,
        "a2" => A2,
        _ => null,
    };
}
