using System.Collections.Frozen;
using System.Globalization;
using ClubCycle.Planning.Languages;

namespace ClubCycle.Web.Languages;

/// <summary>
/// Says the texts of screens and pages in the language of who reads them (<see cref="CultureInfo.CurrentUICulture"/>).
/// The code holds English; a translation is found by it in <c>Languages/Screens.*.resx</c>, or among the words of plans.
/// </summary>
/// <remarks>Not in static fields and constants: they would stay in the language of who came first.</remarks>
public static class Texts
{
    private static readonly FrozenDictionary<Language, Tongue> Tongues = LanguageNames.All.ToFrozenDictionary(language => language, language => new Tongue(language));

    /// <summary>English for cultures that are not translated.</summary>
    public static Language ReadersLanguage => LanguageNames.Find(CultureInfo.CurrentUICulture.TwoLetterISOLanguageName) ?? Language.English;

    /// <summary>A text of the screens, as one whole: a sentence, a label, a heading.</summary>
    /// <param name="english">A literal, so that the tests find it.</param>
    public static string Say(string english) => Tongues[ReadersLanguage].Find(english);

    /// <summary>The same with numbered places: <c>Say($"Week from {day}")</c> has the key <c>Week from {0}</c>.</summary>
    public static string Say(Sentence sentence) => sentence.In(Tongues[ReadersLanguage].Find(sentence.Key));

    /// <summary>A text that the planner or the stores made up: of a plan, a finding, a problem. What is unknown stays English, and so does what people typed.</summary>
    public static string SayPlan(string english) => Tongues[ReadersLanguage].Book.Say(english);

    /// <summary>For those who put texts of plans together.</summary>
    public static PhraseBook PlanBook => Tongues[ReadersLanguage].Book;

    /// <summary>All that is translated, by the English text.</summary>
    internal static IReadOnlyDictionary<string, string> Screens(Language language) => Tongues[language].Screens;

    /// <summary>Words of plans and of everything that is wrong with them.</summary>
    internal static PhraseBook Book(Language language) => Tongues[language].Book;

    private sealed class Tongue(Language language)
    {
        public FrozenDictionary<string, string> Screens { get; } = Read(language, "Screens").ToFrozenDictionary(StringComparer.Ordinal);

        public PhraseBook Book { get; } = PhraseBook.For(language).With(Read(language, "Plans"));

        public string Find(string english) => Screens.GetValueOrDefault(english) ?? Book.Phrases.GetValueOrDefault(english, english);

        private static IReadOnlyDictionary<string, string> Read(Language language, string file) => PhraseFiles.Read(typeof(Texts).Assembly, language, file);
    }
}
