using System.Globalization;
using ClubCycle.Calendars;
using ClubCycle.Data.Plans;
using ClubCycle.Planning;
using ClubCycle.Planning.Feeds;
using ClubCycle.Planning.Languages;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Weeks;
using ClubCycle.Planning.Workouts;
using ClubCycle.Web.Features.Feeds;

namespace ClubCycle.Web.Tests.Feeds;

/// <summary>Calendars in the language of their link.</summary>
public sealed class FeedLanguageTests
{
    private static readonly Language[] Translated = [.. LanguageNames.All.Where(l => l != Language.English)];

    private static readonly FeedOptions Everything = new(Places: true, ReminderMinutes: 120);

    public static TheoryData<Language> Languages => [.. Translated];

    [Theory]
    [MemberData(nameof(Languages))]
    public void No_title_and_no_reason_of_any_plan_is_left_in_English(Language language)
    {
        var book = PhraseBook.For(language);

        var unknown = ManyPlans.All.SelectMany(p => p.Sessions).SelectMany(TitleAndReasons).Distinct().SelectMany(text => book.Explain(text).Unknown);

        Assert.Empty(unknown.Distinct());
    }

    [Theory]
    [MemberData(nameof(Languages))]
    public void Nothing_that_players_do_is_left_in_English(Language language)
    {
        var book = PhraseBook.For(language);

        var unknown = ManyPlans.All.SelectMany(p => p.Sessions).SelectMany(StepsAndCautions).Distinct().SelectMany(text => book.Explain(text).Unknown);

        Assert.Empty(unknown.Distinct());
    }

    /// <summary>Held against the English calendar itself, whatever the book says of its own.</summary>
    [Theory]
    [MemberData(nameof(Languages))]
    public void No_line_of_a_description_reads_as_in_English(Language language)
    {
        var book = PhraseBook.For(language);

        var same =
            from session in ManyPlans.All.SelectMany(p => p.Sessions)
            from line in SessionText.Describe(session).Split('\n').Intersect(SessionText.Describe(session, book).Split('\n'))
            where line.Any(char.IsLetter)
            select line;

        Assert.Empty(same.Distinct());
    }

    [Fact]
    public void Every_sentence_of_the_book_is_said_somewhere()
    {
        var book = PhraseBook.For(Language.Dutch);
        var published = PublishedSquad.Of(PublishedSquad.Seasons[0]).Publish();
        var used = ManyPlans.All.SelectMany(p => p.Sessions).SelectMany(s => TitleAndReasons(s).Concat(StepsAndCautions(s)).Concat(Pieces(s)))
            .Concat(FeedOptions.Reminders.SelectMany(minutes => Reminders(published, minutes)))
            .Concat(FeedRendering.Calendar(published, new FeedOptions(), waiting: true).Events.SelectMany(e => e.Description.Split('\n')).Select(line => line.Replace("Why here: ", "", StringComparison.Ordinal)))
            .Concat(Library())
            // Recipes give every step repetitions or minutes; a step with sets alone can still be stored.
            .Concat([SessionText.Amount(new Step("main", "", "", Sets: 1)), SessionText.Amount(new Step("main", "", "", Sets: 2))])
            .Append("Squad calendar")
            .Distinct().SelectMany(text => book.Explain(text).Keys).ToHashSet();

        var unused = string.Join('\n', book.Phrases.Keys.Where(key => !used.Contains(key)).Order(StringComparer.Ordinal));
        Assert.True(unused.Length == 0, unused);
    }

    [Theory]
    [MemberData(nameof(Languages))]
    public void A_calendar_in_another_language_has_the_same_events_at_the_same_times_with_the_same_stamps(Language language)
    {
        foreach (var published in Published())
        {
            Assert.Equal(Facts(published, Everything), Facts(published, Everything with { Language = language }));
            Assert.Equal(Facts(published, new FeedOptions(DayOnly: true)), Facts(published, new FeedOptions(DayOnly: true, Language: language)));
        }
    }

    [Fact]
    public void Each_language_has_bytes_of_its_own() =>
        Assert.Equal(LanguageNames.All.Count, LanguageNames.All.Select(l => FeedRendering.Render(Published()[0], Everything with { Language = l }, false).Etag).Distinct().Count());

