using ClubCycle.Planning.Players;

namespace ClubCycle.Web.Features.Guardian;

/// <summary>Where a guardian's confirmation stands, in words for coaches.</summary>
public static class GuardianText
{
    /// <summary>Empty for who never needed one.</summary>
    public static string State(GuardianStanding standing) => standing switch
    {
        { IsNeeded: false, Answer: null } => "",
        { IsNeeded: false } => Say("no longer needed"),
        { Answer: GuardianAnswer.Confirmed, AnsweredOn: { } on } => Say($"confirmed on {Dates.Full(on)}"),
        { Answer: GuardianAnswer.OnPaper, AnsweredOn: { } on } => Say($"agreed on paper on {Dates.Full(on)}"),
        { Answer: GuardianAnswer.Refused, AnsweredOn: { } on } => Say($"refused on {Dates.Full(on)}"),
        { Answer: GuardianAnswer.TakenBack, AnsweredOn: { } on } => Say($"taken back on {Dates.Full(on)}"),
        { AskedOn: { } on } => Say($"asked on {Dates.Full(on)}"),
        _ => Say("not asked yet"),
    };
}
