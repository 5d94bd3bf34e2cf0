using ClubCycle.Planning.Languages;
using ClubCycle.Planning.Players;
using ClubCycle.Planning.Squads;
using NodaTime;

namespace ClubCycle.Data.Feeds;

/// <summary>A link with all that decides what its calendar gets.</summary>
/// <param name="Live">False once revoked.</param>
/// <param name="Asked">The coach wants the health questions answered.</param>
/// <param name="Settled">When they were; null for never.</param>
/// <param name="Full">Null while nothing is published or rendered.</param>
/// <param name="Waiting">For a player who owes the health questions; null as <paramref name="Full"/>.</param>
/// <param name="Rendering">Something is published, and one of the two is still to come, as after other options were chosen.</param>
/// <param name="Language">Of the link.</param>
public sealed record PolledLink(
    Guid ClubId, Guid LinkId, Guid SquadId, bool Live, LocalDate? LastPollDay, AgeGroup Ages, bool Asked, LocalDate? Settled, FeedTag? Full, FeedTag? Waiting, bool Rendering,
    Language Language)
{
    public FeedTag? On(LocalDate today) => HealthQuestions.AreDue(Ages, Asked, Settled, today) ? Waiting : Full;
}

/// <summary>Tells whether a reader has the newest text, without the text.</summary>
/// <param name="Etag">As in <see cref="FeedBody.Etag"/>.</param>
public sealed record FeedTag(string Variant, string Etag, Instant LastModified);
