using System.Text.RegularExpressions;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Templates;

/// <summary>What a template must be to plan with.</summary>
public static partial class TemplateCheck
{
    public const int LongestTitle = 100;
    public const int MostSlots = 7;
    public const int MostChains = 12;
    public const int MostPhases = 12;
    public const int MostContacts = 14;

    public static IReadOnlyList<Problem> Check(Template template) => [.. Problems(template)];

    /// <summary>Problems of using the template for a squad of this age group: workouts that are not for it.</summary>
    public static IReadOnlyList<Problem> CheckFor(Template template, AgeGroup ages) =>
    [
        .. from mix in template.Mixes.Index()
           from slot in mix.Item.Slots.Index()
           from name in slot.Item.Workouts
           let workout = WorkoutCatalogue.Find(name)
           where workout is not null && !workout.AllowedFor(ages)
           select new Problem(
               "template.workout-not-for-age",
               $"'{workout.Title}' is not for {ages.Name}. Choose another workout for '{slot.Item.Name}', or another template for this squad.",
               $"template.mixes[{mix.Index}].slots[{slot.Index}].workouts"),
    ];

    private static IEnumerable<Problem> Problems(Template template)
    {
        if (!Word().IsMatch(template.Name) || template.Name.Length > LongestTitle)
        {
            yield return new Problem("template.name", "A template's name is lower-case words joined by hyphens, such as 'senior-standard'.", "template.name");
        }

        if (TypedText.NameProblem(template.Title, LongestTitle, "template.title", "title", "template.title") is { } title)
        {
            yield return title with { Code = "template.title" };
        }

        if (template.AgeGroups.Count == 0)
        {
            yield return new Problem("template.no-age-groups", "Say which age groups the template is for.", "template.ageGroups");
        }

        if (template.AgeGroups.Distinct().Count() < template.AgeGroups.Count)
        {
            yield return new Problem("template.age-group-twice", "An age group stands in the list twice. Keep one.", "template.ageGroups");
        }

        foreach (var problem in template.AgeGroups.SelectMany(group => CheckFor(template, group)).DistinctBy(p => (p.At, p.Message)))
        {
            yield return problem;
        }

        foreach (var problem in ChainProblems(template).Concat(MixProblems(template)).Concat(LoadingProblems(template.Loading)))
        {
            yield return problem;
        }
    }

    private static IEnumerable<Problem> ChainProblems(Template template)
    {
        if (template.Chains.Count is 0 or > MostChains)
        {
            yield return new Problem("template.chains", $"A template has 1 to {MostChains} chains.", "template.chains");
        }

        foreach (var (c, chain) in template.Chains.Index())
        {
            var at = $"template.chains[{c}]";
            if (TypedText.NameProblem(chain.Name, LongestTitle, "template.chain-name", "chain's name", at + ".name") is { } chainName)
            {
                yield return chainName with { Code = "template.chain-name" };
            }

            if (chain.MinWeeks < 1 || chain.MaxWeeks < chain.MinWeeks || chain.MaxWeeks > 60)
            {
                yield return new Problem("template.chain-weeks", $"The chain '{chain.Name}' is for {chain.MinWeeks} to {chain.MaxWeeks} weeks; use 1 to 60, the smaller first.", at);
            }

            if (chain.Phases.Count is 0 or > MostPhases)
            {
                yield return new Problem("template.chain-phases", $"The chain '{chain.Name}' needs 1 to {MostPhases} phases.", at + ".phases");
            }

            foreach (var (p, phase) in chain.Phases.Index())
            {
                if (phase.Kind == PhaseKind.InSeason)
                {
                    yield return new Problem("template.chain-in-season", "In-season weeks come from the match dates; take them out of the chain.", $"{at}.phases[{p}].kind");
                }

                if (phase.MinWeeks < 0 || phase.MaxWeeks < phase.MinWeeks || phase.MaxWeeks > 60)
                {
                    yield return new Problem("template.phase-weeks", $"The phase lasts {phase.MinWeeks} to {phase.MaxWeeks} weeks; use 0 to 60, the smaller first.", $"{at}.phases[{p}]");
                }

                if (phase.IdealShare is not (> 0 and <= 1))
                {
                    yield return new Problem("template.phase-share", "The ideal share is above 0 and at most 1 (0.4 for 40 %).", $"{at}.phases[{p}].idealShare");
                }

                if (phase.FixedWeeks is < 0 or > 60)
                {
                    yield return new Problem("template.phase-fixed", "A fixed length is 0 to 60 weeks.", $"{at}.phases[{p}].fixedWeeks");
                }
            }
        }
    }

