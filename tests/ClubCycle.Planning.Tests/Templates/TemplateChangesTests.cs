using ClubCycle.Planning.Phases;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Templates;
using CsCheck;

namespace ClubCycle.Planning.Tests.Templates;

public class TemplateChangesTests
{
    private static readonly Template Senior = BuiltInTemplates.For(AgeGroup.Senior);

    [Fact]
    public void A_template_does_not_differ_from_itself() => Assert.All(BuiltInTemplates.All, t => Assert.Empty(TemplateChanges.Between(t, t)));

    [Fact]
    public void Name_title_and_age_groups_are_each_template_s_own() => Assert.Empty(TemplateChanges.Between(Senior, Senior with { Name = "ours", Title = "Ours", AgeGroups = [AgeGroup.Masters] }));

    [Fact]
    public void A_longer_phase_says_both_lengths()
    {
        var longer = WithChain("long", c => c with { Phases = [c.Phases[0], c.Phases[1] with { FixedWeeks = 12 }, .. c.Phases.Skip(2)] });

        Assert.Equal("Chain 'long', aerobic build: 12 weeks, fixed instead of 5 to 16 weeks, ideally 42.5 % of the gap.", Assert.Single(TemplateChanges.Between(Senior, longer)).Words);
    }

    [Fact]
    public void A_changed_slot_names_its_workouts_and_minutes()
    {
        var mix = Senior.Mixes.Single(m => m.Phase == PhaseKind.Recovery);
        var changed = WithMix(PhaseKind.Recovery, m => m with { Slots = [m.Slots[0] with { Minutes = 25, Workouts = ["easy-run"] }, .. m.Slots.Skip(1)] });

        var change = Assert.Single(TemplateChanges.Between(Senior, changed));

        Assert.Equal($"mixes/recovery/{mix.Slots[0].Name}", change.Id);
        Assert.StartsWith("Recovery: 25 minutes of easy run instead of ", change.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Limits_and_loading_say_both_numbers()
    {
        var changed = WithMix(PhaseKind.PreSeason, m => m with { ActiveDaysAtMost = m.ActiveDaysAtMost - 1, HoursBetweenHard = 72, SessionsPerContactDay = 1 - m.SessionsPerContactDay }) with
        {
            Loading = new LoadingPattern(3, 0.55, 0.6, 0.05),
        };

        Assert.Equal(7, TemplateChanges.Between(Senior, changed).Count);
        Assert.Contains(TemplateChanges.Between(Senior, changed), c => c.Words == "Pre season: 72 h between hard sessions instead of 48 h.");
        Assert.Contains(TemplateChanges.Between(Senior, changed), c => c.Words == "Every third building week unloads instead of every 4th.");
    }

    [Fact]
    public void A_change_is_taken_alone_and_leaves_the_rest()
    {
        var parent = WithMix(PhaseKind.Recovery, m => m with { ActiveDaysAtMost = 3 }) with { Loading = Senior.Loading with { UnloadVolume = 0.5 } };
        var child = Senior with { Title = "Ours", Loading = Senior.Loading with { WeeklyRise = 0.04 } };

        var taken = TemplateChanges.Take(child, TemplateChanges.Between(Senior, parent).Where(c => c.Id == "loading/unload-volume"));

        Assert.Equal((0.5, 0.04), (taken.Loading.UnloadVolume, taken.Loading.WeeklyRise));
        Assert.Equal(["Unloading weeks hold 50 % of the weeks before instead of 60 %."], TemplateChanges.Between(child, taken).Select(c => c.Words));
    }

    [Fact]
    public void A_change_in_a_place_that_the_other_template_does_not_have_changes_nothing()
    {
        var parent = WithMix(PhaseKind.Recovery, m => m with { Slots = [m.Slots[0] with { Minutes = 25 }, .. m.Slots.Skip(1)] });
        var child = WithMix(PhaseKind.Recovery, m => m with { Slots = [.. m.Slots.Skip(1)] });

        Assert.Empty(TemplateChanges.Between(child, TemplateChanges.Take(child, TemplateChanges.Between(Senior, parent))));
    }

    /// <summary>For any two templates of the library, changed at random: taking every change makes the content equal.</summary>
    [Fact]
    public void Taking_every_change_leads_from_any_template_to_any_other() => Gen.Select(Gen.Int[0, BuiltInTemplates.All.Count - 1], Gen.Int[0, BuiltInTemplates.All.Count - 1], Gen.Int[0, 9_999].Array[12]).Sample((a, b, dice) =>
    {
        var (from, to) = (Shaken(BuiltInTemplates.All[a], dice), Shaken(BuiltInTemplates.All[b], [.. dice.Reverse()]));

        var taken = TemplateChanges.Take(from, TemplateChanges.Between(from, to));

        Assert.Equal(TemplateFile.Write(to), TemplateFile.Write(taken with { Name = to.Name, Title = to.Title, AgeGroups = to.AgeGroups, Mixes = [.. to.Mixes.Select(m => taken.Mixes.Single(t => t.Phase == m.Phase))] }));
    }, iter: 500, threads: 1);

    private static Template Shaken(Template template, int[] dice)
    {
        Slot Of(Slot slot, int i) => dice[i % dice.Length] % 3 == 0 ? slot with { Minutes = 10 + (dice[i % dice.Length] % 12 * 5), WhenContactsAtMost = dice[i % dice.Length] % 2 == 0 ? 3 : null } : slot;
        return template with
        {
            Chains = dice[0] % 2 == 0 ? [.. template.Chains.Reverse()] : [.. template.Chains.Skip(dice[1] % 2)],
            Mixes = [.. template.Mixes.Select((m, i) => m with { ActiveDaysAtMost = 2 + (dice[i % dice.Length] % 5), Slots = [.. (dice[i % dice.Length] % 4 == 0 ? m.Slots.Reverse() : m.Slots.Skip(dice[i % dice.Length] % 2)).Select(Of)] })],
            Loading = template.Loading with { UnloadEvery = 2 + (dice[2] % 4) },
        };
    }

    private static Template WithChain(string name, Func<Chain, Chain> change) => Senior with { Chains = [.. Senior.Chains.Select(c => c.Name == name ? change(c) : c)] };

    private static Template WithMix(PhaseKind phase, Func<WeeklyMix, WeeklyMix> change) => Senior with { Mixes = [.. Senior.Mixes.Select(m => m.Phase == phase ? change(m) : m)] };
}
