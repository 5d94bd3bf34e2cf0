using System.Globalization;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Templates;

/// <summary>One difference between two templates.</summary>
/// <param name="Id">Names the place: <c>mixes/pre-season/speed.1</c>. Stays while the place does.</param>
/// <param name="Words">What is different, as a coach would say it.</param>
/// <param name="Take">Makes the same change in another template; one that does not have the place stays as it is.</param>
public sealed record TemplateChange(string Id, string Words, Func<Template, Template> Take);

/// <summary>Compares templates in words. Name, title and age groups belong to each template itself and are not compared.</summary>
public static class TemplateChanges
{
    /// <summary>What leads from one template to the other, in the order of a template. Taking all of them makes the content equal.</summary>
    public static IReadOnlyList<TemplateChange> Between(Template from, Template to) => [.. Chains(from, to), .. Mixes(from, to), .. Loading(from.Loading, to.Loading)];

    /// <summary>Takes the chosen changes one after the other.</summary>
    public static Template Take(Template template, IEnumerable<TemplateChange> changes) => changes.Aggregate(template, (taken, change) => change.Take(taken));

    private static IEnumerable<TemplateChange> Chains(Template from, Template to)
    {
        foreach (var gone in from.Chains.Where(c => Find(to, c.Name) is null))
        {
            yield return new($"chains/{gone.Name}", $"Chain '{gone.Name}' for {Weeks(gone)} is left out.", t => t with { Chains = [.. t.Chains.Where(c => c.Name != gone.Name)] });
        }

        foreach (var chain in to.Chains)
        {
            if (Find(from, chain.Name) is not { } was)
            {
                yield return new($"chains/{chain.Name}", $"Chain '{chain.Name}' for {Weeks(chain)} is new: {Names(chain)}.", t => Find(t, chain.Name) is null ? t with { Chains = [.. t.Chains, chain] } : t);
                continue;
            }

            if ((was.MinWeeks, was.MaxWeeks) != (chain.MinWeeks, chain.MaxWeeks))
            {
                yield return new(
                    $"chains/{chain.Name}/weeks", $"Chain '{chain.Name}' fills gaps of {Weeks(chain)} instead of {Weeks(was)}.",
                    t => With(t, chain.Name, c => c with { MinWeeks = chain.MinWeeks, MaxWeeks = chain.MaxWeeks }));
            }

            if (!was.Phases.Select(p => p.Kind).SequenceEqual(chain.Phases.Select(p => p.Kind)))
            {
                yield return new($"chains/{chain.Name}/phases", $"Chain '{chain.Name}' goes {Names(chain)} instead of {Names(was)}.", t => With(t, chain.Name, c => c with { Phases = chain.Phases }));
                continue;
            }

            foreach (var (i, phase) in chain.Phases.Index().Where(p => p.Item != was.Phases[p.Index]))
            {
                yield return new(
                    $"chains/{chain.Name}/{i + 1}", $"Chain '{chain.Name}', {Words(phase.Kind)}: {Words(phase)} instead of {Words(was.Phases[i])}.",
                    t => With(t, chain.Name, c => i < c.Phases.Count && c.Phases[i].Kind == phase.Kind ? c with { Phases = [.. c.Phases.Select((p, j) => j == i ? phase : p)] } : c));
            }
        }

        var kept = to.Chains.Where(c => Find(from, c.Name) is not null).Select(c => c.Name).ToList();
        if (!from.Chains.Where(c => Find(to, c.Name) is not null).Select(c => c.Name).SequenceEqual(kept) || !to.Chains.Take(kept.Count).Select(c => c.Name).SequenceEqual(kept))
        {
            var order = to.Chains.Select(c => c.Name).ToList();
            yield return new("chains/order", $"The chains are tried in another order: {string.Join(", ", order)}.", t => t with { Chains = [.. Ordered(t.Chains, c => c.Name, order)] });
        }
    }

