using System.Text;

namespace ClubCycle.Planning.Rules;

/// <summary>The rule book as a page for people.</summary>
public static class RuleList
{
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
                .Append("| strength | `").Append(FileName.Of(rule.Strength)).Append("` |\n")
                .Append("| holds when | ").Append(rule.Threshold).Append(" |\n")
                .Append("| concerns | ").Append(rule.Scope).Append(" |\n")
                .Append("| to mend it | ").Append(rule.Mend).Append(" |\n")
                .Append("| source | ").Append(rule.Source).Append(" |\n");
        }

        return text.ToString();
    }
}
