namespace ClubCycle.Calendars.Holidays;

/// <summary>A country whose public holidays are known.</summary>
/// <param name="Name">In plain English.</param>
/// <param name="Regions">States, provinces or cantons with holidays of their own, in order; empty where there are none.</param>
public sealed record HolidayCountry(string Name, IReadOnlyList<string> Regions);