    private static IEnumerable<TemplateChange> Mixes(Template from, Template to)
    {
        foreach (var gone in from.Mixes.Where(m => Find(to, m.Phase) is null))
        {
            yield return new($"mixes/{FileName.Of(gone.Phase)}", $"There is no weekly mix for the {Words(gone.Phase)} any more.", t => t with { Mixes = [.. t.Mixes.Where(m => m.Phase != gone.Phase)] });
        }

        foreach (var mix in to.Mixes)
        {
            var id = $"mixes/{FileName.Of(mix.Phase)}";
            if (Find(from, mix.Phase) is not { } was)
            {
                yield return new(id, $"The {Words(mix.Phase)} has a weekly mix: {string.Join(", ", mix.Slots.Select(Words))}.", t => Find(t, mix.Phase) is null ? t with { Mixes = [.. t.Mixes, mix] } : t);
                continue;
            }

            foreach (var change in Limits(id, was, mix).Concat(Slots(id, was, mix)))
            {
                yield return change;
            }
        }
    }

    private static IEnumerable<TemplateChange> Limits(string id, WeeklyMix was, WeeklyMix mix)
    {
        var phase = Capital(mix.Phase);
        if (was.ActiveDaysAtMost != mix.ActiveDaysAtMost)
        {
            yield return new($"{id}/active-days", $"{phase}: {mix.ActiveDaysAtMost} active days at most instead of {was.ActiveDaysAtMost}.", t => With(t, mix.Phase, m => m with { ActiveDaysAtMost = mix.ActiveDaysAtMost }));
        }

        if (was.HoursBetweenHard != mix.HoursBetweenHard)
        {
            yield return new($"{id}/hours-between-hard", $"{phase}: {mix.HoursBetweenHard} h between hard sessions instead of {was.HoursBetweenHard} h.", t => With(t, mix.Phase, m => m with { HoursBetweenHard = mix.HoursBetweenHard }));
        }

        if (was.SessionsPerContactDay != mix.SessionsPerContactDay)
        {
            yield return new(
                $"{id}/pairing", $"{phase}: sessions {(mix.SessionsPerContactDay > 0 ? "may" : "may no longer")} share a day with a practice.",
                t => With(t, mix.Phase, m => m with { SessionsPerContactDay = mix.SessionsPerContactDay }));
        }
    }

    private static IEnumerable<TemplateChange> Slots(string id, WeeklyMix was, WeeklyMix mix)
    {
        var phase = Capital(mix.Phase);
        foreach (var gone in was.Slots.Where(s => Find(mix, s.Name) is null))
        {
            yield return new($"{id}/{gone.Name}", $"{phase}: without {Words(gone)}.", t => With(t, mix.Phase, m => m with { Slots = [.. m.Slots.Where(s => s.Name != gone.Name)] }));
        }

        foreach (var slot in mix.Slots)
        {
            var old = Find(was, slot.Name);
            if (old is null)
            {
                yield return new($"{id}/{slot.Name}", $"{phase}: with {Words(slot)} as well.", t => With(t, mix.Phase, m => Find(m, slot.Name) is null ? m with { Slots = [.. m.Slots, slot] } : m));
            }
            else if (!Same(old, slot))
            {
                yield return new(
                    $"{id}/{slot.Name}", $"{phase}: {Words(slot)} instead of {Words(old)}.",
                    t => With(t, mix.Phase, m => m with { Slots = [.. m.Slots.Select(s => s.Name == slot.Name ? slot : s)] }));
            }
        }

        var kept = mix.Slots.Where(s => Find(was, s.Name) is not null).Select(s => s.Name).ToList();
        if (!was.Slots.Where(s => Find(mix, s.Name) is not null).Select(s => s.Name).SequenceEqual(kept) || !mix.Slots.Take(kept.Count).Select(s => s.Name).SequenceEqual(kept))
        {
            var order = mix.Slots.Select(s => s.Name).ToList();
            yield return new(
                $"{id}/order", $"{phase}: another order of value, so that something else goes first when a week is too full: {string.Join(", ", mix.Slots.Select(s => Title(s.Workouts[0])))}.",
                t => With(t, mix.Phase, m => m with { Slots = [.. Ordered(m.Slots, s => s.Name, order)] }));
        }
    }

