using System.Text.RegularExpressions;
using ClubCycle.Planning.Languages;

namespace ClubCycle.Planning.Tests.Languages;

/// <summary>The translations as they are shipped.</summary>
public partial class PhraseFileTests
{
    private static readonly Language[] Translated = [.. LanguageNames.All.Where(l => l != Language.English)];

    public static TheoryData<Language> Languages => [.. Translated];

    [Fact]
    public void Every_language_has_the_same_phrases() =>
        Assert.All(Translated, language => Assert.Equal(Keys(Language.Dutch), Keys(language)));

    [Fact]
    public void The_files_are_found_in_the_program() => Assert.InRange(PhraseBook.For(Language.Dutch).Phrases.Count, 80, int.MaxValue);

    [Theory]
    [MemberData(nameof(Languages))]
    public void A_translation_has_the_places_of_its_phrase(Language language) => Assert.All(
        PhraseBook.For(language).Phrases,
        phrase => Assert.Equal(Places(phrase.Key), Places(phrase.Value)));

    [Theory]
    [MemberData(nameof(Languages))]
    public void A_translation_says_something_and_ends_as_its_phrase_does(Language language) => Assert.All(
        PhraseBook.For(language).Phrases,
        phrase => Assert.True(phrase.Value.Trim() == phrase.Value && phrase.Value.Length > 0 && phrase.Value.EndsWith('.') == phrase.Key.EndsWith('.'), $"{phrase.Key}: {phrase.Value}"));

    /// <summary>Words that are the same in both languages come up, whole sentences do not.</summary>
    [Theory]
    [MemberData(nameof(Languages))]
    public void No_sentence_was_left_in_English(Language language) =>
        Assert.Empty(PhraseBook.For(language).Phrases.Where(p => p.Key == p.Value && p.Key.Count(c => c == ' ') > 2).Select(p => p.Key));

    [Fact]
    public void Every_language_has_a_code_and_a_name_of_its_own()
    {
        Assert.Equal(["en", "nl", "de", "es"], LanguageNames.All.Select(l => l.Code()));
        Assert.Equal(["English", "Nederlands", "Deutsch", "Español"], LanguageNames.All.Select(l => l.OwnName()));
        Assert.All(LanguageNames.All, l => Assert.Equal(l, LanguageNames.Find(l.Code())));
        Assert.Null(LanguageNames.Find("EN"));
        Assert.Null(LanguageNames.Find(null));
    }

    private static IEnumerable<string> Keys(Language language) => PhraseBook.For(language).Phrases.Keys.Order(StringComparer.Ordinal);

    private static string[] Places(string text) => [.. PlacePattern().Matches(text).Select(m => m.Value).Distinct().Order(StringComparer.Ordinal)];

    [GeneratedRegex(@"\{[^}]*\}")]
    private static partial Regex PlacePattern();
}
