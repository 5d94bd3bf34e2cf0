namespace ClubCycle.Data.Embedded;

/// <summary>The role that the app signs in with: it reads and changes rows, and neither makes nor changes nor empties a table, nor takes a fence down.</summary>
public static class AppRole
{
    /// <summary>Lets a role at the owner's tables. Once is enough, and again does no harm.</summary>
    /// <exception cref="DatabaseUnavailableException">There is no such role.</exception>
    public static Task GrantAsync(string ownerConnectionString, string role, CancellationToken cancel = default) =>
        Grants.RunAsync(ownerConnectionString, role, "ConnectionStrings__ClubCycle", tables: "select, insert, update, delete", sequences: "usage, select", more: "", cancel);
}
