using NodaTime;

namespace ClubCycle.Planning.Players;

public enum GuardianAnswer
{
    Confirmed,

    /// <summary>A coach states that a guardian agreed on paper.</summary>
    OnPaper,
    Refused,
    TakenBack,
}

/// <summary>Where a guardian's confirmation stands for one player.</summary>
/// <param name="IsNeeded">The player is below the club's age.</param>
/// <param name="AnsweredOn">At the club; null with <paramref name="Answer"/>.</param>
/// <param name="AskedOn">When the guardian's link that works now was made; null when there is none.</param>
public sealed record GuardianStanding(bool IsNeeded, GuardianAnswer? Answer = null, LocalDate? AnsweredOn = null, LocalDate? AskedOn = null)
{
    public static GuardianStanding NotNeeded { get; } = new(false);

    public bool IsAgreed => Answer is GuardianAnswer.Confirmed or GuardianAnswer.OnPaper;

    /// <summary>No new link and no result until a guardian agrees.</summary>
    public bool IsMissing => IsNeeded && !IsAgreed;

    /// <summary>A guardian said no, which no coach may overrule.</summary>
    public bool IsRefused => IsNeeded && Answer is GuardianAnswer.Refused or GuardianAnswer.TakenBack;
}
