using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Templates;
using ClubCycle.Planning.Weeks;
using NodaTime;

namespace ClubCycle.Planning.Tests.Replanning;

public class ReplanningTests
{
    [Fact]
    public void A_moved_match_keeps_its_identity_and_is_shown_as_moved()
    {
        var (one, two) = (NamedId.From("fixture", "one"), NamedId.From("fixture", "two"));
        var request = A.Request(fixtures: [new(A.Date("2026-10-03"), Key: one), new(A.Date("2026-10-10"), Key: two)]);
        var plan = A.Plan(request);

        var changes = A.Plan(request with { Fixtures = [new(A.Date("2026-10-04"), Key: one), new(A.Date("2026-10-10"), Key: two)], Published = plan }).Changes;

        var moved = Assert.Single(changes.Moved, m => m.Title == "Match");
        Assert.Equal((A.Date("2026-10-03").At(A.Time("14:00")), A.Date("2026-10-04").At(A.Time("14:00"))), (moved.From, moved.To));
        Assert.Equal("The match moved.", moved.Why);
    }

    [Fact]
    public void A_match_put_off_after_its_day_is_planned_once_on_its_new_day()
    {
        var key = NamedId.From("fixture", "rain");
        var request = A.Request(fixtures: [new(A.Date("2026-10-03"), Key: key)]);
        var plan = A.Plan(request);

        var again = A.Plan(request with { Fixtures = [new(A.Date("2026-10-14"), Key: key)], Published = plan, PlanFrom = A.Date("2026-10-05") });

        Assert.Equal(A.Date("2026-10-14"), Assert.Single(again.Sessions, s => s.Kind == SessionKind.Match).Date);
        Assert.Single(again.Changes.Moved, m => m.To.Date == A.Date("2026-10-14"));
    }

    [Fact]
    public void A_session_that_a_new_match_pushes_off_its_day_moves_within_its_week_or_goes_with_a_reason()
    {
        var request = A.Request(fixtures: []);
        var plan = A.Plan(request);
        var pushed = plan.Sessions.First(s => s is { Kind: SessionKind.Session, InsidePractice: false } && s.Date >= A.Date("2026-09-01"));

        var changes = A.Plan(request with { Fixtures = [new(pushed.Date)], Published = plan }).Changes;

        Assert.True(
            changes.Moved.Any(m => m.Uid == pushed.Uid && m.Why.Length > 0 && m.To.Date != pushed.Date) || changes.Dropped.Any(d => d.Uid == pushed.Uid && d.Why.Length > 0));
    }

    [Fact]
    public void A_fixed_day_holds_in_an_easier_week_too()
    {
        var request = A.Request();
        var plan = A.Plan(request);
        var easier = plan.Weeks.First(w => w is { Phase: Planning.Phases.PhaseKind.PreSeason, Loading: Planning.Weeks.WeekLoading.Unloading or Planning.Weeks.WeekLoading.Taper });
        var slots = request.Template.Mixes.Single(m => m.Phase == easier.Phase).Slots.Select(s => "pre-season." + s.Name);

        Assert.All(slots, slot =>
        {
            var pinned = A.Plan(request with { Pins = [new Pin(easier.First, slot, easier.First.PlusDays(2), A.Time("18:00"))] });
            Assert.Contains(pinned.Sessions, s => s.Slot == slot && s.Date == easier.First.PlusDays(2) && s.Pinned && s.Minutes >= 15);
        });
    }

    [Fact]
    public void A_session_left_out_by_a_coach_is_shown_as_dropped_with_that_reason()
    {
        var request = A.Request();
        var plan = A.Plan(request);
        var run = plan.Sessions.First(s => s.Kind == SessionKind.Session);

        var changes = A.Plan(request with { Published = plan, Pins = [new Pin(A.Date("2026-03-02"), run.Slot, null, null, true)] }).Changes;

        Assert.Equal(("A coach left it out.", run.Uid), (changes.Dropped[0].Why, changes.Dropped[0].Uid));
    }

    [Fact]
    public void A_squad_that_joins_in_mid_year_has_no_past_and_starts_gently()
    {
        var joined = A.Plan(A.Request(planFrom: A.Date("2026-05-11")));
        var usual = BuiltInTemplates.For(AgeGroup.Senior).Mixes.Single(m => m.Phase == Planning.Phases.PhaseKind.Recovery).Slots.Sum(s => s.Minutes);

        Assert.All(joined.Sessions, s => Assert.True(s.Date >= A.Date("2026-05-11")));
        Assert.InRange(MinutesOf(joined, A.Date("2026-05-11")), 1, 0.5 * usual);
        Assert.InRange(MinutesOf(joined, A.Date("2026-05-18")), 0.5 * usual, 0.7 * usual);
    }

    [Theory]
    [InlineData("2026-05-11")]
    [InlineData("2026-08-03")]
    [InlineData("2026-10-14")]
    [InlineData("2027-01-20")]
    public void What_a_squad_did_before_it_joined_is_not_asked_after_it_has_published(string joins)
    {
        var request = A.Request(planFrom: A.Date(joins));
        var first = A.Plan(request);

        var again = A.Plan(request with { Published = first });

        Assert.False(again.Changes.Any);
        Assert.Empty(again.Findings.Select(f => (f.Rule, f.Strength, f.Week, f.Message)).Except(first.Findings.Select(f => (f.Rule, f.Strength, f.Week, f.Message))));
    }

