namespace ClubCycle.Planning.Workouts;

/// <summary>How a session's minutes are shared out; the four add up to the session.</summary>
/// <remarks>
/// The warm-up takes 10 to 15 minutes as soon as the session has 30 (Steib et al. 2017: 10–15 min, twice a week or more); shorter sessions scale it down.
/// The shares are editorial.
/// </remarks>
internal sealed record SessionMinutes(int WarmUp, int Main, int Core, int CoolDown)
{
    /// <summary>Shorter sessions have no room for a warm-up and anything else.</summary>
    public const int Shortest = 5;

    /// <param name="minutes">Whole session, at least <see cref="Shortest"/>.</param>
    /// <param name="coreShare">Share of what is left after warm-up and cool-down, 0 to 1.</param>
    public static SessionMinutes Of(int minutes, double coreShare)
    {
        var warmUp = minutes switch { >= 45 => 15, >= 30 => 12, _ => Math.Max(2, minutes / 4) };
        var coolDown = minutes switch { >= 60 => 6, >= 40 => 5, >= 25 => 4, >= 15 => 2, _ => 1 };
        var rest = minutes - warmUp - coolDown;
        var core = rest < 6 ? 0 : (int)Math.Round(rest * coreShare);
        return new(warmUp, rest - core, core, coolDown);
    }
}