    private static IEnumerable<Problem> MixProblems(Template template)
    {
        var used = template.Chains.SelectMany(c => c.Phases).Select(p => p.Kind).Append(PhaseKind.InSeason).Distinct();
        foreach (var missing in used.Except(template.Mixes.Select(m => m.Phase)))
        {
            yield return new Problem("template.mix-missing", $"There is no weekly mix for the phase {missing}. Add one (it may be empty).", "template.mixes");
        }

        foreach (var (m, mix) in template.Mixes.Index())
        {
            var at = $"template.mixes[{m}]";
            if (template.Mixes.Take(m).Any(other => other.Phase == mix.Phase))
            {
                yield return new Problem("template.mix-twice", "This phase already has a weekly mix. Join the two.", at + ".phase");
            }

            if (mix.Slots.Count > MostSlots)
            {
                yield return new Problem("template.too-many-slots", $"A week asks for {MostSlots} sessions at most.", at + ".slots");
            }

            if (mix.ActiveDaysAtMost is < 0 or > 6)
            {
                yield return new Problem("template.active-days", "Active days are 0 to 6: every week has a rest day.", at + ".activeDaysAtMost");
            }

            if (mix.HoursBetweenHard is < 48 or > 168)
            {
                yield return new Problem("template.hours-between-hard", "Hard sessions are 48 to 168 hours apart.", at + ".hoursBetweenHard");
            }

            if (mix.SessionsPerContactDay is < 0 or > 1)
            {
                yield return new Problem("template.pairing", "A practice day takes 0 or 1 sessions.", at + ".sessionsPerContactDay");
            }

            foreach (var (s, slot) in mix.Slots.Index())
            {
                foreach (var problem in SlotProblems(mix, slot, s, $"{at}.slots[{s}]"))
                {
                    yield return problem;
                }
            }
        }
    }

    private static IEnumerable<Problem> SlotProblems(WeeklyMix mix, Slot slot, int index, string at)
    {
        if (!SlotName().IsMatch(slot.Name) || slot.Name.Length > LongestTitle)
        {
            yield return new Problem("template.slot-name", "A slot's name is lower-case words and a number, such as 'easy-run.1'.", at + ".name");
        }

        if (mix.Slots.Take(index).Any(other => other.Name == slot.Name))
        {
            yield return new Problem("template.slot-twice", $"There are two slots '{slot.Name}' in this mix. Number them.", at + ".name");
        }

        if (slot.Minutes is < 10 or > 120)
        {
            yield return new Problem("template.slot-minutes", "A session lasts 10 to 120 minutes.", at + ".minutes");
        }

        if (slot.WhenContactsAtMost is < 0 or > MostContacts || slot.WhenContactsAtLeast is < 0 or > MostContacts || slot.WhenContactsAtMost < slot.WhenContactsAtLeast)
        {
            yield return new Problem("template.slot-contacts", $"A week has 0 to {MostContacts} practices and matches, and the smaller number comes first; as it is, the session is never wanted.", at);
        }

        if (slot.Workouts.Count is 0 or > 6)
        {
            yield return new Problem("template.slot-workouts", "Name 1 to 6 workouts that take turns.", at + ".workouts");
        }

        foreach (var name in slot.Workouts.Where(name => WorkoutCatalogue.Find(name) is null))
        {
            yield return new Problem("template.workout-unknown", $"There is no workout '{name}'. Known: {string.Join(", ", WorkoutCatalogue.All.Select(w => w.Name))}.", at + ".workouts");
        }
    }

    private static IEnumerable<Problem> LoadingProblems(LoadingPattern loading)
    {
        if (loading.UnloadEvery is < 2 or > 4)
        {
            yield return new Problem("template.unload-every", "Every second to fourth week unloads.", "template.loading.unloadEvery");
        }

        if (loading.UnloadVolume is not (>= 0.4 and <= 0.8))
        {
            yield return new Problem("template.unload-volume", "An unloading week has 0.4 to 0.8 of the loading weeks' volume.", "template.loading.unloadVolume");
        }

        if (loading.FirstWeekVolume is not (>= 0.5 and <= 1))
        {
            yield return new Problem("template.first-week-volume", "A phase starts with 0.5 to 1 of its full volume.", "template.loading.firstWeekVolume");
        }

        if (loading.WeeklyRise is not (>= 0 and <= 0.10))
        {
            yield return new Problem("template.weekly-rise", "Loading weeks rise by 0 to 0.10 (10 %) a week.", "template.loading.weeklyRise");
        }
    }

    [GeneratedRegex("^[a-z0-9]+(-[a-z0-9]+)*\\z")]
    private static partial Regex Word();

    [GeneratedRegex("^[a-z0-9]+(-[a-z0-9]+)*(\\.[0-9]+)?\\z")]
    private static partial Regex SlotName();
}
