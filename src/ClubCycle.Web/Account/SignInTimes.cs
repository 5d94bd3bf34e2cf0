using System.ComponentModel.DataAnnotations;

namespace ClubCycle.Web.Account;

/// <summary>How long somebody stays signed in. Section <c>SignIn</c> of the settings.</summary>
public sealed class SignInTimes
{
    public const string Section = "SignIn";

    /// <summary>More at once end the one that was used longest ago.</summary>
    public const int AtOnce = 10;

    /// <summary>Hours after which the password is asked again, however busy the screen was.</summary>
    [Range(1, 24)]
    public int LongestHours { get; set; } = 12;

    /// <summary>Minutes without any use after which a sign-in ends.</summary>
    [Range(5, 720)]
    public int IdleMinutes { get; set; } = 30;
}
