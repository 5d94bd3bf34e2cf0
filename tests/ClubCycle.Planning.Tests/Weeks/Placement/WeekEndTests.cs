using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Weeks.Placement;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Tests.Weeks.Placement;

/// <summary>What one week has to know of the weeks beside it.</summary>
public class WeekEndTests
{
    // Friday 20:30 to Monday 20:00, the latest start, is 71.5 hours; after two matches within 48 hours 72 are needed.
    [Theory]
    [InlineData("20:30", false)]
    [InlineData("20:29", true)]
    public void Two_matches_in_the_middle_of_a_week_hold_hard_work_back_into_the_next(string wednesday, bool monday)
    {
        var plan = A.Plan(A.Request(fixtures: [new Fixture(A.Date("2026-08-26"), A.Time(wednesday)), new Fixture(A.Date("2026-08-28"), A.Time("20:30"))]));

        Assert.Equal(monday, plan.Sessions.Any(s => s.Hardness == Hardness.Hard && s.Date == A.Date("2026-08-31")));
    }

    [Fact]
    public void A_session_that_a_coach_fixed_next_week_moves_the_one_before_it()
    {
        var request = A.Request(fixtures: []);
        var plan = A.Plan(request);
        var monday = plan.Sessions.First(s => s.Slot == "pre-season.speed.1" && s.StartsAt.DayOfWeek == NodaTime.IsoDayOfWeek.Monday
            && plan.Sessions.Any(o => o.Hardness == Hardness.Hard && o.StartsAt == s.Date.PlusDays(-2).At(A.Time("10:00"))));
        var early = monday.Date.At(A.Time("07:00"));

        var pinned = A.Plan(request with { Pins = [new Pin(monday.Date, monday.Slot, monday.Date, early.TimeOfDay)] });

        Assert.Contains(pinned.Sessions, s => s.Slot == monday.Slot && s.StartsAt == early);
        Assert.DoesNotContain(pinned.Sessions, s => s.Hardness == Hardness.Hard && s.StartsAt > early.PlusHours(-48) && s.StartsAt < early);
    }

    [Fact]
    public void A_day_that_leaves_next_weeks_published_session_in_peace_is_preferred()
    {
        var week = AWeek.Wanting("jumps").OpenOn("Sat Sun") with { BaseDays = new Dictionary<string, int> { ["jumps.1"] = 6 } };
        var next = AWeek.Wanting("lift-and-jump").Published(0, "Mon", "18:00");

        Assert.Equal(["jumps.1 Sun 10:00"], week.Placed());
        Assert.Equal(
            [A.Date("2026-08-08"), A.Date("2026-08-10")],
            CyclePlacement.Place([week, next with { First = next.First.PlusWeeks(1), Wanted = [next.Wanted[0] with { KeepDate = A.Date("2026-08-10") }] }]).Weeks.SelectMany(w => w.Placed).Select(p => p.Date));
    }
}
