namespace ClubCycle.Planning.Measures;

/// <summary>Whether a player may try a load that can be lifted once, and whether the planner may suggest it.</summary>
public sealed record MaximumAttempt(bool Allowed, bool MaySuggest);

/// <summary>What protects minors in the weight room. A qualified adult watches, technique comes first; local rules and doctors go before these numbers.</summary>
public static class YouthLifting
{
    private static readonly Limits Ages = new("measure.lifting-age", "Age for lifting", 6, 90, "years", "Younger children play: plan games.");

    private static readonly Limits MinorAges =
        new("measure.lifting-minor-age", "Age for a youth ceiling", 6, 17, "years", "From 18 on the plan's own percentages hold.");

    /// <summary>Heaviest planned load in percent of the maximum at 6 to 17 completed years; 0 means body weight only.</summary>
    /// <remarks>Australian Strength and Conditioning Association 2007 and 2017; loads from memory.</remarks>
    public static Result<Estimate> CeilingPercent(int age) => Limits.Answer(
        [MinorAges.Check(age)],
        () => new Estimate(Ceiling(age), "%", "Youth load ceiling", "a ceiling, not a target", "Australian Strength and Conditioning Association 2007 and 2017 (from memory)"));

    /// <summary>No attempt under 18 without supervision, none under 9, and no suggestion under 15.</summary>
    /// <param name="age">Completed years, 6 to 90.</param>
    /// <param name="supervised">A qualified adult watches this very attempt.</param>
    /// <remarks>Faigenbaum et al. 2009, J Strength Cond Res 23(5 Suppl), from memory; the ages 9 and 15 are editorial.</remarks>
    public static Result<MaximumAttempt> AttemptAtMaximum(int age, bool supervised) => Limits.Answer(
        [Ages.Check(age)],
        () => new MaximumAttempt(Allowed: age >= 18 || (supervised && age >= 9), MaySuggest: age >= 18 || (age >= 15 && supervised)));

    internal static int Ceiling(int age) => age switch
    {
        < 9 => 0,
        < 12 => 60,
        < 15 => 70,
        < 18 => 80,
        _ => 100,
    };
}
