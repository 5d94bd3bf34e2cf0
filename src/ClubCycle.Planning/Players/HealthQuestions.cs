using ClubCycle.Planning.Squads;
using NodaTime;

namespace ClubCycle.Planning.Players;

/// <summary>
/// The questions that come before a plan: any yes means a doctor or another licensed professional first. What a player answers is not kept, only the day on which
/// every answer was no, or on which a professional cleared the player.
/// </summary>
/// <remarks>Own wording after the common pre-participation questionnaires; the idea from memory.</remarks>
public static class HealthQuestions
{
    /// <summary>After so many months they are asked again (R50).</summary>
    public const int MonthsValid = 12;

    public static IReadOnlyList<string> All { get; } =
    [
        "Has a doctor ever told you about a heart problem or high blood pressure?",
        "Do you get chest pain or unusual breathlessness, at rest, in daily life or in sport?",
        "Have you fainted, blacked out or lost your balance from dizziness in the last 12 months, or ever in sport?",
        "Has a close relative died suddenly, or had a serious heart disease before the age of 50?",
        "Do you have a long-term illness, such as asthma, diabetes, epilepsy or sickle-cell trait?",
        "Do you take prescribed medicine for a long-term illness?",
        "Do you have a bone, joint or muscle problem now that training could make worse?",
        "Have you had a knock to the head with concussion in the last 6 months, or one that never fully settled?",
        "Has anyone told you to train under medical supervision only?",
        "Are you pregnant, or might you be, or have your periods stopped for more than 3 months?",
    ];

    /// <summary>Asked of masters, and of everyone whose coach wants it.</summary>
    public static bool AreAsked(AgeGroup ages, bool flagged) => ages.IsMasters || flagged;

    /// <param name="settled">When they were answered with no throughout, or a professional cleared the player; null for never.</param>
    public static bool AreDue(AgeGroup ages, bool flagged, LocalDate? settled, LocalDate today) =>
        AreAsked(ages, flagged) && (settled is not { } day || day <= LastDayTooOld(today));

    /// <summary>Whoever settled them on this day or before is asked again.</summary>
    private static LocalDate LastDayTooOld(LocalDate today) => today.PlusMonths(-MonthsValid);
}
