using ClubCycle.Planning.Squads;

namespace ClubCycle.Planning.Tests.Workouts;

/// <summary>Sheets as a squad meets them, week after week of whole plans.</summary>
public sealed class WeekByWeekTests
{
    public static TheoryData<string, TrainingAge> Squads => [.. AgeGroup.All.SelectMany(a => Enum.GetValues<TrainingAge>().Select(t => (a.Name, t)))];

    [Theory]
    [MemberData(nameof(Squads))]
    public void No_sheet_comes_again_in_the_week_after(string ages, TrainingAge trainingAge)
    {
        var plan = A.Plan(A.Request(squad: A.Squad(AgeGroup.Find(ages)!.Value, trainingAge)));
        var sheets = plan.Weeks.Select(w => plan.Sessions.Where(s => s.Kind == SessionKind.Session && w.First <= s.Date && s.Date <= w.Last).Select(s => (s.Workout, Steps: string.Join('|', s.Steps))).ToList()).ToList();

        var again = sheets.Zip(sheets.Skip(1)).SelectMany(pair => pair.Second.Where(s => pair.First.Contains(s))).Select(s => s.Workout).ToList();

        Assert.Empty(again);
    }
}
