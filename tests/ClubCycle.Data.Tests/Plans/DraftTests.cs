using System.Data.Common;
using ClubCycle.Data.Plans;
using ClubCycle.Data.Seasons;
using ClubCycle.Planning;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Seasons;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using NodaTime;

namespace ClubCycle.Data.Tests.Plans;

public sealed class DraftTests(ClubData data) : IClassFixture<ClubData>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Without_season_dates_the_draft_says_what_is_missing()
    {
        var club = await data.NewClubAsync();

        Problems.AssertProblem("season.missing", await club.Store<PlanStore>().DraftAsync(await club.SquadAsync(), Cancel));
    }

    [Fact]
    public async Task A_draft_is_what_the_planner_makes_of_the_stored_inputs()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        await club.Store<ClosedDayStore>().AddAsync(null, new ClosedDays(new(2026, 7, 20), new(2026, 8, 2), "Summer"), ClubData.By, Cancel);
        await club.Store<ClosedDayStore>().AddAsync(squad, new ClosedDays(new(2026, 6, 1), new(2026, 6, 1), "Tournament abroad"), ClubData.By, Cancel);

        var draft = await club.DraftAsync(squad);

        Assert.Equal(PlanFile.WritePlan(AnnualPlanner.Plan(draft.Request).OrThrow()), PlanFile.WritePlan(draft.Plan));
        Assert.Equal(new DateInterval(new(2026, 3, 1), new(2027, 2, 28)), draft.Plan.Cycle);
        Assert.Equal(["Tournament abroad", "Summer"], draft.Request.Closed.Select(c => c.Why));
        Assert.Equal("Europe/Lisbon", draft.Request.Zone.Id);
        Assert.DoesNotContain(draft.Plan.Sessions, s => s.Date == new LocalDate(2026, 6, 1));
    }

    [Fact]
    public async Task The_board_shows_each_squad_as_its_own_page_does()
    {
        var club = await data.NewClubAsync();
        var first = await club.PlannedSquadAsync();
        var second = await club.SquadAsync("Women 2");
        await club.PublishAsync(first);

        var board = await club.Store<PlanStore>().DraftsAsync(cancel: Cancel);

        Assert.Equal(["Women 1", "Women 2"], board.Select(b => b.Name));
        foreach (var (id, onBoard) in new[] { first, second }.Zip(board))
        {
            Assert.Equal(PlanFile.WritePlan((await club.DraftAsync(id)).Plan), PlanFile.WritePlan(onBoard.Draft.OrThrow().Plan));
        }
    }

    [Fact]
    public async Task The_board_asks_the_database_as_often_for_many_squads_as_for_one()
    {
        var club = await data.NewClubAsync();
        await club.PublishAsync(await club.PlannedSquadAsync());
        var forOne = await CountAsync(club);
        for (var i = 2; i <= 6; i++)
        {
            await club.PublishAsync(await club.SquadAsync($"Women {i}"));
        }

        Assert.Equal(forOne, await CountAsync(club));
    }

    [Fact]
    public async Task A_squad_with_a_season_of_its_own_does_not_follow_the_clubs()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        (await club.Store<SeasonStore>().AddAsync(squad, null, [new Stint(new(2026, 4, 1), new(2026, 5, 31))], ClubData.By, Cancel)).OrThrow();

        Assert.Equal(new LocalDate(2026, 5, 31), (await club.DraftAsync(squad)).Plan.Cycle.End);
    }

    [Fact]
    public async Task Inside_the_cycle_nothing_new_is_planned_before_today()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        data.Clock.Now = Instant.FromUtc(2026, 6, 9, 23, 30);

        var draft = await club.DraftAsync(squad);

        // In Lisbon the tenth has begun.
        Assert.Equal(new LocalDate(2026, 6, 10), draft.Request.PlanFrom);
        Assert.DoesNotContain(draft.Plan.Sessions, s => s.Kind == SessionKind.Session && s.Date < new LocalDate(2026, 6, 10));
        Assert.Contains(draft.Plan.Sessions, s => s.Kind == SessionKind.Session);
    }

    [Fact]
    public async Task A_preview_shows_the_change_and_stores_nothing()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        var before = PlanFile.WritePlan((await club.DraftAsync(squad)).Plan);

        var preview = (await club.Store<PlanStore>().PreviewAsync(squad, r => r with { Closed = [new ClosedDays(new(2026, 6, 1), new(2026, 6, 14), "Away")] }, Cancel)).OrThrow();

        Assert.DoesNotContain(preview.Plan.Sessions, s => s.Date >= new LocalDate(2026, 6, 1) && s.Date <= new LocalDate(2026, 6, 14));
        Assert.Equal(before, PlanFile.WritePlan((await club.DraftAsync(squad)).Plan));
    }

    [Fact]
    public async Task A_preview_over_all_squads_passes_the_changes_own_problem_on()
    {
        var club = await data.NewClubAsync();
        await club.PlannedSquadAsync();

        var effects = await club.Store<PlanStore>().PreviewAllAsync(null, _ => new Problem("test.refused", "No."), cancel: Cancel);

        Assert.Equal(["test.refused"], Assert.Single(effects).Problems.Select(p => p.Code));
    }

    [Fact]
    public async Task A_preview_over_squads_tells_each_ones_before_and_after_and_stores_nothing()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        await club.SquadAsync("Women 2");
        var closed = new ClosedDays(new(2026, 6, 1), new(2026, 6, 14), "Away");

        var effect = Assert.Single(await club.Store<PlanStore>().PreviewAllAsync([squad], r => r with { Closed = [closed] }, cancel: Cancel));

        Assert.Equal(PlanFile.WritePlan((await club.DraftAsync(squad)).Plan), PlanFile.WritePlan(effect.Before!));
        Assert.DoesNotContain(effect.After!.Sessions, s => s.Date >= closed.First && s.Date <= closed.Last);
        Assert.True(effect.Changes.Any);
        Assert.Equal(effect.After.Findings.Count - effect.Before!.Findings.Count, effect.NewFindings.Count - effect.GoneFindings.Count);
    }

    [Fact]
    public async Task A_preview_that_is_cancelled_stops()
    {
        var club = await data.NewClubAsync();
        await club.PlannedSquadAsync();
        using var cancel = new CancellationTokenSource();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => club.Store<PlanStore>().PreviewAllAsync(
            null,
            request =>
            {
                cancel.Cancel();
                return request;
            },
            cancel: cancel.Token));
    }

    [Fact]
    public async Task A_pin_and_an_unpin_show_in_the_draft()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        var session = (await club.DraftAsync(squad)).Plan.Sessions.First(s => s.Kind == SessionKind.Session && s.Date > new LocalDate(2026, 5, 1) && s.Date.DayOfWeek <= IsoDayOfWeek.Thursday);
        var week = session.Date.PlusDays(1 - (int)session.Date.DayOfWeek);

        (await club.Store<PinStore>().PinAsync(squad, new Pin(week, session.Slot, null, null, Skipped: true), ClubData.By, Cancel)).OrThrow();
        Assert.DoesNotContain((await club.DraftAsync(squad)).Plan.Sessions, s => s.Uid == session.Uid);

        (await club.Store<PinStore>().UnpinAsync(squad, week, session.Slot, ClubData.By, Cancel)).OrThrow();
        Assert.Contains((await club.DraftAsync(squad)).Plan.Sessions, s => s.Uid == session.Uid && s.Date == session.Date);
    }

    [Fact]
    public async Task A_pin_cannot_leave_its_week()
    {
        var club = await data.NewClubAsync();

        Problems.AssertProblem("pin.outside-week", await club.Store<PinStore>().PinAsync(
            await club.SquadAsync(), new Pin(new(2026, 6, 1), "recovery.muscular-endurance.1", new(2026, 6, 8), null), ClubData.By, Cancel));
    }

    private async Task<int> CountAsync(TestClub club)
    {
        var commands = new CommandCount();
        var current = new CurrentClub();
        current.Use(club.Id);
        var options = new DbContextOptionsBuilder<ClubCycleDb>();
        DataSetup.Configure(options, data.ConnectionString);
        options.AddInterceptors(commands);
        var plans = new PlanStore(new ClubDbFactory(new Contexts(options.Options), current), new PublishedPlans(), data.Clock);
        Assert.All(await plans.DraftsAsync(cancel: Cancel), b => Assert.IsType<Result<SquadDraft>.Ok>(b.Draft));
        return commands.Count;
    }

    private sealed class Contexts(DbContextOptions<ClubCycleDb> options) : IDbContextFactory<ClubCycleDb>
    {
        public ClubCycleDb CreateDbContext() => new(options);
    }

    private sealed class CommandCount : DbCommandInterceptor
    {
        public int Count { get; private set; }

        public override ValueTask<InterceptionResult<DbDataReader>> ReaderExecutingAsync(DbCommand command, CommandEventData eventData, InterceptionResult<DbDataReader> result, CancellationToken cancellationToken = default)
        {
            Count++;
            return ValueTask.FromResult(result);
        }
    }

    [Fact]
    public async Task A_swapped_session_keeps_the_day_that_a_coach_fixed_and_comes_back_without_losing_it()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        var run = (await club.DraftAsync(squad)).Plan.Sessions.First(s => s.Workout == "easy-run");
        var week = run.Date.With(DateAdjusters.PreviousOrSame(IsoDayOfWeek.Monday));
        var pins = club.Store<PinStore>();
        (await pins.PinAsync(squad, new Pin(week, run.Slot, run.Date, new LocalTime(7, 0)), ClubData.By, Cancel)).OrThrow();

        (await pins.SwapAsync(squad, week, run.Slot, "strength-circuit", ClubData.By, Cancel)).OrThrow();
        var swapped = (await club.DraftAsync(squad)).Plan.Sessions.Single(s => s.Uid == run.Uid);
        (await pins.SwapAsync(squad, week, run.Slot, null, ClubData.By, Cancel)).OrThrow();
        var back = (await club.DraftAsync(squad)).Plan.Sessions.Single(s => s.Uid == run.Uid);

        Assert.Equal(("strength-circuit", new LocalTime(7, 0)), (swapped.Workout, swapped.Start));
        Assert.Equal(("easy-run", new LocalTime(7, 0)), (back.Workout, back.Start));
    }

    [Fact]
    public async Task A_swap_that_is_taken_back_leaves_nothing_behind_and_one_that_is_not_there_is_told()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        var pins = club.Store<PinStore>();
        LocalDate week = new(2026, 6, 1);

        (await pins.SwapAsync(squad, week, "aerobic-build.aerobic-endurance.1", "strength-circuit", ClubData.By, Cancel)).OrThrow();
        (await pins.SwapAsync(squad, week, "aerobic-build.aerobic-endurance.1", null, ClubData.By, Cancel)).OrThrow();

        Assert.Empty(await pins.ListAsync(squad, Cancel));
        Problems.AssertProblem("pin.not-found", await pins.SwapAsync(squad, week, "aerobic-build.aerobic-endurance.1", null, ClubData.By, Cancel));
        Problems.AssertProblem("pin.workout", await pins.SwapAsync(squad, week, "aerobic-build.aerobic-endurance.1", "skydiving", ClubData.By, Cancel));
        Problems.AssertProblem("squad.not-found", await pins.SwapAsync(NewId.Create(), week, "aerobic-build.aerobic-endurance.1", "strength-circuit", ClubData.By, Cancel));
    }
}
