namespace ClubCycle.Web.Features.Matches;

/// <summary>Words around tables that are read from files.</summary>
internal static class SheetText
{
    /// <summary>A column's own heading, or its number where the file has none.</summary>
    public static string Column(int index, string header) => header == $"Column {index + 1}" ? Say($"Column {index + 1}") : header;
}
