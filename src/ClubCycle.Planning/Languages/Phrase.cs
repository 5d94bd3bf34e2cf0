using System.Text;

namespace ClubCycle.Planning.Languages;

/// <summary>A sentence with numbered places for what changes in it, such as <c>Week {0} of {1}</c>: fills them, and finds them again in a text.</summary>
internal sealed class Phrase
{
    /// <summary>Signs alone, such as a colon, stand in too many texts; several together tell a phrase, and so do those that enclose it.</summary>
    private const int LeastFixed = 4;

    private readonly string[] _words;
    private readonly int[] _places;

    /// <exception cref="FormatException">Two places touch, a place comes twice, or there is too little besides places.</exception>
    public Phrase(string text)
    {
        (_words, _places) = Split(text);
        if (_words.Skip(1).SkipLast(1).Any(w => w.Length == 0) || _places.Distinct().Count() < _places.Length || (!string.Concat(_words).Any(char.IsLetter) && FixedLength < LeastFixed && (_words[0].Length == 0 || _words[^1].Length == 0)))
        {
            throw new FormatException($"The phrase '{text}' cannot be told apart from others: places must be different, with words between them.");
        }
    }

    public IReadOnlyList<int> Places => _places;

    /// <summary>The more of it is fixed, the less it is mistaken for another.</summary>
    public int FixedLength => _words.Sum(w => w.Length);

    /// <summary>What every text of the phrase begins with; empty when that is a place.</summary>
    public string Beginning => _words[0];

    public static string Fill(string text, ReadOnlySpan<string> values)
    {
        var (words, places) = Split(text);
        var filled = new StringBuilder(words[0]);
        for (var i = 0; i < places.Length; i++)
        {
            filled.Append(places[i] < values.Length ? values[places[i]] : $"{{{places[i]}}}").Append(words[i + 1]);
        }

        return filled.ToString();
    }

    public static IReadOnlyList<int> PlacesOf(string text) => Split(text).Places;

    /// <summary>Finds the places so that <paramref name="say"/> has words for all of them; null when it cannot be.</summary>
    /// <param name="say">Null for a value that does not fit.</param>
    public string[]? Match(string text, Func<string, string?> say)
    {
        if (!text.StartsWith(_words[0], StringComparison.Ordinal) || !text.EndsWith(_words[^1], StringComparison.Ordinal) || text.Length < FixedLength + _places.Length)
        {
            return null;
        }

        var values = new string[_places.Max() + 1];
        return Match(text, say, 0, _words[0].Length, values) ? values : null;
    }

    private bool Match(string text, Func<string, string?> say, int place, int from, string[] values)
    {
        var next = _words[place + 1];
        var last = place == _places.Length - 1;
        for (var at = last ? text.Length - next.Length : IndexOf(text, next, from + 1); at > from; at = last ? -1 : IndexOf(text, next, at + 1))
        {
            // Saying a value can take long; it is not worth it where the other words are missing.
            if (!HasWords(text, place + 2, at + next.Length))
            {
                return false;
            }

            if (say(text[from..at]) is { } said)
            {
                values[_places[place]] = said;
                if (last || Match(text, say, place + 1, at + next.Length, values))
                {
                    return true;
                }
            }
        }

        return false;
    }

    /// <summary>The words from one on stand in the text, in order.</summary>
    private bool HasWords(string text, int word, int from)
    {
        for (; word < _words.Length && from >= 0; word++)
        {
            from = word == _words.Length - 1 ? text.Length - _words[word].Length - from : IndexOf(text, _words[word], from + 1);
            from = from < 0 || word == _words.Length - 1 ? from : from + _words[word].Length;
        }

        return from >= 0;
    }

    private static int IndexOf(string text, string words, int from) => from > text.Length ? -1 : text.IndexOf(words, from, StringComparison.Ordinal);

    private static (string[] Words, int[] Places) Split(string text)
    {
        List<string> words = [];
        List<int> places = [];
        var from = 0;
        for (var i = 0; i + 2 < text.Length; i++)
        {
            if (text[i] == '{' && char.IsAsciiDigit(text[i + 1]) && text[i + 2] == '}')
            {
                words.Add(text[from..i]);
                places.Add(text[i + 1] - '0');
                from = i + 3;
                i += 2;
            }
        }

        words.Add(text[from..]);
        return ([.. words], [.. places]);
    }
}