    private static int MinutesOf(SquadPlan plan, LocalDate week) =>
        plan.Sessions.Where(s => s.Kind == SessionKind.Session && week <= s.Date && s.Date <= week.PlusDays(6)).Sum(s => s.Minutes);

    [Fact]
    public void What_an_easy_week_leaves_out_stays_out_when_planned_again()
    {
        var (request, plan, left) = SeasonWithAnEasyWeek();

        var again = A.Plan(request with { Published = plan, PlanFrom = A.Date("2026-03-09") });

        Assert.Contains(left, again.LeftOut);
        Assert.False(again.Changes.Any);
    }

    [Fact]
    public void What_an_easy_week_left_out_comes_back_when_the_week_is_no_longer_easy()
    {
        var (request, plan, left) = SeasonWithAnEasyWeek();
        var loading = request.Template.Loading;

        var again = A.Plan(request with { Published = plan, Template = request.Template with { Loading = loading with { UnloadEvery = loading.UnloadEvery - 1 } } });

        Assert.NotEqual(plan.Weeks.Single(w => w.First == left.Week).Loading, again.Weeks.Single(w => w.First == left.Week).Loading);
        Assert.Contains(again.Changes.Added, a => a.Uid == UidOf(left));
    }

    [Fact]
    public void A_coach_can_fix_a_session_that_an_easy_week_left_out()
    {
        var (request, plan, left) = SeasonWithAnEasyWeek();

        var again = A.Plan(request with { Published = plan, Pins = [new Pin(left.Week, left.Slot, left.Week.PlusDays(6), A.Time("10:00"))] });

        Assert.DoesNotContain(left, again.LeftOut);
        Assert.True(again.Sessions.Single(s => s.Uid == UidOf(left)).Pinned);
    }

    [Fact]
    public void A_swapped_session_keeps_its_identity_and_its_day_and_says_what_it_replaces()
    {
        var (request, plan, run) = SeasonWithAnEasyRun();

        var again = A.Plan(request with { Published = plan, Pins = [new Pin(A.Date("2026-06-01"), run.Slot, null, null, Workout: "strength-circuit")] });

        var swapped = again.Sessions.Single(s => s.Uid == run.Uid);
        Assert.Equal(("strength-circuit", run.StartsAt), (swapped.Workout, swapped.StartsAt));
        Assert.Contains("A coach chose it instead of 'Easy run'.", swapped.Why);
        Assert.Contains(swapped.Steps, s => s is { Sets: > 1, Reps: >= 12 });
        Assert.Equal("It is now 'Strength circuit' instead of 'Easy run'.", Assert.Single(again.Changes.Moved, m => m.Uid == run.Uid).Why);
    }

    [Fact]
    public void A_session_swapped_for_a_hard_one_finds_a_day_that_the_rules_allow()
    {
        var (request, plan, run) = SeasonWithAnEasyRun();

        var again = A.Plan(request with { Published = plan, Pins = [new Pin(A.Date("2026-06-01"), run.Slot, null, null, Workout: "sprint-intervals")] });

        Assert.Contains(again.Sessions, s => s.Uid == run.Uid && s.Workout == "sprint-intervals");
        Assert.DoesNotContain(again.Findings, f => f.Rule is "R36" or "R37");
    }

    [Theory]
    [InlineData("heavy-lift")]
    [InlineData("skydiving")]
    [InlineData("")]
    public void A_session_cannot_be_swapped_for_a_workout_that_is_not_for_the_age_group(string workout)
    {
        var request = A.Request(squad: A.Squad(AgeGroup.Youth(12)), pins: [new Pin(A.Date("2026-06-01"), "aerobic-build.games.1", null, null, Workout: workout)]);

        var problem = Assert.Single(Assert.IsType<Result<SquadPlan>.Failed>(AnnualPlanner.Plan(request)).Problems);

        Assert.Equal(("pin.workout", "pins[0].workout"), (problem.Code, problem.At));
        Assert.Contains("body-weight", problem.Message, StringComparison.Ordinal);
    }

    private static (PlanRequest Request, SquadPlan Plan, PlannedSession Run) SeasonWithAnEasyRun()
    {
        var request = A.Request();
        var plan = A.Plan(request);
        return (request, plan, plan.Sessions.First(s => s.Workout == "easy-run" && s.Date >= A.Date("2026-06-01")));
    }

    private static (PlanRequest Request, SquadPlan Plan, LeftOutSlot Left) SeasonWithAnEasyWeek()
    {
        var request = A.Request();
        var plan = A.Plan(request);
        return (request, plan, plan.LeftOut.First(l => plan.Weeks.Single(w => w.First == l.Week).Loading == WeekLoading.Unloading));
    }

    private static Guid UidOf(LeftOutSlot left) => PlannedSession.UidOf(A.SquadKey, left.Week, left.Slot);
}
