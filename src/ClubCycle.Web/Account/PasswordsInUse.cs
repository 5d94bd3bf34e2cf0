using System.Collections.Frozen;
using System.IO.Compression;

namespace ClubCycle.Web.Account;

/// <summary>Passwords that people are known to have used, of a length that would be let in here. Where they come from: passwords-in-use.LICENSE.txt.</summary>
internal static class PasswordsInUse
{
    private static readonly Lazy<FrozenSet<string>> All = new(Read);

    public static bool Has(string password) => All.Value.Contains(password.ToLowerInvariant());

    /// <summary>The commonest first.</summary>
    internal static IEnumerable<string> Lines()
    {
        using var file = typeof(PasswordsInUse).Assembly.GetManifestResourceStream("passwords-in-use.txt.gz")!;
        using var reader = new StreamReader(new GZipStream(file, CompressionMode.Decompress));
        while (reader.ReadLine() is { } line)
        {
            yield return line;
        }
    }

    private static FrozenSet<string> Read() => Lines().ToFrozenSet(StringComparer.Ordinal);
}
