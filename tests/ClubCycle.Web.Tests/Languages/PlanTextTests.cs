using ClubCycle.Planning.Languages;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Templates;
using ClubCycle.Planning.Workouts;
using ClubCycle.Web.Languages;
using ClubCycle.Web.Tests.Feeds;

namespace ClubCycle.Web.Tests.Languages;

/// <summary>What the planner says on screens, in other languages. What it says in calendars is held by the tests of feeds.</summary>
public sealed class PlanTextTests
{
    public static TheoryData<Language> Translated => [.. LanguageNames.All.Where(l => l != Language.English)];

    [Theory]
    [MemberData(nameof(Translated))]
    public void No_finding_of_any_plan_is_left_in_English(Language language) =>
        Known(language, ManyPlans.All.SelectMany(p => p.Findings).SelectMany(f => new[] { f.Message, f.Mend }).Concat(PlanRules.All.SelectMany(r => new[] { r.Mend, r.Sentence })));

    [Theory]
    [MemberData(nameof(Translated))]
    public void No_reason_for_a_change_is_left_in_English(Language language) =>
        Known(language, ManyPlans.All.SelectMany(p => p.Changes.Moved.Select(m => m.Why).Concat(p.Changes.Dropped.Select(d => d.Why))));

    [Theory]
    [MemberData(nameof(Translated))]
    public void No_reason_for_a_dose_is_left_in_English(Language language) =>
        Known(language, ManyPlans.Planned.SelectMany(p => p.Plan.Sessions.SelectMany(s => DoseReasons.Of(p.Request, p.Plan, s))).Select(r => r.Text));

    [Theory]
    [MemberData(nameof(Translated))]
    public void No_name_of_the_library_is_left_in_English(Language language) => Known(
        language,
        BuiltInTemplates.All.SelectMany(t => new[] { t.Title }.Concat(t.Chains.Select(c => c.Name)).Concat(t.Mixes.SelectMany(m => m.Slots).SelectMany(s => new[] { s.Name.Replace('.', ' ').Replace('-', ' ') })))
            .Concat(AgeGroup.All.Select(a => a.Name).Where(name => !name.Any(char.IsDigit)))
            .Concat(WorkoutCatalogue.All.SelectMany(w => new[] { w.Title }))
            .Concat(ExerciseLibrary.All.SelectMany(e => new[] { e.Name, e.Purpose }.Concat(e.Faults).Concat(e.Points).Append(e.How).Concat(e.Equipment.Select(Web.Features.Exercises.ExerciseText.Words)).Concat(e.Settings.Select(Web.Features.Exercises.ExerciseText.Words)))));

    /// <summary>Regions keep their own names.</summary>
    [Theory]
    [MemberData(nameof(Translated))]
    public void Every_country_has_its_name(Language language) => Known(language, ClubCycle.Calendars.Holidays.PublicHolidays.Countries.Select(c => c.Name));

    private static void Known(Language language, IEnumerable<string> texts)
    {
        var book = Texts.Book(language);
        var unknown = string.Join('\n', texts.Distinct().SelectMany(text => book.Explain(text).Unknown).Distinct().Order(StringComparer.Ordinal));
        Assert.True(unknown.Length == 0, unknown);
    }
}
