using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using ClubCycle.Planning.Languages;

namespace ClubCycle.Web.Languages;

/// <summary>An interpolated text kept apart in its words, which are translated, and its values, which are not.</summary>
[InterpolatedStringHandler]
public readonly struct Sentence(int literalLength, int formattedCount)
{
    private readonly StringBuilder _key = new(literalLength + (3 * formattedCount));
    private readonly List<string> _values = new(formattedCount);

    /// <summary>The words with a numbered place for each value: <c>Week {0} of {1}</c>.</summary>
    public string Key => _key.ToString();

    public void AppendLiteral(string words) => _key.Append(words);

    public void AppendFormatted<T>(T value) => AppendFormatted(value, null);

    public void AppendFormatted<T>(T value, string? format)
    {
        _key.Append(CultureInfo.InvariantCulture, $"{{{_values.Count}}}");
        _values.Add((value is IFormattable formattable ? formattable.ToString(format, CultureInfo.CurrentCulture) : value?.ToString()) ?? "");
    }

    internal string In(string words) => PhraseBook.English.Fill(words, [.. _values]);
}
