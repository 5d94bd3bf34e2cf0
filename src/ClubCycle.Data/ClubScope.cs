namespace ClubCycle.Data;

/// <summary>Which club's rows a context sees and may write. Without one it sees no club data at all.</summary>
public sealed record ClubScope
{
    private ClubScope(Guid club, string setting) => (Club, Setting) = (club, setting);

    /// <summary>Accounts only.</summary>
    public static ClubScope None { get; } = new(Guid.Empty, "");

    /// <summary>All clubs: for first-run, looking up a secret link, taking outbox messages, listing the clubs and finding the last backup. Nothing else may ask for it.</summary>
    public static ClubScope Everywhere { get; } = new(Guid.Empty, "*");

    /// <summary>Empty when the scope is not one club.</summary>
    public Guid Club { get; }

    /// <summary>Value of the database setting <c>app.club</c> that the row security policies read.</summary>
    internal string Setting { get; }

    public static ClubScope Of(Guid club) => club == Guid.Empty
        ? throw new ArgumentException("A club has an id.", nameof(club))
        : new(club, club.ToString("D"));
}
