namespace ClubCycle.Web.Account;

/// <summary>A browser in words, as far as its own account of itself goes.</summary>
internal static class BrowserName
{
    // From memory: what each calls itself; the first that fits, since later ones claim to be earlier ones, too.
    private static readonly (string Mark, string Name)[] Browsers = [("Edg", "Edge"), ("OPR/", "Opera"), ("Firefox/", "Firefox"), ("Chrome/", "Chrome"), ("Safari/", "Safari")];
    private static readonly (string Mark, string Name)[] Machines = [("iPhone", "iPhone"), ("iPad", "iPad"), ("Android", "Android"), ("Windows", "Windows"), ("Mac OS X", "Mac"), ("Linux", "Linux")];

    public static string Of(string userAgent) => (Find(Browsers, userAgent), Find(Machines, userAgent)) switch
    {
        ({ } browser, { } machine) => $"{browser} on {machine}",
        ({ } browser, null) => browser,
        (null, { } machine) => $"A browser on {machine}",
        _ => "A browser",
    };

    private static string? Find((string Mark, string Name)[] known, string userAgent) =>
        known.FirstOrDefault(k => userAgent.Contains(k.Mark, StringComparison.Ordinal)).Name;
}
