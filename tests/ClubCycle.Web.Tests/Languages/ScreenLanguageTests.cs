using System.Text.RegularExpressions;
using ClubCycle.Planning.Languages;
using ClubCycle.Web.Languages;

namespace ClubCycle.Web.Tests.Languages;

/// <summary>What the screens say, read from their source.</summary>
public partial class ScreenLanguageTests
{
    public static TheoryData<Language> Translated => [.. LanguageNames.All.Where(l => l != Language.English)];

    [Fact]
    public void No_word_of_a_screen_is_left_out_of_the_translations() => None(ScreenWords.HardCoded);

    [Fact]
    public void What_is_said_stands_in_the_source_as_it_is() => None(ScreenWords.Unreadable);

    [Theory]
    [MemberData(nameof(Translated))]
    public void Every_text_of_the_screens_is_translated(Language language) =>
        None(ScreenWords.Said.Where(text => Texts.Screens(language).GetValueOrDefault(text.Key) is null && Texts.Book(language).Phrases.GetValueOrDefault(text.Key) is null).Select(text => text.Key).Distinct());

    [Theory]
    [MemberData(nameof(Translated))]
    public void Every_problem_every_sketch_and_every_remark_about_a_file_is_translated(Language language) =>
        None(ScreenWords.OfProblems.Concat(ScreenWords.OfSketches).Concat(ScreenWords.OfFiles).Where(text => Texts.Book(language).Explain(text).Unknown.Count > 0));

    [Theory]
    [MemberData(nameof(Translated))]
    public void No_translation_is_left_over(Language language) => None(Texts.Screens(language).Keys.Except(ScreenWords.Said.Select(text => text.Key)));

    [Theory]
    [MemberData(nameof(Translated))]
    public void A_translation_has_the_places_of_its_text_and_ends_like_it(Language language) => None(Texts.Screens(language)
        .Where(text => !Places(text.Key).SequenceEqual(Places(text.Value)) || End(text.Key) != End(text.Value) || text.Value.Trim().Length == 0 || char.IsWhiteSpace(text.Value[0]) != char.IsWhiteSpace(text.Key[0]))
        .Select(text => $"{text.Key}: {text.Value}"));

    /// <summary>Words that are the same in both languages come up, whole sentences do not.</summary>
    [Theory]
    [MemberData(nameof(Translated))]
    public void No_sentence_is_left_in_English(Language language) => None(Texts.Screens(language).Where(text => text.Key == text.Value && text.Key.Count(c => c == ' ') > 3).Select(text => text.Key));

    private static void None(IEnumerable<string> wrong)
    {
        var all = wrong.ToList();
        Assert.True(all.Count == 0, $"{all.Count}:\n{string.Join('\n', all)}");
    }

    private static IEnumerable<string> Places(string text) => Place().Matches(text).Select(m => m.Value).Distinct().Order(StringComparer.Ordinal);

    private static char? End(string text) => text.Length > 0 && text[^1] is '.' or '?' or ':' or '…' or ' ' ? text[^1] : null;

    [GeneratedRegex("\\{\\d\\}")]
    private static partial Regex Place();
}
