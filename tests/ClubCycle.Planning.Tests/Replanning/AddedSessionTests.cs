using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using NodaTime;

namespace ClubCycle.Planning.Tests.Replanning;

/// <summary>Sessions that a coach adds to a week.</summary>
public class AddedSessionTests
{
    private static readonly LocalDate Week = A.Date("2026-06-01");

    [Theory]
    [InlineData("2026-03-09")] // recovery
    [InlineData("2026-06-01")] // aerobic build
    [InlineData("2026-10-12")] // in season
    [InlineData("2026-12-14")] // break
    public void It_stands_where_the_coach_put_it_in_any_phase(string week)
    {
        var added = Added(A.Date(week), day: 4) with { Start = A.Time("17:15"), Note = "At the lake." };
        var session = Only(A.Plan(A.Request(pins: [added])));

        Assert.Equal((added.Date, added.Start, added.Minutes, added.Workout, added.Note, true), (session.Date, session.Start, session.Minutes, session.Workout, session.Note, session.Pinned));
        Assert.Contains("A coach added it to the week.", session.Why);
        Assert.NotEmpty(session.Steps);
    }

    [Fact]
    public void It_is_one_more_and_the_others_stay_where_they_find_room()
    {
        var before = A.Plan(A.Request());
        var plan = A.Plan(A.Request(published: before, pins: [Added(Week, day: 6, minutes: 20)]));

        Assert.Equal(OfWeek(before).Select(s => s.Uid).Append(Only(plan).Uid).Order(), OfWeek(plan).Select(s => s.Uid).Order());
        Assert.Equal(Only(plan).Uid, Assert.Single(plan.Changes.Added).Uid);
    }

    [Fact]
    public void The_weeks_load_counts_it()
    {
        var plan = A.Plan(A.Request(pins: [Added(Week, day: 6)]));

        Assert.Equal(OfWeek(plan).Where(s => !s.InsidePractice).Sum(s => s.PlannedLoadAu), plan.Weeks.Single(w => w.First == Week).PlannedLoadAu);
    }

    [Fact]
    public void It_keeps_its_identity_when_it_moves_to_another_day()
    {
        var first = A.Plan(A.Request(pins: [Added(Week, day: 4)]));
        var again = A.Plan(A.Request(published: first, pins: [Added(Week, day: 6)]));

        Assert.Equal(Only(first).Uid, Only(again).Uid);
        Assert.Equal(Only(again).Uid, Assert.Single(again.Changes.Moved, m => m.Title == "Easy run" && m.To.Date == Week.PlusDays(6)).Uid);
    }

