namespace ClubCycle.Web.Tests;

/// <summary>Valid inputs, so that a test names only what it is about.</summary>
internal static partial class A
{
    /// <summary>A senior squad with a four-month season and a break in it.</summary>
    public static string PlanRequest() => """
        {
          "club": { "timeZone": "Europe/Lisbon", "firstWeekday": "monday" },
          "squad": {
            "name": "Women 1", "ageGroup": "Senior", "trainingAge": "trained",
            "practices": [ { "day": "tuesday", "start": "19:30", "minutes": 90 }, { "day": "thursday", "start": "19:30", "minutes": 90 } ],
            "matchDay": "saturday"
          },
          "season": {
            "previousLastDay": "2026-02-28",
            "stints": [ { "first": "2026-10-01", "last": "2026-11-30" }, { "first": "2027-01-01", "last": "2027-02-28" } ]
          },
          "template": "senior-standard"
        }
        """;
}
