using System.Text.RegularExpressions;

namespace ClubCycle.Web.Hosting;

/// <summary>Addresses whose last part is a secret.</summary>
internal static partial class SecretAddresses
{
    public static string Masked(string text) => Secret().Replace(text, "$1…");

    [GeneratedRegex(@"(/(?:calendar|p|account/sign-in-link)/)[A-Za-z0-9_.%-]+", RegexOptions.NonBacktracking | RegexOptions.IgnoreCase)]
    private static partial Regex Secret();
}
