namespace ClubCycle.Web.Commands;

/// <summary>How a command ended.</summary>
internal static class ExitCode
{
    public const int Done = 0;

    /// <summary>The surroundings stopped us: a port, a database, a folder.</summary>
    public const int Failed = 1;

    /// <summary>The input cannot be accepted.</summary>
    public const int Problems = 2;
}
