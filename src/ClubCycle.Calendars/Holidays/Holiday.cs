using NodaTime;

namespace ClubCycle.Calendars.Holidays;

/// <param name="Name">As people of the country call it; English where the country has several languages.</param>
public sealed record Holiday(LocalDate Date, string Name);
