using System.Diagnostics;
using ClubCycle.Data.Plans;
using ClubCycle.Planning;
using ClubCycle.Planning.Replanning;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Tests.Plans;

/// <summary>What a coach changes by hand in single sessions.</summary>
public sealed class PinStoreTests(ClubData data) : IClassFixture<ClubData>
{
    private const string Slot = "aerobic-build.aerobic-endurance.1";
    private static readonly LocalDate Week = new(2026, 6, 1);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Whoever_saw_another_decision_is_told_and_the_decision_stays()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        var pins = club.Store<PinStore>();
        var first = (await pins.WhoSaw(null).PinAsync(squad, new Pin(Week, Slot, Week.PlusDays(1), null), ClubData.By, Cancel)).OrThrow();

        Problems.AssertProblem("session.changed-meanwhile", await pins.WhoSaw(null).EditAsync(squad, new Pin(Week, Slot, Week, null, Note: "Gate 2"), ClubData.By, Cancel));

        Assert.Equal([first], await pins.ListAsync(squad, Cancel));
        (await pins.WhoSaw(first).EditAsync(squad, first with { Note = "Gate 2" }, ClubData.By, Cancel)).OrThrow();
    }

    [Fact]
    public async Task Decisions_about_one_session_at_the_same_moment_all_stay()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        (await club.Store<PinStore>().PinAsync(squad, new Pin(Week, Slot, Week.PlusDays(1), null), ClubData.By, Cancel)).OrThrow();

        await Task.WhenAll(
            Task.Run(() => data.TestClub(club.Id).Store<PinStore>().UnpinAsync(squad, Week, Slot, ClubData.By, Cancel), Cancel),
            Task.Run(() => data.TestClub(club.Id).Store<PinStore>().SwapAsync(squad, Week, Slot, "strength-circuit", ClubData.By, Cancel), Cancel));

        Assert.Equal([new Pin(Week, Slot, null, null, Workout: "strength-circuit")], await club.Store<PinStore>().ListAsync(squad, Cancel));
    }

    [Fact]
    public async Task An_added_session_stands_in_the_draft_under_the_next_number()
    {
        var (club, squad) = await NewAsync();

        (await AddAsync(club, squad, Week.PlusDays(4), " Meet at\r\nthe gate ")).OrThrow();
        (await AddAsync(club, squad, Week.PlusDays(6))).OrThrow();

        var added = (await club.DraftAsync(squad)).Plan.Sessions.Where(s => s.Slot.StartsWith(Pin.AddedSlot, StringComparison.Ordinal)).ToList();
        Assert.Equal(["added.1", "added.2"], added.Select(s => s.Slot));
        Assert.Equal((Week.PlusDays(4), "Meet at\nthe gate"), (added[0].Date, added[0].Note));
    }

    [Fact]
    public async Task The_number_of_a_session_that_players_were_told_of_is_not_used_again()
    {
        var (club, squad) = await NewAsync();
        (await AddAsync(club, squad, Week.PlusDays(4))).OrThrow();
        await club.PublishAsync(squad);

        (await club.Store<PinStore>().RemoveAddedAsync(squad, Week, "added.1", ClubData.By, Cancel)).OrThrow();

        Assert.Equal("added.2", (await AddAsync(club, squad, Week.PlusDays(4))).OrThrow().Slot);
    }

    [Fact]
    public async Task Removing_takes_it_out_of_the_draft_and_a_second_time_it_is_not_there()
    {
        var (club, squad) = await NewAsync();
        (await AddAsync(club, squad, Week.PlusDays(4))).OrThrow();

        (await club.Store<PinStore>().RemoveAddedAsync(squad, Week, "added.1", ClubData.By, Cancel)).OrThrow();

        Assert.DoesNotContain((await club.DraftAsync(squad)).Plan.Sessions, s => s.Slot == "added.1");
        Problems.AssertProblem("session.not-found", await club.Store<PinStore>().RemoveAddedAsync(squad, Week, "added.1", ClubData.By, Cancel));
    }

    [Fact]
    public async Task What_a_template_asks_for_is_not_removed_this_way()
    {
        var (club, squad) = await NewAsync();
        (await club.Store<PinStore>().EditAsync(squad, new Pin(Week, Slot, null, null, Minutes: 30), ClubData.By, Cancel)).OrThrow();

        Problems.AssertProblem("session.not-found", await club.Store<PinStore>().RemoveAddedAsync(squad, Week, Slot, ClubData.By, Cancel));
    }

    [Fact]
    public async Task A_week_takes_seven_added_sessions()
    {
        var (club, squad) = await NewAsync();
        for (var day = 0; day < 7; day++)
        {
            (await AddAsync(club, squad, Week.PlusDays(day))).OrThrow();
        }

        Problems.AssertProblem("pin.too-many", await AddAsync(club, squad, Week));
        Assert.IsType<Result<Pin>.Ok>(await AddAsync(club, squad, Week.PlusDays(7)));
    }

    [Fact]
    public async Task A_day_that_is_over_takes_none()
    {
        var (club, squad) = await NewAsync();

        Problems.AssertProblem("pin.over", await AddAsync(club, squad, new LocalDate(2026, 2, 28)));
        Assert.IsType<Result<Pin>.Ok>(await AddAsync(club, squad, new LocalDate(2026, 3, 1)));
    }

    [Fact]
    public async Task An_edit_sets_day_start_minutes_note_and_workout_in_one_act()
    {
        var (club, squad) = await NewAsync();

        (await club.Store<PinStore>().EditAsync(squad, new Pin(Week, Slot, Week.PlusDays(6), new LocalTime(9, 30), false, "strength-circuit", 50, "Indoors"), ClubData.By, Cancel)).OrThrow();

        var session = (await club.DraftAsync(squad)).Plan.Sessions.Single(s => s.Slot == Slot && s.Date >= Week && s.Date < Week.PlusDays(7));
        Assert.Equal((Week.PlusDays(6), new LocalTime(9, 30), "strength-circuit", 50, "Indoors"), (session.Date, session.Start, session.Workout, session.Minutes, session.Note));
        await using var db = await club.OpenAsync();
        Assert.Single(await db.Audit.Where(a => a.SquadId == squad && a.What.StartsWith("session.")).ToListAsync(Cancel));
    }

    [Fact]
    public async Task An_edit_that_leaves_all_to_the_planner_leaves_nothing_behind()
    {
        var (club, squad) = await NewAsync();
        (await club.Store<PinStore>().EditAsync(squad, new Pin(Week, Slot, null, null, Minutes: 30), ClubData.By, Cancel)).OrThrow();

        (await club.Store<PinStore>().EditAsync(squad, new Pin(Week, Slot, null, null, Note: "  "), ClubData.By, Cancel)).OrThrow();

        Assert.Empty(await club.Store<PinStore>().ListAsync(squad, Cancel));
    }

    [Fact]
    public async Task Unpinning_frees_day_and_time_and_keeps_a_swap_minutes_and_a_note()
    {
        var (club, squad) = await NewAsync();
        (await club.Store<PinStore>().EditAsync(squad, new Pin(Week, Slot, Week, new LocalTime(7, 0), false, "strength-circuit", 50, "Indoors"), ClubData.By, Cancel)).OrThrow();

        (await club.Store<PinStore>().UnpinAsync(squad, Week, Slot, ClubData.By, Cancel)).OrThrow();

        Assert.Equal([new Pin(Week, Slot, null, null, false, "strength-circuit", 50, "Indoors")], await club.Store<PinStore>().ListAsync(squad, Cancel));
    }

    [Fact]
    public async Task Unpinning_removes_a_decision_of_which_nothing_is_left()
    {
        var (club, squad) = await NewAsync();
        (await club.Store<PinStore>().PinAsync(squad, new Pin(Week, Slot, Week, null), ClubData.By, Cancel)).OrThrow();

        (await club.Store<PinStore>().UnpinAsync(squad, Week, Slot, ClubData.By, Cancel)).OrThrow();

        Assert.Empty(await club.Store<PinStore>().ListAsync(squad, Cancel));
        Problems.AssertProblem("pin.not-found", await club.Store<PinStore>().UnpinAsync(squad, Week, Slot, ClubData.By, Cancel));
    }

    [Fact]
    public async Task An_added_session_is_moved_but_neither_unpinned_nor_skipped()
    {
        var (club, squad) = await NewAsync();
        (await AddAsync(club, squad, Week.PlusDays(4))).OrThrow();
        var pins = club.Store<PinStore>();

        Problems.AssertProblem("pin.added", await pins.UnpinAsync(squad, Week, "added.1", ClubData.By, Cancel));
        Problems.AssertProblem("pin.added", await pins.PinAsync(squad, new Pin(Week, "added.1", null, null, Skipped: true), ClubData.By, Cancel));
        Problems.AssertProblem("session.not-found", await pins.PinAsync(squad, new Pin(Week, "added.7", Week, null), ClubData.By, Cancel));
        (await pins.PinAsync(squad, new Pin(Week, "added.1", Week.PlusDays(5), null), ClubData.By, Cancel)).OrThrow();
        Assert.Equal(Week.PlusDays(5), (await club.DraftAsync(squad)).Plan.Sessions.Single(s => s.Slot == "added.1").Date);
    }

    [Theory]
    [InlineData("a\0b")]
    [InlineData("a\tb")]
    public async Task A_note_that_cannot_be_kept_is_a_problem_and_no_error(string note)
    {
        var (club, squad) = await NewAsync();

        Problems.AssertProblem("pin.note", await AddAsync(club, squad, Week, note));
        Problems.AssertProblem("pin.note", await club.Store<PinStore>().EditAsync(squad, new Pin(Week, Slot, null, null, Note: note), ClubData.By, Cancel));
        Assert.Empty(await club.Store<PinStore>().ListAsync(squad, Cancel));
    }

    [Fact]
    public async Task A_note_of_200_characters_is_kept_and_of_201_refused()
    {
        var (club, squad) = await NewAsync();

        Assert.IsType<Result<Pin>.Ok>(await AddAsync(club, squad, Week, new string('x', 200)));
        Problems.AssertProblem("pin.note", await AddAsync(club, squad, Week, new string('x', 201)));
    }

    [Theory]
    [InlineData("handstand", 40, "pin.workout")]
    [InlineData("easy-run", 9, "pin.minutes")]
    [InlineData("easy-run", 121, "pin.minutes")]
    public async Task What_the_planner_would_refuse_is_never_stored(string workout, int minutes, string code)
    {
        var (club, squad) = await NewAsync();

        Problems.AssertProblem(code, await club.Store<PinStore>().AddAsync(squad, Week, null, workout, minutes, null, ClubData.By, Cancel));
        Assert.IsType<Result<SquadDraft>.Ok>(await club.Store<PlanStore>().DraftAsync(squad, Cancel));
    }

    [Fact]
    public async Task Two_coaches_who_add_at_once_get_two_sessions_or_one_is_told()
    {
        var (club, squad) = await NewAsync();

        var both = await Task.WhenAll(AddAsync(club, squad, Week), AddAsync(data.TestClub(club.Id), squad, Week.PlusDays(1)));

        Assert.All(both.OfType<Result<Pin>.Failed>(), failed => Assert.Equal("session.changed-meanwhile", failed.First.Code));
        Assert.Equal(both.Count(r => r is Result<Pin>.Ok), (await club.Store<PinStore>().ListAsync(squad, Cancel)).Count);
    }

    [Fact]
    public async Task Another_clubs_squad_is_not_there()
    {
        var (_, squad) = await NewAsync();

        Problems.AssertProblem("squad.not-found", await AddAsync(await data.NewClubAsync(), squad, Week));
    }

    /// <summary>The screen shows an act's effect within 100 ms; the room above is for busy machines.</summary>
    [Fact]
    public async Task An_act_and_the_new_draft_are_there_at_once()
    {
        var (club, squad) = await NewAsync();
        await club.PublishAsync(squad);
        List<double> took = [];
        for (var i = 0; i < 25; i++)
        {
            var from = Stopwatch.GetTimestamp();
            (await club.Store<PinStore>().EditAsync(squad, new Pin(Week, Slot, Week.PlusDays(i % 5), new LocalTime(18, i), false, null, 30 + i, $"Note {i}"), ClubData.By, Cancel)).OrThrow();
            await club.DraftAsync(squad);
            took.Add(Stopwatch.GetElapsedTime(from).TotalMilliseconds);
        }

        var median = took.Order().ElementAt(took.Count / 2);
        TestContext.Current.TestOutputHelper!.WriteLine($"An edit and the new draft: median {median:0.0} ms of {took.Count}");
        Assert.InRange(median, 0, 400);
    }

    private async Task<(TestClub Club, Guid Squad)> NewAsync()
    {
        var club = await data.NewClubAsync();
        return (club, await club.PlannedSquadAsync());
    }

    private static Task<Result<Pin>> AddAsync(TestClub club, Guid squad, LocalDate date, string? note = null) =>
        club.Store<PinStore>().AddAsync(squad, date, null, "easy-run", 40, note, ClubData.By, Cancel);
}
