using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Weeks.Placement;

namespace ClubCycle.Planning.Tests.Weeks.Placement;

/// <summary>Equal weeks are placed once, so a week that differs in anything that placement looks at must have another key.</summary>
public class WeekKeyTests
{
    private static readonly WeekToPlace Week = (AWeek.Wanting("reactive-agility", "strength-circuit") with { Squad = A.Squad(AgeGroup.Youth(18), practices: []) })
        .Published(0, "Mon", "18:00").With("practice Tue 19:30").Around("sprint-intervals -1 18:00").Usually(3);

    [Fact]
    public void The_date_makes_no_difference() => Assert.Equal(WeekKey.Of(Week), WeekKey.Of(Week.Next()));

    [Fact]
    public void Everything_that_placement_looks_at_makes_a_difference()
    {
        WeekToPlace[] others =
        [
            Week,
            Week with { ActiveDaysAtMost = 5 },
            Week with { HoursBetweenHard = 72 },
            Week with { HardAtMost = 3 },
            Week with { SessionsPerContactDay = 1 },
            Week.OpenOn("Mon Tue Wed Thu Fri Sat"),
            Week.OpenOn("Tue Wed Thu Fri Sat Sun"),
            Week with { Squad = A.Squad(practices: []) },
            Week with { Wanted = [Week.Wanted[0]] },
            Week with { Wanted = [Week.Wanted[1], Week.Wanted[0]] },
            Week.Change(0, w => w with { Minutes = 50 }),
            Week.Change(0, w => w with { Pinned = true }),
            Week.Change(0, w => w with { KeepStart = A.Time("18:01") }),
            Week.Change(0, w => w with { KeepStart = null }),
            Week.Change(0, w => w with { KeepDate = null }),
            Week.Change(0, w => w with { KeepDate = w.KeepDate!.Value.PlusDays(1) }),
            Week.Change(0, w => w with { Workout = w.Workout with { InsidePractice = false } }),
            Week.Change(0, w => w with { Workout = w.Workout with { OnlyInsidePractice = true } }),
            Week.Change(0, w => w with { Workout = w.Workout with { Hardness = Planning.Workouts.Hardness.Easy } }),
            Week.Change(0, w => w with { Workout = w.Workout with { Jumps = Planning.Workouts.JumpClass.Low } }),
            Week.Change(0, w => w with { Workout = w.Workout with { Jumps = Planning.Workouts.JumpClass.High } }),
            Week.Change(0, w => w with { Workout = w.Workout with { HeavyLift = true } }),
            Week.Usually(4),
            Week with { BaseDays = null },
            Week with { Contacts = [] },
            Week with { Contacts = [AWeek.Contact("practice Tue 19:31")] },
            Week with { Contacts = [AWeek.Contact("practice Wed 19:30")] },
            Week with { Contacts = [AWeek.Contact("match Tue 19:30")] },
            Week with { Contacts = [Week.Contacts[0] with { Minutes = 60 }] },
            Week with { Around = [] },
            Week with { Around = [Week.Around[0] with { Minute = -361 }] },
            Week with { Around = [Week.Around[0] with { Match = true }] },
            Week with { Around = [Week.Around[0] with { Hard = false }] },
            Week with { Around = [Week.Around[0] with { HeavyLift = true }] },
            Week with { Around = [Week.Around[0] with { Jumps = Planning.Workouts.JumpClass.Medium }] },
            Week with { Around = [Week.Around[0] with { HoursBetweenHard = 72 }] },
            Week with { Around = [Week.Around[0], Week.Around[0]] },
        ];

        Assert.Equal(others.Length, others.Select(WeekKey.Of).Distinct(WeekKey.Comparer).Count());
    }
}
