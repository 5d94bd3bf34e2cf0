using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Templates;

namespace ClubCycle.Planning.Tests.Templates;

public class TemplateCheckTests
{
    private static readonly Template Good = BuiltInTemplates.Find("senior-standard")!;

    [Fact]
    public void The_built_in_templates_are_fine_and_serve_every_age_group_once()
    {
        Assert.All(BuiltInTemplates.All, template => Assert.Empty(TemplateCheck.Check(template)));
        Assert.Equal(AgeGroup.All.OrderBy(a => a.Name), BuiltInTemplates.All.SelectMany(t => t.AgeGroups).OrderBy(a => a.Name));
    }

    [Theory]
    [InlineData("")]
    [InlineData("Senior")]
    [InlineData("senior standard")]
    [InlineData("senior--standard")]
    [InlineData("-senior")]
    [InlineData("senior\n")]
    [InlineData("sénior")]
    public void A_name_is_lower_case_words_and_hyphens(string name) => Refused(Good with { Name = name }, "template.name", "template.name");

    [Fact]
    public void Names_and_titles_have_a_hundred_characters_at_most()
    {
        Assert.Empty(TemplateCheck.Check(Good with { Name = new string('n', 100), Title = new string('n', 100) }));
        Refused(Good with { Name = new string('n', 101) }, "template.name", "template.name");
        Refused(Good with { Title = new string('n', 101) }, "template.title", "template.title");
        Refused(Good with { Title = " " }, "template.title", "template.title");
        Refused(Good with { Title = "Two\nlines" }, "template.title", "template.title");
        Refused(InFirstChain(chain => chain with { Name = new string('n', 101) }), "template.chain-name", "template.chains[0].name");
    }

    [Fact]
    public void A_template_says_whom_it_is_for_once()
    {
        Refused(Good with { AgeGroups = [] }, "template.no-age-groups", "template.ageGroups");
        Refused(Good with { AgeGroups = [AgeGroup.Senior, AgeGroup.Senior] }, "template.age-group-twice", "template.ageGroups");
    }

    [Fact]
    public void Workouts_suit_every_age_group_of_the_template()
    {
        var problems = TemplateCheck.Check(Good with { AgeGroups = [AgeGroup.Senior, AgeGroup.Youth(14)] });

        Assert.Contains(problems, p => p.Code == "template.workout-not-for-age" && p.At == "template.mixes[4].slots[0].workouts" && p.Message.Contains("not for U14", StringComparison.Ordinal));
        Assert.All(problems, p => Assert.Equal("template.workout-not-for-age", p.Code));
    }

    // Lloyd 2014 and ASCA age bands as the workout catalogue has them (editorial): heavy lifting from U17, medium jumps from U15.
    [Theory]
    [InlineData(16, "heavy-lift", false)]
    [InlineData(17, "heavy-lift", true)]
    [InlineData(14, "jumps", false)]
    [InlineData(15, "jumps", true)]
    [InlineData(10, "low-jumps", false)]
    [InlineData(11, "low-jumps", true)]
    [InlineData(8, "movement-games", true)]
    public void A_squad_gets_only_workouts_of_its_age(int under, string workout, bool fits)
    {
        var template = InFirstSlot(slot => slot with { Workouts = ["movement-games", workout] }, only: true);

        Assert.Equal(fits, TemplateCheck.CheckFor(template, AgeGroup.Youth(under)).Count == 0);
    }

    [Fact]
    public void A_template_has_one_to_twelve_chains_of_one_to_twelve_phases()
    {
        Refused(Good with { Chains = [] }, "template.chains", "template.chains");
        Refused(Good with { Chains = [.. Enumerable.Repeat(Good.Chains[0], 13)] }, "template.chains", "template.chains");
        Refused(InFirstChain(c => c with { Phases = [] }), "template.chain-phases", "template.chains[0].phases");
        Refused(InFirstChain(c => c with { Phases = [.. Enumerable.Repeat(c.Phases[0], 13)] }), "template.chain-phases", "template.chains[0].phases");
    }

    [Theory]
    [InlineData(0, 6)]
    [InlineData(7, 6)]
    [InlineData(1, 61)]
    public void A_chain_is_for_one_to_sixty_weeks(int least, int most) => Refused(InFirstChain(c => c with { MinWeeks = least, MaxWeeks = most }), "template.chain-weeks", "template.chains[0]");

    [Theory]
    [InlineData(-1, 6)]
    [InlineData(7, 6)]
    [InlineData(1, 61)]
    public void A_phase_lasts_up_to_sixty_weeks(int least, int most) =>
        Refused(InFirstPhase(p => p with { MinWeeks = least, MaxWeeks = most }), "template.phase-weeks", "template.chains[0].phases[0]");

