using System.Collections.Concurrent;
using System.Collections.Frozen;

namespace ClubCycle.Planning.Languages;

/// <summary>
/// Says what a plan holds in another language. Plans are kept in English; the key of a phrase is its English text, with numbered places for what changes.
/// What the book does not know stays English.
/// </summary>
/// <remarks>Safe to share between threads. Texts that people typed must not be given to it: it would translate a word that happens to be a phrase.</remarks>
public sealed class PhraseBook
{
    /// <summary>More than the texts of many clubs; past it nothing more is remembered.</summary>
    private const int MostRemembered = 20_000;

    private static readonly FrozenDictionary<Language, PhraseBook> Books = LanguageNames.All.ToFrozenDictionary(language => language, language => new PhraseBook(language, PhraseFiles.Read(typeof(PhraseBook).Assembly, language, "Exercises", "Sentences")));

    private readonly FrozenDictionary<string, string> _phrases;
    private readonly FrozenDictionary<char, Phrasing[]> _withPlaces;
    private readonly ConcurrentDictionary<string, string> _said = new(StringComparer.Ordinal);
    private int _remembered;

    /// <param name="phrases">Translations by English text.</param>
    public PhraseBook(Language language, IReadOnlyDictionary<string, string> phrases)
    {
        Language = language;
        _phrases = phrases.ToFrozenDictionary(StringComparer.Ordinal);
        var withPlaces = phrases.Where(p => Phrase.PlacesOf(p.Key).Count > 0).Select(p => new Phrasing(new Phrase(p.Key), p.Key, p.Value)).ToList();
        _withPlaces = withPlaces.Select(p => FirstOf(p.English)).Append(AnyStart).Distinct().ToFrozenDictionary(
            first => first,
            first => withPlaces.Where(p => FirstOf(p.English) == first || p.English.Beginning.Length == 0).OrderByDescending(p => p.English.FixedLength).ThenBy(p => p.Key, StringComparer.Ordinal).ToArray());
    }

    /// <summary>Stands for phrases that begin with a place.</summary>
    private const char AnyStart = '\0';

    private sealed record Phrasing(Phrase English, string Key, string Translation);

    public static PhraseBook English { get; } = For(Language.English);

    public Language Language { get; }

    /// <summary>Translations by English text; empty for English.</summary>
    public IReadOnlyDictionary<string, string> Phrases => _phrases;

    public static PhraseBook For(Language language) => Books[language];

    /// <summary>A stored text in the book's language.</summary>
    public string Say(string english)
    {
        if (Language == Language.English)
        {
            return english;
        }

        if (_said.TryGetValue(english, out var said))
        {
            return said;
        }

        said = new PhraseReading(this).Say(english);
        if (Interlocked.Increment(ref _remembered) <= MostRemembered)
        {
            _said[english] = said;
        }

        return said;
    }

    /// <summary>A phrase of the book with its places filled as they are given.</summary>
    public string Fill(string key, params ReadOnlySpan<string> values) => Phrase.Fill(_phrases.GetValueOrDefault(key, key), values);

    /// <summary>The same book with more phrases; those that are given win.</summary>
    public PhraseBook With(IReadOnlyDictionary<string, string> more) =>
        new(Language, _phrases.Where(p => !more.ContainsKey(p.Key)).Concat(more).ToDictionary(StringComparer.Ordinal));

    /// <summary>Which phrases a text is made of, and the pieces that the book does not know.</summary>
    public (IReadOnlyList<string> Keys, IReadOnlyList<string> Unknown) Explain(string english)
    {
        var reading = new PhraseReading(this);
        reading.Say(english);
        return (reading.Keys, reading.Unknown);
    }

    internal string? Find(string text) => _phrases.GetValueOrDefault(text);

    /// <summary>Phrases with places that a text may be, the most telling first.</summary>
    internal IEnumerable<(string Key, string Translation, Phrase English)> Candidates(string text) =>
        (_withPlaces.TryGetValue(text[0], out var some) ? some : _withPlaces[AnyStart]).Select(p => (p.Key, p.Translation, p.English));

    private static char FirstOf(Phrase phrase) => phrase.Beginning.Length == 0 ? AnyStart : phrase.Beginning[0];
}
