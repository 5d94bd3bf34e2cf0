namespace ClubCycle.Web.Account;

/// <summary>Whether somebody does what is done: a page that follows the changes of others is not in use, and its sign-in grows idle.</summary>
internal static class AtTheScreen
{
    private static readonly AsyncLocal<bool> Nobody = new();

    public static bool IsSomebody => !Nobody.Value;

    /// <summary>What the caller does from now on is done by nobody. Ends with the async method that says so.</summary>
    public static void IsNobody() => Nobody.Value = true;
}
