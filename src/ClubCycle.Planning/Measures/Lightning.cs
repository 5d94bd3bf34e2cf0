using NodaTime;

namespace ClubCycle.Planning.Measures;

/// <summary>When a thunderstorm stops play. Nobody may override it; when in doubt, go inside a substantial building or a closed metal vehicle.</summary>
/// <remarks>Walsh et al. 2013, J Athl Train 48:258–270.</remarks>
public static class Lightning
{
    /// <summary>From flash to thunder.</summary>
    public const double StopSeconds = 30;

    /// <summary>After the last flash or thunder.</summary>
    public static readonly Duration Wait = Duration.FromMinutes(30);

    private const double SoundMetresPerSecond = 343;

    private static readonly Limits Gaps = new("measure.lightning-seconds", "Time from flash to thunder", 0, 120, "s", "When in doubt, stop and go inside.");

    /// <summary>Distance of a flash in km: about a third of the seconds.</summary>
    /// <param name="seconds">From flash to thunder, 0 to 120 s.</param>
    public static Result<Estimate> Distance(double seconds) => Limits.Answer(
        [Gaps.Check(seconds)],
        () => new Estimate(seconds * SoundMetresPerSecond / 1000, "km", "Distance of the lightning", "rough: the next flash may be nearer", "Sound at 343 m/s"));

    /// <summary>Any thunder stops play, and so do 30 seconds or less from flash to thunder.</summary>
    /// <param name="flashToThunder">0 to 120 s, or null when not counted.</param>
    public static Result<bool> MustStop(bool thunderHeard, double? flashToThunder) => Limits.Answer(
        [flashToThunder is { } seconds ? Gaps.Check(seconds) : null],
        () => thunderHeard || flashToThunder <= StopSeconds);

    /// <summary>30 minutes after the last flash or thunder; every new one starts the wait again.</summary>
    /// <param name="flashesAndThunder">At least one, in any order.</param>
    public static Result<Instant> EarliestRestart(IReadOnlyCollection<Instant> flashesAndThunder) => flashesAndThunder.Count == 0
        ? new Problem("measure.lightning-none", "Give the time of at least one flash or thunder. Without any there is nothing to wait for.")
        : flashesAndThunder.Max() + Wait;
}
