using NodaTime;

namespace ClubCycle.Calendars.FixtureFiles;

/// <summary>A match as the club has stored it.</summary>
/// <param name="Start">Local to the club; null when nobody has said.</param>
/// <param name="SourceKey">From the file it last came from; null when entered by hand or from a CSV file.</param>
public sealed record KnownFixture(Guid Id, LocalDate Date, LocalTime? Start = null, string? Opponent = null, string? SourceKey = null, string? Place = null);
