using System.Text.RegularExpressions;

namespace ClubCycle.Web.Hosting;

/// <summary>Addresses whose last part is a secret.</summary>
internal static partial class SecretAddresses
{
    /// <summary>Paths whose next part is a secret, with bars between them. deploy/nginx.conf has them too.</summary>
    public const string Paths = "calendar|p|g|account/sign-in-link";

    private static readonly PathString[] Starts = [.. Paths.Split('|').Select(path => new PathString("/" + path))];

    public static bool Is(PathString path) => Starts.Any(start => path.StartsWithSegments(start, StringComparison.OrdinalIgnoreCase));

    /// <summary>Without what follows the paths that end in a secret, and without any word as long as one: a secret gets pasted anywhere.</summary>
    public static string Masked(string text) => LongWord().Replace(Secret().Replace(text, "$1…"), "…");

    [GeneratedRegex("(/(?:" + Paths + ")/)[A-Za-z0-9_.%-]+", RegexOptions.NonBacktracking | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Secret();

    /// <summary>43 characters: 32 bytes as a link writes them. Their digest in hexadecimal is longer.</summary>
    [GeneratedRegex("[A-Za-z0-9_-]{43,}", RegexOptions.NonBacktracking)]
    private static partial Regex LongWord();
}
