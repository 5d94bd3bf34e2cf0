using System.Text;

namespace ClubCycle.Planning;

/// <summary>How files, slots and style classes spell the domain's closed lists: <c>AerobicBuild</c> is <c>aerobic-build</c>.</summary>
public static class FileName
{
    public static string Of<T>(T value)
        where T : struct, Enum => Names<T>.ByValue.TryGetValue(value, out var name)
            ? name
            : throw new ArgumentOutOfRangeException(nameof(value), value, $"Not a {typeof(T).Name}");

    public static bool TryParse<T>(string name, out T value)
        where T : struct, Enum => Names<T>.ByName.TryGetValue(name, out value);

    public static IReadOnlyCollection<string> All<T>()
        where T : struct, Enum => Names<T>.ByName.Keys;

    private static string Kebab(string name)
    {
        var kebab = new StringBuilder();
        foreach (var letter in name)
        {
            if (char.IsAsciiLetterUpper(letter) && kebab.Length > 0)
            {
                kebab.Append('-');
            }

            kebab.Append(char.ToLowerInvariant(letter));
        }

        return kebab.ToString();
    }

    private static class Names<T>
        where T : struct, Enum
    {
        public static readonly Dictionary<T, string> ByValue = Enum.GetValues<T>().ToDictionary(v => v, v => Kebab(v.ToString()));
        public static readonly Dictionary<string, T> ByName = ByValue.ToDictionary(p => p.Value, p => p.Key, StringComparer.Ordinal);
    }
}
