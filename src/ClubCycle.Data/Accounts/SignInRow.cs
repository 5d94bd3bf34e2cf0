using NodaTime;

namespace ClubCycle.Data.Accounts;

/// <summary>A browser in which somebody is signed in. Without its row the browser's cookie opens nothing.</summary>
public sealed class SignInRow
{
    public const int LongestBrowser = 60;

    public Guid Id { get; set; }
    public Guid UserId { get; set; }
    public Instant StartedAt { get; set; }

    /// <summary>The last use, to the minute.</summary>
    public Instant SeenAt { get; set; }

    /// <summary>It came by a one-time link, so its owner may choose a password without the old one.</summary>
    public bool ByLink { get; set; }

    /// <summary>Its owner showed a passkey in it, which is what they have and what they know or are at once.</summary>
    public bool ByPasskey { get; set; }

    /// <summary>In words, so that its owner knows it again.</summary>
    public string Browser { get; set; } = "";
}