    private static IEnumerable<TemplateChange> Loading(LoadingPattern was, LoadingPattern now)
    {
        if (was.UnloadEvery != now.UnloadEvery)
        {
            yield return new("loading/unload-every", $"Every {Ordinal(now.UnloadEvery)} building week unloads instead of every {Ordinal(was.UnloadEvery)}.", t => t with { Loading = t.Loading with { UnloadEvery = now.UnloadEvery } });
        }

        if (was.UnloadVolume != now.UnloadVolume)
        {
            yield return new("loading/unload-volume", $"Unloading weeks hold {Percent(now.UnloadVolume)} of the weeks before instead of {Percent(was.UnloadVolume)}.", t => t with { Loading = t.Loading with { UnloadVolume = now.UnloadVolume } });
        }

        if (was.FirstWeekVolume != now.FirstWeekVolume)
        {
            yield return new("loading/first-week-volume", $"A phase starts with {Percent(now.FirstWeekVolume)} of its minutes instead of {Percent(was.FirstWeekVolume)}.", t => t with { Loading = t.Loading with { FirstWeekVolume = now.FirstWeekVolume } });
        }

        if (was.WeeklyRise != now.WeeklyRise)
        {
            yield return new("loading/weekly-rise", $"Weeks rise by {Percent(now.WeeklyRise)} at most instead of {Percent(was.WeeklyRise)}.", t => t with { Loading = t.Loading with { WeeklyRise = now.WeeklyRise } });
        }
    }

    private static Chain? Find(Template template, string chain) => template.Chains.FirstOrDefault(c => c.Name == chain);

    private static WeeklyMix? Find(Template template, PhaseKind phase) => template.Mixes.FirstOrDefault(m => m.Phase == phase);

    private static Slot? Find(WeeklyMix mix, string slot) => mix.Slots.FirstOrDefault(s => s.Name == slot);

    private static Template With(Template template, string chain, Func<Chain, Chain> change) => template with { Chains = [.. template.Chains.Select(c => c.Name == chain ? change(c) : c)] };

    private static Template With(Template template, PhaseKind phase, Func<WeeklyMix, WeeklyMix> change) => template with { Mixes = [.. template.Mixes.Select(m => m.Phase == phase ? change(m) : m)] };

    /// <summary>In this order; what it does not name keeps its place at the end.</summary>
    private static IEnumerable<T> Ordered<T>(IEnumerable<T> items, Func<T, string> name, List<string> order) =>
        items.OrderBy(i => order.IndexOf(name(i)) is >= 0 and var place ? place : int.MaxValue);

    private static bool Same(Slot one, Slot other) => one.Workouts.SequenceEqual(other.Workouts, StringComparer.Ordinal) && one with { Workouts = [] } == other with { Workouts = [] };

    private static string Weeks(Chain chain) => chain.MinWeeks == chain.MaxWeeks ? $"{chain.MinWeeks} weeks" : $"{chain.MinWeeks} to {chain.MaxWeeks} weeks";

    private static string Names(Chain chain) => string.Join(", ", chain.Phases.Select(p => Words(p.Kind)));

    private static string Words(PhaseKind phase) => FileName.Of(phase).Replace('-', ' ');

    private static string Capital(PhaseKind phase) => char.ToUpperInvariant(Words(phase)[0]) + Words(phase)[1..];

    private static string Words(ChainPhase phase) => phase.FixedWeeks is { } weeks
        ? $"{weeks} weeks, fixed"
        : $"{phase.MinWeeks} to {phase.MaxWeeks} weeks, ideally {Percent(phase.IdealShare)} of the gap";

    private static string Words(Slot slot) => $"{slot.Minutes} minutes of {string.Join(" or ", slot.Workouts.Select(Title))}" + (slot.WhenContactsAtMost, slot.WhenContactsAtLeast) switch
    {
        ({ } most, { } least) => $" (with {least} to {most} practices and matches)",
        ({ } most, null) => $" (with {most} practices and matches at most)",
        (null, { } least) => $" (with {least} practices and matches or more)",
        _ => "",
    };

    private static string Title(string workout) => WorkoutCatalogue.Find(workout) is { } known ? char.ToLowerInvariant(known.Title[0]) + known.Title[1..] : workout;

    private static string Ordinal(int number) => number switch
    {
        2 => "second",
        3 => "third",
        _ => $"{number}th",
    };

    private static string Percent(double share) => string.Create(CultureInfo.InvariantCulture, $"{100 * share:0.#} %");
}
