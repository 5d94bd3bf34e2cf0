using System.Globalization;
using ClubCycle.Planning.Loads;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using NodaTime;
using NodaTime.Calendars;
using NodaTime.Text;

namespace ClubCycle.Planning.Weeks;

/// <summary>What is fixed in a week before sessions are placed: its name, its practices, its matches.</summary>
internal static class WeekCalendar
{
    /// <summary>ISO 8601 name of the week; of the ISO week that holds its fourth day when weeks do not start on Monday.</summary>
    public static string Name(LocalDate first)
    {
        var middle = first.PlusDays(3);
        var rule = WeekYearRules.Iso;
        return string.Create(CultureInfo.InvariantCulture, $"{rule.GetWeekYear(middle):0000}-W{rule.GetWeekOfWeekYear(middle):00}");
    }

    /// <summary>Matches of the cycle in date order.</summary>
    public static IReadOnlyList<Contact> Matches(PlanRequest request)
    {
        var fixtures = request.Fixtures ?? MatchDays(request);
        return
        [
            .. fixtures.Where(f => request.Season.Cycle.Contains(f.Date))
                .OrderBy(f => f.Date).ThenBy(f => f.Start ?? Usual(request.Squad)).ThenBy(f => f.Opponent, StringComparer.Ordinal)
                .GroupBy(f => f.Date)
                .SelectMany(day => day.Select((f, i) => MatchOf(request.Squad, f, i))),
        ];
    }

    /// <summary>Practices of a week: those of its phase, not on closed days, not on a match day (the match takes the practice's place).</summary>
    public static IEnumerable<Contact> Practices(PlanRequest request, CycleWeek week, IReadOnlyList<Contact> matches)
    {
        foreach (var practice in request.Squad.Practices)
        {
            var date = week.First.PlusDays(((int)practice.Day - (int)week.First.DayOfWeek + 7) % 7);
            if (practice.Phases.Contains(week.Phase) && request.Season.Cycle.Contains(date)
                && !request.Closed.Any(c => c.Contains(date)) && !matches.Any(m => m.Date == date))
            {
                var day = practice.Day.ToString().ToLowerInvariant();
                yield return new Contact(
                    NamedId.From("practice", request.Squad.Key.ToString("N"), LocalDatePattern.Iso.Format(week.First), day),
                    "practice." + day, date, practice.Start, practice.Minutes, false, "Hockey practice", Tidy(practice.Place));
            }
        }
    }

    private static IEnumerable<Fixture> MatchDays(PlanRequest request)
    {
        foreach (var stint in request.Season.Stints)
        {
            for (var date = stint.First; date <= stint.Last; date = date.PlusDays(1))
            {
                if (date.DayOfWeek == request.Squad.MatchDay && !request.Closed.Any(c => c.Contains(date)))
                {
                    yield return new Fixture(date);
                }
            }
        }
    }

    private static Contact MatchOf(Squad squad, Fixture fixture, int indexOfDay)
    {
        var date = LocalDatePattern.Iso.Format(fixture.Date);
        var identity = fixture.Key?.ToString("N") ?? (indexOfDay == 0 ? date : string.Create(CultureInfo.InvariantCulture, $"{date}#{indexOfDay + 1}"));
        return new Contact(
            NamedId.From("match", squad.Key.ToString("N"), identity),
            "match." + identity, fixture.Date, fixture.Start ?? Usual(squad), LoadTable.MatchMinutes(squad.AgeGroup), true,
            string.IsNullOrWhiteSpace(fixture.Opponent) ? "Match" : $"Match: {fixture.Opponent.Trim()}", Tidy(fixture.Place));
    }

    private static string? Tidy(string? place) => string.IsNullOrWhiteSpace(place) ? null : place.Trim();

    private static LocalTime Usual(Squad squad) => squad.MatchStart ?? Squad.UsualMatchStart;
}