    [Fact]
    public void On_a_closed_day_it_is_dropped_and_a_finding_says_why()
    {
        var plan = A.Plan(A.Request(closed: [new ClosedDays(Week.PlusDays(4), Week.PlusDays(4), "works")], pins: [Added(Week, day: 4)]));

        Assert.DoesNotContain(plan.Sessions, s => s.Slot == "added.1");
        var finding = Assert.Single(plan.Findings, f => f.Rule == "added-dropped");
        Assert.Equal((Strength.Should, Week, Cause.ClosedDays), (finding.Strength, finding.Week!.Value, finding.ForcedBy!.Value));
        Assert.Contains("its day is closed", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void On_the_open_day_beside_closed_ones_it_stands() =>
        Assert.Equal(Week.PlusDays(4), Only(A.Plan(A.Request(closed: [new ClosedDays(Week, Week.PlusDays(3), "works")], pins: [Added(Week, day: 4)]))).Date);

    [Fact]
    public void Outside_the_planning_year_it_is_dropped_and_a_finding_says_why()
    {
        var plan = A.Plan(A.Request(pins: [Added(A.Date("2027-03-08"), day: 2)]));

        Assert.DoesNotContain(plan.Sessions, s => s.Slot == "added.1");
        Assert.Contains("outside the planning year", Assert.Single(plan.Findings, f => f.Rule == "added-dropped").Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_session_that_took_place_stays_when_it_is_taken_out_later()
    {
        var request = A.Request(pins: [Added(Week, day: 4)]);
        var plan = A.Plan(request);

        var again = A.Plan(request with { Published = plan, PlanFrom = Week.PlusDays(8), Pins = [] });

        Assert.Equal(Only(plan), Only(again));
    }

    [Fact]
    public void What_was_added_to_a_day_that_is_over_and_never_told_is_not_added_to_the_past()
    {
        var request = A.Request();
        var again = A.Plan(request with { Published = A.Plan(request), PlanFrom = Week.PlusDays(5), Pins = [Added(Week, day: 4)] });

        Assert.DoesNotContain(again.Sessions, s => s.Slot == "added.1");
    }

    [Fact]
    public void Taken_out_again_the_change_says_so()
    {
        var request = A.Request(pins: [Added(Week, day: 4)]);

        Assert.Equal("A coach took it out again.", Assert.Single(A.Plan(request with { Published = A.Plan(request), Pins = [] }).Changes.Dropped).Why);
    }

    [Fact]
    public void A_third_day_of_jumps_is_kept_from_children()
    {
        var squad = A.Squad(AgeGroup.Youth(12));
        Pin[] jumps = [.. new[] { 0, 2, 4 }.Select((day, i) => Added(Week, day, $"added.{i + 1}", 20, "low-jumps"))];
        var plan = A.Plan(A.Request(squad: squad, pins: jumps));

        Assert.InRange(OfWeek(plan).Count(s => s.Steps.Any(step => step.FootContacts > 0)), 1, 2);
        Assert.Contains(plan.Findings, f => f.Rule == "added-dropped" && f.Message.Contains("jump twice", StringComparison.Ordinal));
        Assert.DoesNotContain(plan.Findings, f => f.Rule == "R32");
    }

    [Fact]
    public void Jumps_a_day_apart_are_kept_from_children()
    {
        var plan = A.Plan(A.Request(squad: A.Squad(AgeGroup.Youth(12)), pins: [Added(Week, 6, "added.1", 20, "low-jumps"), Added(Week.PlusWeeks(1), 0, "added.1", 20, "low-jumps")]));

        Assert.Contains("twice within two days", Assert.Single(plan.Findings, f => f.Rule == "added-dropped").Message, StringComparison.Ordinal);
        Assert.DoesNotContain(plan.Findings, f => f.Rule == "R32");
    }

    [Fact]
    public void The_last_day_of_rest_is_kept_for_young_players()
    {
        var squad = A.Squad(AgeGroup.Youth(16));
        Pin[] everyDay = [.. Enumerable.Range(0, 7).Select(day => Added(Week, day, $"added.{day + 1}", 10))];
        var plan = A.Plan(A.Request(squad: squad, pins: everyDay));

        Assert.Equal(6, OfWeek(plan).Select(s => s.Date).Distinct().Count());
        Assert.Contains(plan.Findings, f => f.Rule == "added-dropped" && f.Message.Contains("day of rest", StringComparison.Ordinal));
        Assert.DoesNotContain(plan.Findings, f => f.Rule == "R01");
    }

    [Fact]
    public void Adults_may_have_every_day_and_the_rule_book_says_what_it_thinks()
    {
        Pin[] everyDay = [.. Enumerable.Range(0, 7).Select(day => Added(Week, day, $"added.{day + 1}", 10))];
        var plan = A.Plan(A.Request(pins: everyDay));

        Assert.Equal(7, plan.Sessions.Count(s => s.Slot.StartsWith("added.", StringComparison.Ordinal)));
        Assert.Contains(plan.Findings, f => f.Rule == "R03" && f.Week == Week && f.ForcedBy == Cause.Coach);
    }

    [Fact]
    public void Games_that_belong_inside_a_practice_need_one_that_day()
    {
        var squad = A.Squad(AgeGroup.Youth(10), practices: [A.Practice(IsoDayOfWeek.Tuesday, "17:00", 75)]);
        var week = A.Plan(A.Request(squad: squad)).Phases.First(p => p.Kind == PhaseKind.PreSeason).First;

        Assert.True(Only(A.Plan(A.Request(squad: squad, pins: [Added(week, 1, minutes: 15, workout: "movement-games")]))).InsidePractice);
        Assert.DoesNotContain(A.Plan(A.Request(squad: squad, pins: [Added(week, 2, minutes: 15, workout: "movement-games")])).Sessions, s => s.Slot == "added.1");
    }

    [Fact]
    public void The_reasons_for_its_length_name_the_coach()
    {
        var request = A.Request(pins: [Added(Week, day: 4)]);
        var plan = A.Plan(request);

        Assert.Equal("40 minutes, as a coach set them.", DoseReasons.Of(request, plan, Only(plan))[0].Text);
    }

    internal static Pin Added(LocalDate week, int day, string slot = "added.1", int minutes = 40, string workout = "easy-run") =>
        new(week, slot, week.PlusDays(day), null, Workout: workout, Minutes: minutes);

    private static PlannedSession Only(SquadPlan plan) => Assert.Single(plan.Sessions, s => s.Slot == "added.1");

    private static IEnumerable<PlannedSession> OfWeek(SquadPlan plan) => plan.Sessions.Where(s => s.Date >= Week && s.Date <= Week.PlusDays(6) && s.Kind != SessionKind.ActiveRecovery);
}
