namespace ClubCycle.Web.Account;

/// <summary>Where a form sends people afterwards: never to another site.</summary>
internal static class LocalAddress
{
    public static string Of(string? address) =>
        address is ['/', .. var rest] && (rest.Length == 0 || rest[0] is not ('/' or '\\')) && !address.Any(char.IsControl) ? address : "/";
}
