using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using NodaTime;

namespace ClubCycle.Planning.Tests;

/// <summary>Squads of every kind: seasons × age groups × training ages × practice patterns.</summary>
internal static class PlanGrid
{
    public static IEnumerable<(string Name, PlanRequest Request)> All()
    {
        (string Name, Season Season)[] seasons =
        [
            ("A", A.SeasonA), ("B", A.SeasonB), ("C", A.SeasonC), ("D", A.SeasonD), ("E", A.SeasonE),
            ("mid-week", A.Season(null, "2026-09-02/2026-12-09")),
            ("leap", A.Season("2027-05-30", "2028-02-29/2028-05-27")),
            ("one day", A.Season("2026-08-30", "2027-06-12/2027-06-12")),
            ("winter break", A.Season("2026-05-31", "2026-09-12/2026-12-13", "2027-02-06/2027-05-30")),
            ("over new year", A.Season("2026-03-15", "2026-11-07/2027-03-14")),
            ("three stints", A.Season("2027-10-31", "2028-04-01/2028-05-14", "2028-06-10/2028-07-09", "2028-09-02/2028-10-29")),
            ("longest", A.Season("2026-05-31", "2027-05-22/2027-07-18")),
            ("southern winter", A.Season("2026-08-29", "2027-03-20/2027-08-28")),
        ];
        Practice[][] patterns =
        [
            [],
            [A.Practice(IsoDayOfWeek.Wednesday, "18:00", 60)],
            [A.Practice(IsoDayOfWeek.Tuesday), A.Practice(IsoDayOfWeek.Thursday)],
            [A.Practice(IsoDayOfWeek.Monday, "18:00", 75), A.Practice(IsoDayOfWeek.Wednesday, "18:00", 75), A.Practice(IsoDayOfWeek.Friday, "18:00", 75)],
        ];
        foreach (var (name, season) in seasons)
        {
            foreach (var ages in AgeGroup.All)
            {
                foreach (var training in Enum.GetValues<TrainingAge>())
                {
                    foreach (var practices in patterns)
                    {
                        var day = practices.Length == 3 ? IsoDayOfWeek.Sunday : IsoDayOfWeek.Saturday;
                        yield return ($"{name} {ages} {training} {practices.Length} practices", A.Request(season, A.Squad(ages, training, practices, day)));
                    }
                }
            }
        }
    }
}
