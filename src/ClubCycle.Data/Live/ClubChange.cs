namespace ClubCycle.Data.Live;

/// <summary>Something of a club was saved; what it is must be fetched under the rights of whoever wants to know.</summary>
/// <param name="SquadId">Null when it is not one squad's, or not known.</param>
/// <param name="Origin">The scope that saved it, as in <see cref="CurrentClub.Origin"/>; null when not known.</param>
public sealed record ClubChange(Guid ClubId, Guid? SquadId, Guid? Origin)
{
    internal const string Channel = "club_changes";

    /// <summary>Feeds that are ready: of no concern to screens.</summary>
    internal const string FeedChannel = "feed_changes";

    /// <summary>Reads what the database tells: three words, a dash for nothing.</summary>
    internal static ClubChange Read(string told) =>
        told.Split(' ') is [var club, var squad, var origin]
            ? new ClubChange(Guid.Parse(club), IdOf(squad), IdOf(origin))
            : throw new FormatException($"The database told '{told}'; a club, a squad and an origin were expected.");

    private static Guid? IdOf(string word) => word == "-" ? null : Guid.Parse(word);
}
