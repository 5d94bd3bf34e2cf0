using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Weeks;
using NodaTime;

namespace ClubCycle.Planning.Tests.Replanning;

/// <summary>Minutes and notes that a coach gives one session.</summary>
public class GivenMinutesTests
{
    private static readonly LocalDate Week = A.Date("2026-06-01");
    private const string Slot = "aerobic-build.aerobic-endurance.1";

    [Theory]
    [InlineData(10)]
    [InlineData(25)]
    [InlineData(120)]
    public void A_session_lasts_what_the_coach_says_in_every_week(int minutes)
    {
        var plan = A.Plan(A.Request());
        Pin[] pins = [.. plan.Weeks.Where(w => w.Phase == Planning.Phases.PhaseKind.AerobicBuild).Select(w => new Pin(w.First, Slot, null, null, Minutes: minutes))];

        var runs = A.Plan(A.Request(pins: pins)).Sessions.Where(s => s.Slot == Slot).ToList();

        Assert.Equal(pins.Length, runs.Count);
        Assert.All(runs, r => Assert.Equal(minutes, r.Minutes));
    }

    [Fact]
    public void A_longer_one_takes_from_the_others_where_the_week_may_not_rise_further()
    {
        var others = OthersMinutes(A.Plan(A.Request()));

        Assert.True(OthersMinutes(A.Plan(A.Request(pins: [new Pin(Week, Slot, null, null, Minutes: 80)]))) < others);
        Assert.True(OthersMinutes(A.Plan(A.Request(pins: [new Pin(Week, Slot, null, null, Minutes: 10)]))) > others);

        static int OthersMinutes(SquadPlan plan) => plan.Sessions.Where(s => s.Date >= Week && s.Date < Week.PlusWeeks(1) && s.Slot != Slot).Sum(s => s.Minutes);
    }

    [Fact]
    public void The_weeks_load_counts_them()
    {
        var plan = A.Plan(A.Request(pins: [new Pin(Week, Slot, null, null, Minutes: 110)]));

        Assert.Equal(plan.Sessions.Where(s => s.Date >= Week && s.Date < Week.PlusWeeks(1)).Sum(s => s.PlannedLoadAu), plan.Weeks.Single(w => w.First == Week).PlannedLoadAu);
    }

    [Fact]
    public void The_day_stays_with_the_planner()
    {
        var run = A.Plan(A.Request(pins: [new Pin(Week, Slot, null, null, Minutes: 30)])).Sessions.Single(s => s.Slot == Slot && s.Date >= Week && s.Date < Week.PlusWeeks(1));

        Assert.False(run.Pinned);
    }

    [Fact]
    public void In_the_running_week_they_count_too()
    {
        var request = A.Request();
        var plan = A.Plan(request);
        var run = plan.Sessions.Last(s => s.Slot.StartsWith("aerobic-build.aerobic-endurance", StringComparison.Ordinal) && s.Date >= Week && s.Date < Week.PlusWeeks(1));

        var again = A.Plan(request with { Published = plan, PlanFrom = run.Date, Pins = [new Pin(Week, run.Slot, null, null, Minutes: 55)] });

        Assert.Equal(55, again.Sessions.Single(s => s.Uid == run.Uid).Minutes);
    }

    [Fact]
    public void A_taper_leaves_a_session_with_given_minutes_in()
    {
        var plan = A.Plan(A.Request());
        var taper = plan.Weeks.First(w => w.Loading == WeekLoading.Taper);
        var slots = A.Request().Template.Mixes.Single(m => m.Phase == taper.Phase).Slots.Select(s => $"{FileName.Of(taper.Phase)}.{s.Name}");

        var given = A.Plan(A.Request(pins: [.. slots.Select(s => new Pin(taper.First, s, null, null, Minutes: 60))])).Sessions.Where(s => s.Kind == SessionKind.Session && s.Date >= taper.First && s.Date < taper.First.PlusWeeks(1));

        Assert.All(given, s => Assert.Equal(60, s.Minutes));
    }

    [Fact]
    public void A_note_comes_out_on_the_session_and_is_a_change_of_its_own()
    {
        var request = A.Request();
        var before = A.Plan(request);
        var plan = A.Plan(request with { Published = before, Pins = [new Pin(Week, Slot, null, null, Note: "Meet at the gate.")] });

        Assert.Equal("Meet at the gate.", plan.Sessions.Single(s => s.Note is not null).Note);
        Assert.Equal("The coach's note is new.", Assert.Single(plan.Changes.Moved).Why);
        Assert.Equal("The coach's note is gone.", Assert.Single(A.Plan(request with { Published = plan }).Changes.Moved).Why);
    }

    [Fact]
    public void The_reasons_name_the_coach_only_where_the_coach_spoke()
    {
        var request = A.Request(pins: [new Pin(Week, Slot, null, null, Minutes: 35)]);
        var plan = A.Plan(request);
        var runs = plan.Sessions.Where(s => s.Slot == Slot).ToList();

        Assert.Single(runs, r => DoseReasons.Of(request, plan, r)[0].Text.EndsWith("as a coach set them.", StringComparison.Ordinal));
    }
}
