using ClubCycle.Data.Plans;
using ClubCycle.Planning;
using ClubCycle.Planning.Players;
using ClubCycle.Planning.Squads;
using NodaTime;

namespace ClubCycle.Web.Features.Player;

/// <summary>What a player sees: today, the rest of this week, the next match.</summary>
/// <param name="ShowsEffort">Numbers of effort are for squads without players under 13; younger ones get words only (editorial).</param>
/// <param name="SeenAt">Local to the club; null while nothing is published.</param>
/// <param name="Today">Null while nothing is published.</param>
public sealed record PlayerView(
    string FirstName,
    string Squad,
    string Club,
    bool ShowsEffort,
    LocalDateTime? SeenAt,
    PlayerDay? Today,
    IReadOnlyList<PlayerDay> Week,
    PlannedSession? NextMatch,
    PlayerHealth Health)
{
    /// <summary>Old enough now: a guardian no longer decides, which the page says for some months.</summary>
    public bool DecidesAlone { get; init; }

    private const int YoungestWithNumbers = 13;

    public static PlayerView Nothing(string player, Squad squad) => new(FirstNameOf(player), squad.Name, "", false, null, null, [], null, new PlayerHealth(HealthAnswer.Settled, false));

    /// <param name="now">Local to the club.</param>
    /// <param name="health">Where the health questions stand: until they are settled no steps are shown.</param>
    public static PlayerView Of(string player, Squad squad, PublishedPlan published, LocalDateTime now, PlayerNumbers numbers, HealthAnswer health)
    {
        PersonalValues values = new(numbers, squad.AgeGroup, now.Date);
        var byDay = published.Sessions.ToLookup(session => session.Date);
        var weekStart = now.Date.With(DateAdjusters.PreviousOrSame(published.FirstWeekday));
        return new PlayerView(
            FirstNameOf(player),
            squad.Name,
            published.ClubName,
            squad.AgeGroup.YoungestAge >= YoungestWithNumbers,
            now,
            DayOf(now.Date),
            [.. Enumerable.Range(0, 7).Select(weekStart.PlusDays).Where(day => day != now.Date).Select(DayOf)],
            published.Plan.Sessions.FirstOrDefault(s => s.Kind == SessionKind.Match && s.StartsAt >= now),
            new PlayerHealth(health, squad.AgeGroup.IsYouth));

        PlayerDay DayOf(LocalDate date) => new(date, [.. byDay[date].Select(s => new OwnSession(s, PersonalSheet.Of(s, numbers, values)))], date < now.Date);
    }

    /// <summary>The page lies on phones that others see: the first name only.</summary>
    private static string FirstNameOf(string player) => player.Split(' ', StringSplitOptions.RemoveEmptyEntries).FirstOrDefault() ?? "";
}

/// <param name="Sessions">In order of time.</param>
/// <param name="IsOver">Lies before today.</param>
public sealed record PlayerDay(LocalDate Date, IReadOnlyList<OwnSession> Sessions, bool IsOver);

/// <summary>A session with its steps as this player does them.</summary>
public sealed record OwnSession(PlannedSession Session, IReadOnlyList<PersonalStep> Steps);

/// <param name="WithGuardian">A parent or guardian answers too.</param>
public sealed record PlayerHealth(HealthAnswer Answer, bool WithGuardian)
{
    /// <summary>The plan has not started for this player.</summary>
    public bool Waits => Answer != HealthAnswer.Settled;
}

/// <summary>Where the health questions stand.</summary>
public enum HealthAnswer
{
    /// <summary>Not asked of this player, or answered.</summary>
    Settled,
    Due,

    /// <summary>Sent with a question left open.</summary>
    Incomplete,

    /// <summary>At least one yes: a professional first.</summary>
    ProfessionalFirst,
}