    [Theory]
    [InlineData("tr-TR")]
    [InlineData("ar-SA")]
    [InlineData("de-DE")]
    public void The_culture_of_the_thread_changes_no_byte(string culture)
    {
        var published = Published()[0];
        var before = LanguageNames.All.Select(l => FeedRenderingTests.Text(published, Everything with { Language = l })).ToList();
        var (own, ownOfScreens) = (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture);
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = new CultureInfo(culture);

            Assert.Equal(before, LanguageNames.All.Select(l => FeedRenderingTests.Text(published, Everything with { Language = l })));
        }
        finally
        {
            (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = (own, ownOfScreens);
        }
    }

    [Fact]
    public void What_people_typed_stays_as_it_is_even_when_it_is_a_word_of_the_book()
    {
        var squad = PublishedSquad.Of(PublishedSquad.Seasons[0]);
        var match = squad.Plan.Sessions.First(s => s.Kind == SessionKind.Match) with { Title = "Match: Monday", Note = "Take care\nSpeed", Place = "Match" };

        var published = squad.Publish([match]) with { SquadName = "Speed", ClubName = "Agility" };
        var calendar = FeedRendering.Calendar(published, Everything with { Language = Language.Dutch }, waiting: false);

        var one = Assert.Single(calendar.Events);
        Assert.Equal(("Wedstrijd: Monday", "Match", "Speed, Agility", "nl"), (one.Title, one.Place, calendar.Name, calendar.Language));
        Assert.StartsWith("Take care\nSpeed\n\n", one.Description, StringComparison.Ordinal);
    }

    [Fact]
    public void A_match_called_off_is_titled_in_the_language_too()
    {
        var squad = PublishedSquad.Of(PublishedSquad.Seasons[0]);
        squad.Publish();
        var gone = squad.Plan.Sessions.First(s => s.Kind == SessionKind.Match);

        var calendar = FeedRendering.Calendar(squad.Publish([.. squad.Plan.Sessions.Where(s => s.Uid != gone.Uid)]), Everything with { Language = Language.Spanish }, waiting: false);

        Assert.StartsWith("Partido: ", Assert.Single(calendar.Events, e => e.Cancelled).Title, StringComparison.Ordinal);
    }

    [Fact]
    public void Who_owes_the_health_questions_is_told_so_in_the_language()
    {
        var calendar = FeedRendering.Calendar(Published()[0], Everything with { Language = Language.German }, waiting: true);

        Assert.Contains(calendar.Events, e => e.Description.Contains("Gesundheitsfragen", StringComparison.Ordinal));
        Assert.DoesNotContain(calendar.Events, e => e.Description.Contains("health", StringComparison.Ordinal));
    }

