namespace ClubCycle.Web.Account;

/// <summary>A browser by name, as far as its own account of itself goes: <c>Firefox, Linux</c>, or nothing.</summary>
internal static class BrowserName
{
    // From memory: what each calls itself; the first that fits, since later ones claim to be earlier ones, too.
    private static readonly (string Mark, string Name)[] Browsers = [("Edg", "Edge"), ("OPR/", "Opera"), ("Firefox/", "Firefox"), ("Chrome/", "Chrome"), ("Safari/", "Safari")];
    private static readonly (string Mark, string Name)[] Machines = [("iPhone", "iPhone"), ("iPad", "iPad"), ("Android", "Android"), ("Windows", "Windows"), ("Mac OS X", "Mac"), ("Linux", "Linux")];

    public static string Of(string userAgent) => string.Join(", ", Find(Browsers, userAgent).Concat(Find(Machines, userAgent)));

    private static IEnumerable<string> Find((string Mark, string Name)[] known, string userAgent) =>
        known.Where(k => userAgent.Contains(k.Mark, StringComparison.Ordinal)).Select(k => k.Name).Take(1);
}
