using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Templates;
using NodaTime;

namespace ClubCycle.Planning.Phases;

/// <summary>Turns a season into phases: in-season weeks from the stints, a chain for each gap between them.</summary>
internal sealed record CyclePhases(IReadOnlyList<Phase> Phases, IReadOnlyList<CycleWeek> Weeks, IReadOnlyList<Finding> Findings)
{
    /// <summary>Stands for the chain of the weeks that were over when the squad joined.</summary>
    public const string BeforeJoining = "before-joining";

    /// <remarks>
    /// Weeks begin on the first weekday. The first planning week is the first one that starts inside the cycle: days before it (at most six, right after the last
    /// match) belong to the first phase and stay free. A week that holds a stint day is in season. The last week may reach past the cycle; nothing is planned there.
    /// </remarks>
    /// <param name="firstMatch">First match of the cycle, which may come before its season; null for none.</param>
    /// <param name="joins">First day that is planned for a squad of which nothing is known before: the gap it falls in gets the chain for what remains of it. Null for none.</param>
    /// <param name="given">What coaches and history say about the lengths of phases; null for nothing.</param>
    public static Result<CyclePhases> Of(Season season, Template template, IsoDayOfWeek firstWeekday, LocalDate? firstMatch = null, LocalDate? joins = null, GivenPhases? given = null)
    {
        var cycle = season.Cycle;
        var start = cycle.Start;
        while (start.DayOfWeek != firstWeekday)
        {
            start = start.PlusDays(1);
        }

        // A season that starts in those first days leaves no whole week before it, and a match there needs its week.
        if (start > season.Stints[0].First || start > firstMatch)
        {
            start = start.PlusWeeks(-1);
        }

        var inSeason = new List<bool>();
        for (var week = start; week <= cycle.End; week = week.PlusWeeks(1))
        {
            var last = week.PlusDays(6);
            inSeason.Add(season.Stints.Any(s => s.First <= last && s.Last >= week));
        }

        List<Phase> phases = [];
        List<CycleWeek> weeks = [];
        List<Problem> problems = [];
        List<Finding> findings = [];
        var gap = 0;
        for (var i = 0; i < inSeason.Count;)
        {
            var from = i;
            while (i < inSeason.Count && inSeason[i] == inSeason[from])
            {
                i++;
            }

            if (inSeason[from])
            {
                Add(PhaseKind.InSeason, from, i - from, "");
            }
            else
            {
                AddChain(from, i - from);
                gap++;
            }
        }

        findings.AddRange(given?.WithoutGap(gap) ?? []);

        return problems.Count > 0 ? new Result<CyclePhases>.Failed(problems) : new CyclePhases(phases, weeks, findings);

        void Add(PhaseKind kind, int fromWeek, int count, string chain)
        {
            var first = fromWeek == 0 ? cycle.Start : start.PlusWeeks(fromWeek);
            var last = LocalDate.Min(start.PlusWeeks(fromWeek + count).PlusDays(-1), cycle.End);
            for (var w = 0; w < count; w++)
            {
                weeks.Add(new CycleWeek(start.PlusWeeks(fromWeek + w), kind, phases.Count, w + 1, count));
            }

            phases.Add(new Phase(kind, first, last, count, chain));
        }

        void AddChain(int fromWeek, int count)
        {
            var gone = joins is { } day && day > start.PlusWeeks(fromWeek) && day < start.PlusWeeks(fromWeek + count) ? Period.DaysBetween(start.PlusWeeks(fromWeek), day) / 7 : 0;
            if (gone > 0 && template.Chains.FirstOrDefault(c => c.MinWeeks <= count - gone && count - gone <= c.MaxWeeks && WeekAllocation.Split(c.Phases, count - gone) is not null) is { } left)
            {
                Add(left.Phases[0].Kind, fromWeek, gone, BeforeJoining);
                (fromWeek, count) = (fromWeek + gone, count - gone);
            }

            var fitting = template.Chains.Where(c => c.MinWeeks <= count && count <= c.MaxWeeks).ToList();
            foreach (var chain in fitting)
            {
                if (WeekAllocation.Split(chain.Phases, count) is { } split)
                {
                    if (given is not null)
                    {
                        (split, var ignored) = given.Split(gap, chain, split, start.PlusWeeks(fromWeek), fromWeek == 0 ? cycle.Start : start.PlusWeeks(fromWeek), count);
                        findings.AddRange(ignored is { } finding ? [finding] : []);
                    }

                    for (var p = 0; p < split.Length; p++)
                    {
                        if (split[p] > 0)
                        {
                            Add(chain.Phases[p].Kind, fromWeek, split[p], chain.Name);
                            fromWeek += split[p];
                        }
                    }

                    return;
                }
            }

            problems.Add(NoChain(template, fitting, start.PlusWeeks(fromWeek), start.PlusWeeks(fromWeek + count).PlusDays(-1), count));
        }
    }

    private static Problem NoChain(Template template, List<Chain> fitting, LocalDate first, LocalDate last, int weeks)
    {
        var gap = $"the {weeks} weeks from {Iso(first)} to {Iso(last)}";
        if (fitting.Count > 0)
        {
            var chain = fitting[0];
            return new Problem(
                "template.chain-infeasible",
                $"The chain '{chain.Name}' cannot fill {gap}: its phases hold {chain.Phases.Sum(p => p.FixedWeeks ?? p.MinWeeks)} to {chain.Phases.Sum(p => p.FixedWeeks ?? p.MaxWeeks)} weeks. Free a fixed length or widen a phase.",
                "template.chains");
        }

        var nearest = template.Chains.MinBy(c => Math.Min(Math.Abs(c.MinWeeks - weeks), Math.Abs(c.MaxWeeks - weeks)));
        var hint = nearest is null ? "It has no chains at all." : $"The nearest is '{nearest.Name}' for {nearest.MinWeeks} to {nearest.MaxWeeks} weeks: widen it, or move a season date.";
        return new Problem("template.no-chain", $"The template '{template.Name}' has no chain for {gap}. {hint}", "template.chains");
    }

    private static string Iso(LocalDate date) => NodaTime.Text.LocalDatePattern.Iso.Format(date);
}