    [Fact]
    public void A_reminder_and_the_categories_are_in_the_language()
    {
        var text = FeedRenderingTests.Text(Published()[0], Everything with { Language = Language.Dutch }).Replace("\r\n ", "", StringComparison.Ordinal);

        Assert.Contains("begint over 2 uur", text, StringComparison.Ordinal);
        Assert.Contains("CATEGORIES:Snelheid", text, StringComparison.Ordinal);
        Assert.DoesNotContain("CATEGORIES:Speed", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_code_of_every_option_in_every_language_reads_back_and_fits_its_column()
    {
        var all = PublishedSquad.AllOptions;

        Assert.All(all, o => Assert.Equal(o, FeedOptions.Of(o.Code)));
        Assert.All(all, o => Assert.InRange(FeedRendering.VariantOf(o, waiting: true).Length, 2, 40));
        Assert.All(all, o => Assert.InRange(o.Code.Length, 0, 20));
        Assert.Equal(2 * all.Count, all.SelectMany(o => new[] { FeedRendering.VariantOf(o, true), FeedRendering.VariantOf(o, false) }).Distinct().Count());
        Assert.Equal("spml-r60-nl-w", FeedRendering.VariantOf(new FeedOptions(Places: true, ReminderMinutes: 60, Language: Language.Dutch), waiting: true));
    }

    [Theory]
    [InlineData("spm-en")]
    [InlineData("spm-NL")]
    [InlineData("spm-nl-r60")]
    [InlineData("spm-nl-nl")]
    [InlineData("spm-nl-w")]
    [InlineData("spm-fr")]
    [InlineData("spm-")]
    [InlineData("nl")]
    [InlineData("es")]
    [InlineData("spm-r60-r60")]
    public void Any_other_code_means_nothing(string code) => Assert.Null(FeedOptions.Of(code));

    [Fact]
    public void A_year_is_translated_in_a_few_milliseconds()
    {
        var published = PublishedSquad.Demo.Select(r => PublishedSquad.Of(r).Publish()).MaxBy(p => p.Plan.Sessions.Count)!;
        _ = FeedRendering.Calendar(published, Everything, false);
        var book = new PhraseBook(Language.German, PhraseBook.For(Language.German).Phrases);
        _ = Milliseconds(published, PhraseBook.For(Language.Dutch));
        var (first, again, english) = (Milliseconds(published, book), Milliseconds(published, book), Milliseconds(published, PhraseBook.English));

        TestContext.Current.TestOutputHelper?.WriteLine($"{published.Plan.Sessions.Count} sessions: {first:0.0} ms first, {again:0.0} ms again, {english:0.0} ms in English");
        Assert.InRange(again, 0, 500);
    }

    private static double Milliseconds(PublishedPlan published, PhraseBook phrases)
    {
        var watch = System.Diagnostics.Stopwatch.StartNew();
        Assert.All(published.Plan.Sessions, session => Assert.NotEmpty(SessionText.Describe(session, phrases)));
        return watch.Elapsed.TotalMilliseconds;
    }

    private static List<PublishedPlan> Published() => [.. PublishedSquad.Seasons.Concat(PublishedSquad.Demo).Select(r =>
    {
        var squad = PublishedSquad.Of(r);
        squad.Publish();
        return squad.Publish([.. squad.Plan.Sessions.Where((_, n) => n % 23 != 22)]);
    })];

    private static List<string> Facts(PublishedPlan published, FeedOptions options) =>
        [.. FeedRendering.Calendar(published, options, false).Events.Select(e => $"{e.Uid} {e.StartsAt} {e.EndsAt} {e.Sequence} {e.LastChanged} {e.Cancelled} {e.Place} {e.DayOnly} {e.ReminderMinutes}")];

    private static IEnumerable<string> TitleAndReasons(PlannedSession session) =>
        session.Why.Append(session.Kind == SessionKind.Match ? "Match" : session.Title);

    private static IEnumerable<string> StepsAndCautions(PlannedSession session) =>
        session.Steps.SelectMany(s => new[] { SessionText.PartTitle(s.Part), s.Name, s.Note }).Concat(session.Cautions);

    /// <summary>What the English text is put together from, by its own punctuation.</summary>
    private static IEnumerable<string> Pieces(PlannedSession session) =>
        SessionText.Describe(session).Split('\n').Where(line => !line.StartsWith('-'))
            .Concat(session.Steps.SelectMany(step => SessionText.Amount(step).Split(", ")))
            .Concat(session.Qualities.Select(q => SessionText.WordFor(q)))
            .Append(session.Title);

    private static IEnumerable<string> Reminders(PublishedPlan published, int minutes) =>
        FeedRenderingTests.Text(published, new FeedOptions(ReminderMinutes: minutes)).Split("\r\n").Where(line => line.StartsWith("DESCRIPTION:Match", StringComparison.Ordinal)).Select(line => line["DESCRIPTION:".Length..].Replace("\\", "", StringComparison.Ordinal));

    private static IEnumerable<string> Library() => ExerciseLibrary.All.SelectMany(e =>
        new[] { e.Name, e.Part, e.Purpose, e.How, e.Caution, e.WithoutEquipment }.Concat(e.Points).Concat(e.Faults)).OfType<string>()
        .Concat(WorkoutCatalogue.All.Select(w => w.Title))
        .Concat(
            from workout in WorkoutCatalogue.All
            from ages in AgeGroup.All
            where workout.AllowedFor(ages)
            from training in Enum.GetValues<TrainingAge>()
            let sheet = SessionSheets.For(workout, new DoseContext(ages, training, PhaseKind.InSeason, 1, WeekLoading.Loading, 60, 0))
            from text in sheet.Steps.Select(s => s.Note).Concat(sheet.Cautions)
            select text);
}
