using System.Globalization;
using ClubCycle.Planning.Phases;
using NodaTime;

namespace ClubCycle.Web.Features.Print;

/// <summary>Every word of the printed pages that is not a word of the screens.</summary>
internal static class PrintText
{
    public static string Caution => Say("The plan advises. Local rules and licensed professionals come first. Stop when something hurts.");
    public static string WallChart => Say("Wall chart");
    public static string PrintWeek => Say("Print the week");
    public static string Lacking => Say($"{PrintFont.Missing} stands for a sign that the printer's font lacks.");
    public static string Cut => Say("Weeks further away than a chart holds are left out.");
    public static string NoSquadFits => Say("No squad fits the filter that the board had.");
    public static string NoSquads => Say("No squads yet. Add squads and season dates first.");
    public static string NoWeeks => Say("There is no year to draw yet.");
    public static string NoSuchSize => Say("Wall charts come in a3 and a2: write ?size=a3 or ?size=a2.");
    public static string Busy => Say("Other pages are being printed just now. Try again in a moment.");
    public static string Squad => Say("Squad");
    public static string Week => Say("Week");
    public static string FirstDay => Say("from");
    public static string Phase => Say("Phase");
    public static string Matches => Say("Matches");
    public static string Practices => Say("Practices");
    public static string Load => Say("Planned load");
    public static string Sessions => Say("Sessions");
    public static string AsShown => Say("Printed as the screens show it. Where a squad is marked draft, players do not see the latest changes yet.");
    public static string MatchKey => Say("match; a number counts several");
    public static string LoadKey => Say("planned load by week, the squad's heaviest is full height");
    public static string HockeyKey => Say("practice and matches");
    public static string TrainingKey => Say("planned sessions");
    public static string HardnessKey => Say("Bar beside a sign, from below: one third easy, two thirds moderate, full hard. A number counts several that week.");
    public static string TakeCare => Say("Take care");
    public static string Rest => Say("Rest");
    public static string InsidePractice => Say("inside practice");
    public static string WithoutSteps => Say("The steps do not fit on one page. They stand on each session's page.");

    public static string Title(string club) => Say($"{club}: wall chart");

    public static string Title(string squad, string of) => $"{squad}: {of}";

    public static string PrintIn(PaperSize size) => Say($"Print the wall chart, {size.Name.ToUpperInvariant()}");

    /// <summary>How many squads a filtered chart shows.</summary>
    public static string Of(int shown, int all) => Say($"{shown} of {all} squads");

    public static string Year => Say("the year");

    public static string Range(LocalDate first, LocalDate last) => Say($"{Day(first)} to {Day(last)}");

    public static string Printed(LocalDate day) => Say($"Printed {Day(day)} with ClubCycle");

    public static string Status(int? revision, bool changed) => (revision, changed) switch
    {
        (null or 0, _) => Say("draft, nothing published"),
        (var number, true) => Say($"draft after revision {number}"),
        var (number, _) => Say($"revision {number}"),
    };

    public static string StatusSentence(int revision, bool changed) => (revision, changed) switch
    {
        (0, _) => Say("Draft: nothing has been published yet."),
        (_, true) => Say($"Draft: it has changes since revision {revision} that players do not see yet."),
        _ => Say($"As published to players, revision {revision}."),
    };

    public static string WithoutPlan(string problem) => Say($"No plan. {SayPlan(problem)}");

    public static string WeekName(int isoWeek) => Say($"Week {isoWeek}");

    public static string WeekInPhase(string phase, int week) => Say($"{phase}, week {week}");

    public static string Minutes(int minutes) => Say($"{minutes} min");

    public static string Closed(string why) => Say($"Closed: {SayPlan(why)}");

    /// <summary>For a band that is too narrow for the phase's name.</summary>
    public static string ShortPhase(PhaseKind phase) => phase switch
    {
        PhaseKind.InSeason => Say("In"),
        PhaseKind.Break => Say("Br"),
        PhaseKind.Recovery => Say("Rec"),
        PhaseKind.AerobicBuild => Say("Aer"),
        PhaseKind.Mixed => Say("Mix"),
        PhaseKind.PreSeason => Say("Pre"),
        PhaseKind.Restore => Say("Res"),
        _ => throw new ArgumentOutOfRangeException(nameof(phase), phase, "Unknown phase"),
    };

    public static string Number(int number) => number.ToString(CultureInfo.CurrentCulture);

    public static string Au(int load) => Say($"{Number(load)} AU");

    public static string Day(LocalDate day) => Dates.Full(day);

    public static string ShortDay(LocalDate day) => Dates.Short(day);

    public static string Weekday(LocalDate day) => Dates.Weekday(day);

    public static string DayOfMonth(LocalDate day) => day.ToString("dd", CultureInfo.CurrentCulture) is var text && text[0] == '0' ? text[1..] : text;

    /// <summary>With the year where a year begins.</summary>
    public static string Month(LocalDate day, bool year) => year ? Dates.MonthAndYear(day) : Dates.Month(day);
}
