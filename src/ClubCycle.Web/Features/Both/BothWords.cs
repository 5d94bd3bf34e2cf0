using System.Globalization;
using ClubCycle.Data.Clubs;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using NodaTime;

namespace ClubCycle.Web.Features.Both;

/// <summary>What was typed beside what is saved now, field by field, in the words of each form.</summary>
public static class BothWords
{
    /// <param name="previous">As typed; null for a year earlier.</param>
    public static IReadOnlyList<Difference> Season(LocalDate? previous, IReadOnlyList<(LocalDate? First, LocalDate? Last)> stints, Season theirs) => Difference.Of(
    [
        .. Enumerable.Range(0, Math.Max(stints.Count, theirs.Stints.Count)).Select(i => (
            $"Stint {i + 1}",
            i < stints.Count ? $"{Day(stints[i].First)} to {Day(stints[i].Last)}" : "",
            i < theirs.Stints.Count ? $"{Day(theirs.Stints[i].First)} to {Day(theirs.Stints[i].Last)}" : "")),
        ("Last match day of the season before", previous is null ? "a year earlier" : Day(previous), Day(theirs.PreviousLastDay)),
    ]);

    public static IReadOnlyList<Difference> Squad(Squad mine, Squad theirs) => Difference.Of(
        ("Name", mine.Name, theirs.Name),
        ("Age group", mine.AgeGroup.Name, theirs.AgeGroup.Name),
        ("Years of structured training", Years(mine.TrainingAge), Years(theirs.TrainingAge)),
        ("Usual match day", $"{mine.MatchDay}", $"{theirs.MatchDay}"),
        ("Usual start", Time(mine.MatchStart), Time(theirs.MatchStart)),
        ("Practice nights", Practices(mine), Practices(theirs)),
        ("Times for added sessions", Windows(mine), Windows(theirs)));

    public static IReadOnlyList<Difference> Match(Fixture mine, Fixture theirs) => Difference.Of(
        ("Day", Day(mine.Date), Day(theirs.Date)), ("Start", Time(mine.Start), Time(theirs.Start)), ("Opponent", mine.Opponent ?? "", theirs.Opponent ?? ""), ("Place", mine.Place ?? "", theirs.Place ?? ""));

    public static IReadOnlyList<Difference> Club(string name, string timeZone, IsoDayOfWeek firstWeekday, ClubRow theirs) => Difference.Of(
        ("Name", name, theirs.Name), ("Time zone", timeZone, theirs.TimeZone), ("Weeks start on", $"{firstWeekday}", $"{theirs.FirstWeekday}"));

    private static string Practices(Squad squad) => string.Join(", ", squad.Practices.Select(p => $"{p.Day} {Time(p.Start)}, {p.Minutes} minutes{(p.Place is { } place ? $", {place}" : "")}"));

    private static string Windows(Squad squad) => string.Join(", ", squad.Windows.Select(w => $"{string.Join(" and ", w.Days)} {Time(w.From)} to {Time(w.To)}"));

    private static string Years(TrainingAge age) => age switch
    {
        TrainingAge.New => "less than one",
        TrainingAge.Some => "one to three",
        TrainingAge.Trained => "more than three",
        _ => throw new InvalidOperationException($"Unknown training age {age}"),
    };

    private static string Day(LocalDate? date) => date is { } day ? day.ToString("ddd d MMM yyyy", CultureInfo.CurrentCulture) : "no day yet";

    private static string Time(LocalTime? time) => time?.ToString("HH:mm", CultureInfo.InvariantCulture) ?? "";
}
