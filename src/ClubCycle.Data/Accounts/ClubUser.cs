using Microsoft.AspNetCore.Identity;

namespace ClubCycle.Data.Accounts;

/// <summary>An adult who signs in. Players have no account.</summary>
public sealed class ClubUser : IdentityUser<Guid>
{
    public const int LongestName = 100;

    public Guid ClubId { get; set; }

    public string DisplayName { get; set; } = "";

    public ClubRole Role { get; set; }

    /// <summary>BCP 47 code of the language that they read the screens in; null for what their browser asks for.</summary>
    public string? Language { get; set; }

    /// <summary>They put the guide through the first hour away.</summary>
    public bool GuideClosed { get; set; }

    /// <summary>They have seen the exports of players' data up to then; null for none.</summary>
    public NodaTime.Instant? ExportsSeenAt { get; set; }
}
