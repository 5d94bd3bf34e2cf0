namespace ClubCycle.Planning.Workouts;

/// <summary>How hard a step is meant to be, in words that a player can feel.</summary>
internal enum Effort
{
    Unsaid,
    Talk,
    TalkOrBeats,
    TalkOrBeatsOrSpeed,
    Fast,
    FastMasters,
    TopSpeed,
    Smooth,
    Springy,
    Station,
    Technique,
    BodyWeight,
    HeavyNew,
    HeavySome,
    HeavyTrained,
    HeavyYouth,
    Upkeep,
    Explosive,
    Trunk,
    React,
}

internal static class EffortWords
{
    /// <summary>The words of an effort; null when the exercise says it itself.</summary>
    /// <remarks>
    /// Talk test before any number: Foster et al. 2009. The 140 beats are a population shorthand, fair for about 12 to 37 years only
    /// (140 is 77 % of 208 − 0.7 × 37.4, the top of the moderate band of Garber et al. 2011). Two thirds of maximal aerobic speed: Condello et al. 2014.
    /// </remarks>
    public static string? Words(this Effort effort) => effort switch
    {
        Effort.Unsaid => null,
        Effort.Talk => "Easy enough to talk in whole sentences all the way; slow down or walk when you cannot.",
        Effort.TalkOrBeats =>
            "Easy enough to talk in whole sentences all the way; slow down or walk when you cannot. With a monitor and no ceiling of your own: about 140 or less and able to talk.",
        Effort.TalkOrBeatsOrSpeed =>
            "Easy enough to talk in whole sentences all the way; slow down or walk when you cannot. With a monitor and no ceiling of your own: about 140 or less and able to talk (up to 37 years of age; older players go by talking alone). With a tested maximal aerobic speed: at most two thirds of it.",
        Effort.Fast => "Full effort and full rest: stop the session when times drop or form breaks.",
        Effort.FastMasters => "First repetition at three quarters, then as fast as feels free; stop when times drop or form breaks.",
        Effort.TopSpeed => "Top speed, relaxed; full rest, and leave it out today if anything pulls.",
        Effort.Smooth => "At most about four fifths of your top speed, smooth enough to smile.",
        Effort.Springy => "Every jump of the same quality; end the set early when landings get loud.",
        Effort.Station => "Steady rhythm; choose a load or version that leaves about two good repetitions at the end of each set.",
        Effort.Technique => "Light and exact: the set ends when technique changes, with at least three good repetitions left.",
        Effort.BodyWeight => "Steady and exact; take an easier version when technique changes.",
        Effort.HeavyNew => "Leave about three good repetitions in reserve in every set; add load only when a coach likes what they see.",
        Effort.HeavySome => "Leave about two good repetitions in reserve in every set; no attempts at a maximum.",
        Effort.HeavyTrained =>
            "Leave one or two good repetitions in reserve in every set; no attempts at a maximum. Very experienced lifters may take two or three repetitions at the same reserve.",
        Effort.HeavyYouth => "A qualified coach watches every set. Leave about three good repetitions in reserve; no attempts at a maximum.",
        Effort.Upkeep => "Few sets, full quality: leave about two good repetitions in reserve and move the load fast on the way up.",
        Effort.Explosive => "As fast as you can control. Alternate set by set with the next lift, this one first while fresh.",
        Effort.Trunk => "Keep breathing; stop the set when the line breaks.",
        Effort.React => "Wait for the cue, then all out; stand or walk until the rest is over.",
        _ => throw new ArgumentOutOfRangeException(nameof(effort), effort, "No words for this effort."),
    };
}
