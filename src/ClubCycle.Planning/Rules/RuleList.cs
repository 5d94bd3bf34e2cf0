using System.Text;

namespace ClubCycle.Planning.Rules;

/// <summary>The rule book as a page for people.</summary>
public static class RuleList
{
    private static readonly (string Rule, string Where)[] KeptElsewhere =
    [
        ("R10", "the load ratio (`Measures/LoadRatio`) is hidden before 28 days of data and changes no plan"),
        ("R28", "one-repetition maxima are estimated from 1 to 10 repetitions only, shown as ± 5 % (`Measures/OneRepetitionMaximum`)"),
        ("R42", "maximum heart rate is measured, or 208 − 0.7 × age; 220 − age never by itself and never for minors (`Measures/HeartRate`)"),
        ("R45", "a player who grows fast gets three tenths fewer jumps and sprints (`Players/PersonalSheet`); age, maturity and growth decide (`Measures/Growth`)"),
        ("R47", "test equations refuse what lies outside their range, with the range; a change counts only above the smallest worthwhile one and the typical error (`Measures`)"),
        ("R48", "every outdoor session carries the limits; the table by wet-bulb globe temperature is `Measures/Heat`"),
        ("R49", "every outdoor session carries the 30-minute rule; `Measures/Lightning` works out when play may start again"),
        ("R50", "health questions come before the steps for masters and for players whom a coach flags (`Players/HealthQuestions`); concussion and injury stay with licensed professionals"),
    ];

    /// <summary>Markdown with line feeds; <c>docs/rules.md</c> is this text.</summary>
    public static string Markdown()
    {
        var text = new StringBuilder();
        text.Append("# Rules\n\n")
            .Append("Every plan is checked against these rules. A `must` finding blocks publishing, a `should` finding is a visible warning, a `note` informs.\n")
            .Append("In age groups the youngest usual player decides: an under-14 squad is judged at age 12. \"Hard\" means a match, maximal sprints,\n")
            .Append("medium or high jumps, or heavy lower-body lifting. Load is planned effort (CR10) × minutes in arbitrary units (AU).\n\n")
            .Append("Where the plan shows what left no better choice, a finding names it (`forcedBy` in plan files): ")
            .AppendJoin(", ", FileName.All<Cause>().Select(cause => $"`{cause}`")).Append(".\n\n")
            .Append("The rules advise; local rules of the association and licensed professionals come first.\n\n")
            .Append("This page is written by the rule book itself: change the rule, then run the tests with `CLUBCYCLE_WRITE_GOLDENS=1`.\n");
        foreach (var rule in PlanRules.All)
        {
            text.Append('\n').Append("## ").Append(rule.Id).Append(": ").Append(rule.Sentence).Append("\n\n")
                .Append("| | |\n|---|---|\n")
                .Append("| strength | `").Append(FileName.Of(rule.Strength)).Append(rule.TemplateDecides ? "`; `note` where the template's weekly mix leaves it out by choice (editorial) |\n" : "` |\n")
                .Append("| holds when | ").Append(rule.Threshold).Append(" |\n")
                .Append("| concerns | ").Append(rule.Scope).Append(" |\n")
                .Append("| to mend it | ").Append(rule.Mend).Append(" |\n")
                .Append("| source | ").Append(rule.Source).Append(" |\n");
        }

        text.Append("\n## Rules that a squad's plan cannot break\n\nThey need a player's own numbers or the day itself, and are kept where those are.\n\n| rule | where it is kept |\n|---|---|\n");
        foreach (var (rule, where) in KeptElsewhere)
        {
            text.Append("| ").Append(rule).Append(" | ").Append(where).Append(" |\n");
        }

        return text.ToString();
    }
}