    [Theory]
    [InlineData(0)]
    [InlineData(-0.1)]
    [InlineData(1.01)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_share_lies_above_nothing_and_up_to_the_whole(double share) =>
        Refused(InFirstPhase(p => p with { IdealShare = share }), "template.phase-share", "template.chains[0].phases[0].idealShare");

    [Theory]
    [InlineData(-1)]
    [InlineData(61)]
    public void A_fixed_length_is_a_number_of_weeks(int weeks) => Refused(InFirstPhase(p => p with { FixedWeeks = weeks }), "template.phase-fixed", "template.chains[0].phases[0].fixedWeeks");

    [Fact]
    public void Matches_decide_where_the_season_is() =>
        Refused(InFirstPhase(p => p with { Kind = PhaseKind.InSeason }), "template.chain-in-season", "template.chains[0].phases[0].kind");

    [Fact]
    public void Every_phase_in_use_has_one_weekly_mix()
    {
        Refused(Good with { Mixes = [.. Good.Mixes.Where(m => m.Phase != PhaseKind.Mixed)] }, "template.mix-missing", "template.mixes");
        Refused(Good with { Mixes = [.. Good.Mixes.Where(m => m.Phase != PhaseKind.InSeason)] }, "template.mix-missing", "template.mixes");
        Refused(Good with { Mixes = [.. Good.Mixes, Good.Mixes[0]] }, "template.mix-twice", "template.mixes[7].phase");
    }

    [Fact]
    public void A_weekly_mix_stays_within_a_week()
    {
        Refused(InFirstMix(m => m with { ActiveDaysAtMost = 7 }), "template.active-days", "template.mixes[0].activeDaysAtMost");
        Refused(InFirstMix(m => m with { ActiveDaysAtMost = -1 }), "template.active-days", "template.mixes[0].activeDaysAtMost");
        Refused(InFirstMix(m => m with { HoursBetweenHard = 47 }), "template.hours-between-hard", "template.mixes[0].hoursBetweenHard");
        Refused(InFirstMix(m => m with { HoursBetweenHard = 169 }), "template.hours-between-hard", "template.mixes[0].hoursBetweenHard");
        Refused(InFirstMix(m => m with { SessionsPerContactDay = 2 }), "template.pairing", "template.mixes[0].sessionsPerContactDay");
        Refused(InFirstMix(m => m with { Slots = [.. Enumerable.Range(1, 8).Select(i => new Slot($"easy-run.{i}", ["easy-run"], 30))] }), "template.too-many-slots", "template.mixes[0].slots");
        Refused(InFirstMix(m => m with { SessionsPerContactDay = -1 }), "template.pairing", "template.mixes[0].sessionsPerContactDay");
        Assert.Empty(TemplateCheck.Check(InFirstMix(m => m with { Slots = [] })));
    }

    [Theory]
    [InlineData("")]
    [InlineData("Easy run")]
    [InlineData("easy-run.")]
    [InlineData("easy-run.x")]
    [InlineData("easy-run.1\n")]
    public void A_slot_is_named_by_words_and_a_number(string name) => Refused(InFirstSlot(s => s with { Name = name }), "template.slot-name", "template.mixes[0].slots[0].name");

    [Fact]
    public void Slots_of_a_mix_have_different_names() =>
        Refused(InFirstMix(m => m with { Slots = [m.Slots[0], m.Slots[0]] }), "template.slot-twice", "template.mixes[0].slots[1].name");

    [Fact]
    public void A_slot_asks_for_known_workouts_of_a_sane_length()
    {
        Refused(InFirstSlot(s => s with { Minutes = 9 }), "template.slot-minutes", "template.mixes[0].slots[0].minutes");
        Refused(InFirstSlot(s => s with { Minutes = 121 }), "template.slot-minutes", "template.mixes[0].slots[0].minutes");
        Refused(InFirstSlot(s => s with { Workouts = [] }), "template.slot-workouts", "template.mixes[0].slots[0].workouts");
        Refused(InFirstSlot(s => s with { Workouts = [.. Enumerable.Repeat("easy-run", 7)] }), "template.slot-workouts", "template.mixes[0].slots[0].workouts");
        Refused(InFirstSlot(s => s with { Workouts = ["easy-run", "Easy run"] }), "template.workout-unknown", "template.mixes[0].slots[0].workouts");
    }

    [Theory]
    [InlineData(-1, null)]
    [InlineData(15, null)]
    [InlineData(null, -1)]
    [InlineData(null, 15)]
    [InlineData(2, 3)]
    public void A_slot_is_wanted_in_weeks_that_can_be(int? most, int? least) =>
        Refused(InFirstSlot(s => s with { WhenContactsAtMost = most, WhenContactsAtLeast = least }), "template.slot-contacts", "template.mixes[0].slots[0]");

    [Fact]
    public void Loading_keeps_within_what_the_rules_allow()
    {
        Refused(Loading(l => l with { UnloadEvery = 1 }), "template.unload-every", "template.loading.unloadEvery");
        Refused(Loading(l => l with { UnloadEvery = 5 }), "template.unload-every", "template.loading.unloadEvery");
        Refused(Loading(l => l with { UnloadVolume = 0.39 }), "template.unload-volume", "template.loading.unloadVolume");
        Refused(Loading(l => l with { UnloadVolume = double.NaN }), "template.unload-volume", "template.loading.unloadVolume");
        Refused(Loading(l => l with { FirstWeekVolume = 0.49 }), "template.first-week-volume", "template.loading.firstWeekVolume");
        Refused(Loading(l => l with { WeeklyRise = 0.11 }), "template.weekly-rise", "template.loading.weeklyRise");
        Refused(Loading(l => l with { WeeklyRise = -0.01 }), "template.weekly-rise", "template.loading.weeklyRise");
        Refused(Loading(l => l with { UnloadVolume = 0.81 }), "template.unload-volume", "template.loading.unloadVolume");
        Refused(Loading(l => l with { FirstWeekVolume = 1.01 }), "template.first-week-volume", "template.loading.firstWeekVolume");
    }

    [Fact]
    public void The_least_of_everything_is_fine()
    {
        Assert.Empty(TemplateCheck.Check(Loading(_ => new LoadingPattern(2, 0.4, 0.5, 0))));
        Assert.Empty(TemplateCheck.Check(InFirstPhase(p => p with { MinWeeks = 0, MaxWeeks = 0, FixedWeeks = 0, IdealShare = 0.001 })));
        Assert.Empty(TemplateCheck.Check(InFirstChain(c => c with { MinWeeks = 1, MaxWeeks = 1 })));
        Assert.Empty(TemplateCheck.Check(InFirstMix(m => m with { ActiveDaysAtMost = 0, HoursBetweenHard = 48, SessionsPerContactDay = 0 })));
        Assert.Empty(TemplateCheck.Check(InFirstSlot(s => s with { Minutes = 10, WhenContactsAtMost = 0, WhenContactsAtLeast = 0, Workouts = ["easy-run"] })));
    }

    [Fact]
    public void The_most_of_everything_is_fine()
    {
        Assert.Empty(TemplateCheck.Check(Loading(_ => new LoadingPattern(4, 0.8, 1, 0.10))));
        Assert.Empty(TemplateCheck.Check(InFirstPhase(p => p with { MinWeeks = 60, MaxWeeks = 60, FixedWeeks = 60, IdealShare = 1 })));
        Assert.Empty(TemplateCheck.Check(InFirstChain(c => c with { MinWeeks = 60, MaxWeeks = 60, Phases = [.. Enumerable.Repeat(c.Phases[0], 12)] })));
        Assert.Empty(TemplateCheck.Check(Good with { Chains = [.. Enumerable.Repeat(Good.Chains[0], 12)] }));
        Assert.Empty(TemplateCheck.Check(InFirstMix(m => m with { ActiveDaysAtMost = 6, HoursBetweenHard = 168, SessionsPerContactDay = 1 })));
        Assert.Empty(TemplateCheck.Check(InFirstMix(m => m with { Slots = [.. Enumerable.Range(1, 7).Select(i => new Slot($"easy-run.{i}", ["easy-run"], 30))] })));
        Assert.Empty(TemplateCheck.Check(InFirstSlot(s => s with { Minutes = 120, WhenContactsAtMost = 14, WhenContactsAtLeast = 14, Workouts = [.. Enumerable.Repeat("easy-run", 6)] })));
    }

    private static Template Loading(Func<LoadingPattern, LoadingPattern> change) => Good with { Loading = change(Good.Loading) };

    private static Template InFirstChain(Func<Chain, Chain> change) => Good with { Chains = [change(Good.Chains[0]), .. Good.Chains.Skip(1)] };

    private static Template InFirstPhase(Func<ChainPhase, ChainPhase> change) => InFirstChain(c => c with { Phases = [change(c.Phases[0]), .. c.Phases.Skip(1)] });

    private static Template InFirstMix(Func<WeeklyMix, WeeklyMix> change) => Good with { Mixes = [change(Good.Mixes[0]), .. Good.Mixes.Skip(1)] };

    private static Template InFirstSlot(Func<Slot, Slot> change, bool only = false) =>
        InFirstMix(m => m with { Slots = [change(m.Slots[0]), .. m.Slots.Skip(1)] }) is var changed && only
            ? changed with { Mixes = [changed.Mixes[0] with { Slots = [changed.Mixes[0].Slots[0]] }] }
            : changed;

    private static void Refused(Template template, string code, string at)
    {
        var problem = Assert.Single(TemplateCheck.Check(template));

        Assert.Equal((code, at), (problem.Code, problem.At));
    }
}
