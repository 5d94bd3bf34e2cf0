namespace ClubCycle.Planning.Languages;

/// <summary>One text on its way into another language: as one phrase, or as several sentences in a row.</summary>
internal sealed class PhraseReading(PhraseBook book)
{
    /// <summary>Texts of plans take some dozens; one that was built to have very many readings stays as it is.</summary>
    private const int MostTries = 2_000;

    private readonly List<string> _keys = [];
    private readonly List<string> _unknown = [];
    private int _tries;

    public IReadOnlyList<string> Keys => _keys;

    /// <summary>Pieces that stay English.</summary>
    public IReadOnlyList<string> Unknown => _unknown;

    private bool GaveUp => _tries > MostTries;

    public string Say(string text) => Known(text) ?? InSentences(text);

    /// <summary>The text when the book knows all of it; null otherwise.</summary>
    private string? Known(string text) => GaveUp ? null : OnePhrase(text) ?? Row(text, SentenceEnds(text), " ") ?? Row(text, Each(text, "; "), "; ") ?? Row(text, Each(text, ", "), ", ");

    /// <summary>What stands behind a colon or a semicolon may begin small, and what begins a line with a capital.</summary>
    private string? OnePhrase(string text) => ++_tries > MostTries ? null : Phrase(text) ?? Recased(text) ?? AsPhraseWithPlaces(text, Known);

    private string? Phrase(string text) => !text.Any(char.IsLetter) ? Number(text) : Used(text, book.Find(text));

    /// <summary>Never with a small letter in German, whose nouns have capitals.</summary>
    private string? Recased(string text)
    {
        var other = (char.IsUpper(text[0]) ? char.ToLowerInvariant(text[0]) : char.ToUpperInvariant(text[0])) + text[1..];
        return Used(other, book.Find(other)) is not { Length: > 0 } found ? null
            : char.IsUpper(text[0]) ? char.ToUpperInvariant(found[0]) + found[1..]
            : book.Language == Language.German ? found
            : char.ToLowerInvariant(found[0]) + found[1..];
    }

    private string? Used(string key, string? translation)
    {
        if (translation is not null)
        {
            _keys.Add(key);
        }

        return translation;
    }

    private string? AsPhraseWithPlaces(string text, Func<string, string?> say)
    {
        foreach (var (key, translation, english) in book.Candidates(text))
        {
            var (mark, unknown) = (_keys.Count, _unknown.Count);
            if (english.Match(text, say) is { } values)
            {
                _keys.Add(key);
                return Languages.Phrase.Fill(translation, values);
            }

            Forget(mark);
            _unknown.RemoveRange(unknown, _unknown.Count - unknown);
        }

        return null;
    }

    /// <summary>The longest beginning that the book knows, and then the rest, as long as all of it is known.</summary>
    private string? Row(string text, List<int> ends, string between)
    {
        var mark = _keys.Count;
        for (var i = ends.Count - 1; i >= 0 && !GaveUp; i--)
        {
            if (OnePhrase(text[..ends[i]]) is { } first && Known(text[(ends[i] + between.Length)..]) is { } rest)
            {
                return first + between + rest;
            }

            Forget(mark);
        }

        return null;
    }

    /// <summary>Sentence by sentence; what is unknown stays.</summary>
    private string InSentences(string text)
    {
        List<string> said = [];
        while (text.Length > 0)
        {
            List<int> ends = [.. SentenceEnds(text), text.Length];
            var (end, sentence) = (ends[0], (string?)null);
            for (var i = ends.Count - 1; i >= 0 && sentence is null; i--)
            {
                sentence = Known(text[..ends[i]]);
                end = sentence is null ? end : ends[i];
            }

            if (GaveUp)
            {
                said.Add(Left(text));
                break;
            }

            said.Add(sentence ?? AsPhraseWithPlaces(text[..end], OrAsItIs) ?? Left(text[..end]));
            text = end < text.Length ? text[(end + 1)..] : "";
        }

        return string.Join(' ', said);
    }

    private string OrAsItIs(string value) => Known(value) ?? (GaveUp ? null : AsPhraseWithPlaces(value, OrAsItIs)) ?? Left(value);

    private string Left(string text)
    {
        _unknown.Add(text);
        return text;
    }

    private void Forget(int mark) => _keys.RemoveRange(mark, _keys.Count - mark);

    /// <summary>None of the languages but English writes 13.5.</summary>
    private static string Number(string text) =>
        text.Length > 2 && char.IsAsciiDigit(text[0]) && text[^2] == '.' && char.IsAsciiDigit(text[^1]) ? string.Concat(text.AsSpan(0, text.Length - 2), ",", text.AsSpan(text.Length - 1)) : text;

    private static List<int> SentenceEnds(string text)
    {
        List<int> ends = [];
        for (var i = 1; i < text.Length - 1; i++)
        {
            if (text[i] == ' ' && text[i - 1] is '.' or '!' or '?')
            {
                ends.Add(i);
            }
        }

        return ends;
    }

    private static List<int> Each(string text, string sign)
    {
        List<int> ends = [];
        for (var i = text.IndexOf(sign, StringComparison.Ordinal); i > 0 && i < text.Length - sign.Length; i = text.IndexOf(sign, i + 1, StringComparison.Ordinal))
        {
            ends.Add(i);
        }

        return ends;
    }
}
