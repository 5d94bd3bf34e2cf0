using ClubCycle.Calendars;
using ClubCycle.Data.Plans;
using ClubCycle.Planning;
using ClubCycle.Planning.Weeks;
using ClubCycle.Planning.Workouts;
using ClubCycle.Web.Features.Print;
using ClubCycle.Web.Features.Squads;
using NodaTime;

namespace ClubCycle.Web.Features.Weeks;

/// <summary>A day of the week's sheet in words, the same beside the week and on paper.</summary>
/// <param name="Closed">Why nothing can be done there that day.</param>
internal sealed record SheetDay(LocalDate Date, string? Closed, IReadOnlyList<SheetEntry> Entries)
{
    public bool IsRest => Closed is null && Entries.All(e => e.Session.Kind == SessionKind.ActiveRecovery);

    public static IReadOnlyList<SheetDay> Of(SquadDraft draft, PlanWeek week) =>
    [
        .. Enumerable.Range(0, 7).Select(week.First.PlusDays).Select(day => new SheetDay(
            day,
            draft.Request.Closed.FirstOrDefault(c => c.Contains(day))?.Why,
            [.. draft.Plan.Sessions.Where(s => s.Date == day).Select(s => new SheetEntry(s))])),
    ];

    public static IReadOnlyList<string> Cautions(IEnumerable<SheetDay> days) => [.. days.SelectMany(d => d.Entries).SelectMany(e => e.Session.Cautions).Distinct(StringComparer.Ordinal)];
}

/// <summary>What players do at one time of a day.</summary>
internal sealed record SheetEntry(PlannedSession Session)
{
    public string Headline => string.Join(", ", new[]
    {
        Session.Kind == SessionKind.ActiveRecovery ? SayPlan(Session.Title) : $"{Dates.Time(Session.Start)}  {SessionText.Title(Session.Kind, Session.Title, PlanBook)}",
        PrintText.Minutes(Session.Minutes),
        Session.Place ?? "",
        Session.InsidePractice ? PrintText.InsidePractice : "",
    }.Where(w => w.Length > 0));

    public string? Effort => Session.Kind == SessionKind.Session ? $"{QualityText.List(Session.Qualities)}: {SessionText.HowHard(Session.Hardness, PlanBook)}" : null;

    /// <summary>Practices and matches are led by the coach: they have none.</summary>
    public IEnumerable<(string Title, string Steps)> Parts => Session.Kind == SessionKind.Session
        ? Session.Steps.GroupBy(s => s.Part).Select(p => (SessionText.PartTitle(p.Key, PlanBook), string.Join(" · ", p.Select(Words))))
        : [];

    private static string Words(Step step) => SessionText.Amount(step, PlanBook) is { Length: > 0 } amount ? $"{SayPlan(step.Name)} {amount}" : SayPlan(step.Name);
}
