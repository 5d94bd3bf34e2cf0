namespace ClubCycle.Calendars.FixtureFiles;

/// <summary>What one entry of a calendar says.</summary>
/// <param name="Sequence">Higher in a later version of the same entry.</param>
/// <param name="IsChangeOfOne">It replaces one date of a repeating entry.</param>
/// <param name="Cut">It repeats beyond what is read.</param>
/// <param name="WhyNoPlace">Why its place was left out; null when it was not.</param>
internal sealed record EntryDates(IReadOnlyList<ReadFixture> Fixtures, int Sequence, bool IsChangeOfOne, bool Cut, string? WhyNoPlace);
