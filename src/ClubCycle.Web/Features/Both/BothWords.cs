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
            Say($"Stint {i + 1}"),
            i < stints.Count ? Say($"{Day(stints[i].First)} to {Day(stints[i].Last)}") : "",
            i < theirs.Stints.Count ? Say($"{Day(theirs.Stints[i].First)} to {Day(theirs.Stints[i].Last)}") : "")),
        (Say("Last match day of the season before"), previous is null ? Say("a year earlier") : Day(previous), Day(theirs.PreviousLastDay)),
    ]);

    public static IReadOnlyList<Difference> Squad(Squad mine, Squad theirs) => Difference.Of(
        (Say("Name"), mine.Name, theirs.Name),
        (Say("Age group"), SayPlan(mine.AgeGroup.Name), SayPlan(theirs.AgeGroup.Name)),
        (Say("Years of structured training"), Years(mine.TrainingAge), Years(theirs.TrainingAge)),
        (Say("Usual match day"), Dates.Weekday(mine.MatchDay), Dates.Weekday(theirs.MatchDay)),
        (Say("Usual start"), Time(mine.MatchStart), Time(theirs.MatchStart)),
        (Say("Practice nights"), Practices(mine), Practices(theirs)),
        (Say("Times for added sessions"), Windows(mine), Windows(theirs)));

    public static IReadOnlyList<Difference> Match(Fixture mine, Fixture theirs) => Difference.Of(
        (Say("Day"), Day(mine.Date), Day(theirs.Date)), (Say("Start"), Time(mine.Start), Time(theirs.Start)), (Say("Opponent"), mine.Opponent ?? "", theirs.Opponent ?? ""), (Say("Place"), mine.Place ?? "", theirs.Place ?? ""));

    public static IReadOnlyList<Difference> Club(string name, string timeZone, IsoDayOfWeek firstWeekday, ClubRow theirs) => Difference.Of(
        (Say("Name"), name, theirs.Name), (Say("Time zone"), timeZone, theirs.TimeZone), (Say("Weeks start on"), Dates.Weekday(firstWeekday), Dates.Weekday(theirs.FirstWeekday)));

    private static string Practices(Squad squad) => string.Join(", ", squad.Practices.Select(p => Say($"{Dates.Weekday(p.Day)} {Time(p.Start)}, {p.Minutes} minutes") + (p.Place is { } place ? $", {place}" : "")));

    private static string Windows(Squad squad) => string.Join(", ", squad.Windows.Select(w => Say($"{string.Join(", ", w.Days.Select(Dates.Weekday))} {Time(w.From)} to {Time(w.To)}")));

    private static string Years(TrainingAge age) => age switch
    {
        TrainingAge.New => Say("less than one"),
        TrainingAge.Some => Say("one to three"),
        TrainingAge.Trained => Say("more than three"),
        _ => throw new InvalidOperationException($"Unknown training age {age}"),
    };

    private static string Day(LocalDate? date) => date is { } day ? $"{Dates.ShortWeekday(day)} {Dates.Full(day)}" : Say("no day yet");

    private static string Time(LocalTime? time) => time is { } known ? Dates.Time(known) : "";
}
