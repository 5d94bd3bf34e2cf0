using System.Globalization;
using ClubCycle.Planning.Phases;
using NodaTime;

namespace ClubCycle.Web.Features.Print;

/// <summary>Every word of the printed pages that is not a word of the screens.</summary>
internal static class PrintText
{
    public const string Caution = "The plan advises. Local rules and licensed professionals come first. Stop when something hurts.";
    public const string WallChart = "Wall chart";
    public const string PrintChart = "Print the wall chart";
    public const string PrintWeek = "Print the week";
    public const string Lacking = PrintFont.Missing + " stands for a sign that the printer's font lacks.";
    public const string Cut = "Weeks further away than a chart holds are left out.";
    public const string NoSquads = "No squads yet. Add squads and season dates first.";
    public const string NoWeeks = "There is no year to draw yet.";
    public const string NoSuchSize = "Wall charts come in a3 and a2: write ?size=a3 or ?size=a2.";
    public const string Busy = "Other pages are being printed just now. Try again in a moment.";
    public const string Squad = "Squad";
    public const string Week = "Week";
    public const string FirstDay = "from";
    public const string Phase = "Phase";
    public const string Matches = "Matches";
    public const string Practices = "Practices";
    public const string Load = "Planned load";
    public const string Sessions = "Sessions";
    public const string AsShown = "Printed as the screens show it. Where a squad is marked draft, players do not see the latest changes yet.";
    public const string MatchKey = "match; a number counts several";
    public const string LoadKey = "planned load by week, the squad's heaviest is full height";
    public const string HockeyKey = "practice and matches";
    public const string TrainingKey = "planned sessions";
    public const string HardnessKey = "Bar beside a sign, from below: one third easy, two thirds moderate, full hard. A number counts several that week.";
    public const string TakeCare = "Take care";
    public const string Rest = "Rest";
    public const string InsidePractice = "inside practice";
    public const string Optional = "optional";
    public const string WithoutSteps = "The steps do not fit on one page. They stand on each session's page.";

    public static string Title(string club) => $"{club}: {WallChart.ToLowerInvariant()}";

    public static string Title(string squad, string of) => $"{squad}: {of}";

    public static string PrintIn(PaperSize size) => $"{PrintChart}, {size.Name.ToUpperInvariant()}";

    public static string Year => "the year";

    public static string Range(LocalDate first, LocalDate last) => $"{Day(first)} to {Day(last)}";

    public static string Printed(LocalDate day) => $"Printed {Day(day)} with ClubCycle";

    public static string Status(int? revision, bool changed) => (revision, changed) switch
    {
        (null or 0, _) => "draft, nothing published",
        (var number, true) => $"draft after revision {number}",
        var (number, _) => $"revision {number}",
    };

    public static string StatusSentence(int revision, bool changed) => (revision, changed) switch
    {
        (0, _) => "Draft: nothing has been published yet.",
        (_, true) => $"Draft: it has changes since revision {revision} that players do not see yet.",
        _ => $"As published to players, revision {revision}.",
    };

    public static string WithoutPlan(string problem) => $"No plan. {problem}";

    public static string WeekName(int isoWeek) => $"Week {isoWeek}";

    public static string WeekInPhase(string phase, int week) => $"{phase}, week {week}";

    public static string Minutes(int minutes) => $"{minutes} min";

    public static string Closed(string why) => $"Closed: {why}";

    /// <summary>For a band that is too narrow for the phase's name.</summary>
    public static string ShortPhase(PhaseKind phase) => phase switch
    {
        PhaseKind.InSeason => "In",
        PhaseKind.Break => "Br",
        PhaseKind.Recovery => "Rec",
        PhaseKind.AerobicBuild => "Aer",
        PhaseKind.Mixed => "Mix",
        PhaseKind.PreSeason => "Pre",
        PhaseKind.Restore => "Res",
        _ => throw new ArgumentOutOfRangeException(nameof(phase), phase, "Unknown phase"),
    };

    public static string Number(int number) => number.ToString(CultureInfo.CurrentCulture);

    public static string Au(int load) => $"{Number(load)} AU";

    public static string Day(LocalDate day) => day.ToString("d MMM yyyy", CultureInfo.CurrentCulture);

    public static string ShortDay(LocalDate day) => day.ToString("d MMM", CultureInfo.CurrentCulture);

    public static string Weekday(LocalDate day) => day.ToString("dddd", CultureInfo.CurrentCulture);

    public static string DayOfMonth(LocalDate day) => day.ToString("dd", CultureInfo.CurrentCulture) is var text && text[0] == '0' ? text[1..] : text;

    /// <summary>With the year where a year begins.</summary>
    public static string Month(LocalDate day, bool year) => day.ToString(year ? "MMM yyyy" : "MMM", CultureInfo.CurrentCulture);

    public static string Time(LocalTime time) => time.ToString("HH:mm", CultureInfo.InvariantCulture);
}
