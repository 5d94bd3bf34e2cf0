using System.Data.Common;
using ClubCycle.Data.Edits;
using ClubCycle.Data.Fixtures;
using ClubCycle.Data.Plans;
using ClubCycle.Data.Seasons;
using ClubCycle.Data.Squads;
using ClubCycle.Data.Templates;
using ClubCycle.Planning;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Seasons;
using CsCheck;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace ClubCycle.Data.Tests.Edits;

public sealed class EditStoreTests(ClubData data) : IClassFixture<ClubData>
{
    private static readonly LocalDate Week = new(2026, 5, 4);
    private static readonly Guid Other = NamedId.From("test", "another coach");

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public Task Undoing_any_edits_brings_back_the_same_bytes_and_redoing_them_too() =>
        Gen.Int[0, Acts.Count - 1].List[8, 14].SampleAsync(UndoAndRedoAsync, iter: 10, threads: 1);

    [Fact]
    public async Task A_new_edit_ends_what_could_be_redone()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        await SkipAsync(club, squad, "recovery.easy-run.1");
        await UndoAsync(club, squad);
        Assert.NotNull((await club.Store<EditStore>().StateAsync(squad, ClubData.By, Cancel)).Redo);

        await SkipAsync(club, squad, "recovery.easy-run.2");

        var state = await club.Store<EditStore>().StateAsync(squad, ClubData.By, Cancel);
        Assert.Null(state.Redo);
        Assert.Equal("Skip easy run 2, week of 4 May 2026", state.Undo!.Words);
    }

    [Theory]
    [InlineData("recovery.muscular-endurance.1", "muscular endurance 1, week of 4 May 2026")]
    [InlineData("in-season.agility.1", "agility 1, week of 4 May 2026")]
    [InlineData("added.2", "added session 2, week of 4 May 2026")]
    public void A_place_of_the_week_is_named_without_its_phase(string slot, string words) => Assert.Equal(words, EditWords.Slot(slot, new LocalDate(2026, 5, 4)));

    [Fact]
    public async Task Pressing_undo_twice_takes_one_edit_back()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        await SkipAsync(club, squad, "recovery.easy-run.1");
        await SkipAsync(club, squad, "recovery.easy-run.2");
        var last = (await club.Store<EditStore>().StateAsync(squad, ClubData.By, Cancel)).Undo!;

        (await club.Store<EditStore>().UndoAsync(squad, last.Id, ClubData.By, Cancel)).OrThrow();

        Problems.AssertProblem("edit.not-next", await club.Store<EditStore>().UndoAsync(squad, last.Id, ClubData.By, Cancel));
        Assert.Single(await club.Store<PinStore>().ListAsync(squad, Cancel));
    }

    [Fact]
    public async Task What_somebody_else_changed_since_is_not_taken_back()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        await SkipAsync(club, squad, "recovery.easy-run.1");
        (await club.Store<PinStore>().PinAsync(squad, new Pin(Week, "recovery.easy-run.1", Week.PlusDays(2), null), Other, Cancel)).OrThrow();
        var before = await ExportAsync(club, squad);
        var edit = (await club.Store<EditStore>().StateAsync(squad, ClubData.By, Cancel)).Undo!;

        Problems.AssertProblem("edit.changed-meanwhile", await club.Store<EditStore>().UndoAsync(squad, edit.Id, ClubData.By, Cancel));

        Assert.Equal(before, await ExportAsync(club, squad));
    }

    [Fact]
    public async Task Nobody_undoes_the_edit_of_another()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        await SkipAsync(club, squad, "recovery.easy-run.1");

        Assert.Equal(new EditState(null, null), await club.Store<EditStore>().StateAsync(squad, Other, Cancel));
        var edit = (await club.Store<EditStore>().StateAsync(squad, ClubData.By, Cancel)).Undo!;
        Problems.AssertProblem("edit.not-next", await club.Store<EditStore>().UndoAsync(squad, edit.Id, Other, Cancel));
    }

    [Fact]
    public async Task A_club_s_edits_are_apart_from_its_squads()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        await ForgetAsync(club);
        (await club.Store<ClosedDayStore>().AddAsync(null, new ClosedDays(Week, Week, "Flooded"), ClubData.By, Cancel)).OrThrow();

        Assert.Null((await club.Store<EditStore>().StateAsync(squad, ClubData.By, Cancel)).Undo);
        Assert.Equal("Close 4 May 2026", (await club.Store<EditStore>().StateAsync(null, ClubData.By, Cancel)).Undo!.Words);
    }

    [Fact]
    public async Task The_oldest_edits_are_forgotten()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        for (var i = 0; i < EditStore.Most + 5; i++)
        {
            (await club.Store<PinStore>().PinAsync(squad, new Pin(Week, "recovery.easy-run.1", Week.PlusDays(i % 7), null), ClubData.By, Cancel)).OrThrow();
        }

        Assert.Equal(EditStore.Most, await EditsAsync(club, squad));
    }

    [Fact]
    public async Task Whoever_has_a_season_open_learns_that_its_dates_were_undone()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        var id = await club.SeasonAsync(squad);
        (await club.Store<SeasonStore>().SaveAsync(id, null, [new Stint(new(2026, 10, 1), new(2026, 11, 29)), ClubData.Stints[1]], 1, ClubData.By, Cancel)).OrThrow();
        await UndoAsync(club, squad);

        Problems.AssertProblem("season.changed-meanwhile", await club.Store<SeasonStore>().SaveAsync(id, null, ClubData.Stints, 2, ClubData.By, Cancel));
    }

    [Fact]
    public async Task Dates_that_somebody_saves_while_others_are_undone_are_not_lost()
    {
        var club = await data.NewClubAsync();
        var id = await club.SeasonAsync();
        (await club.Store<SeasonStore>().SaveAsync(id, null, [new Stint(new(2026, 10, 1), new(2026, 11, 29)), ClubData.Stints[1]], 1, ClubData.By, Cancel)).OrThrow();
        Stint[] theirs = [new Stint(new(2026, 10, 1), new(2026, 11, 22)), ClubData.Stints[1]];
        await using var node = new ServiceCollection().AddSingleton<IClock>(data.Clock).AddClubCycleData(data.ConnectionString)
            .ConfigureDbContext<ClubCycleDb>(o => o.AddInterceptors(new AfterReading("FROM club.stints", async () => (await club.Store<SeasonStore>().SaveAsync(id, null, theirs, 2, Other, Cancel)).OrThrow())))
            .BuildServiceProvider();
        using var scope = node.CreateScope();
        scope.ServiceProvider.GetRequiredService<CurrentClub>().Use(club.Id);
        var edits = scope.ServiceProvider.GetRequiredService<EditStore>();

        Problems.AssertProblem("edit.changed-meanwhile", await edits.UndoAsync(null, (await edits.StateAsync(null, ClubData.By, Cancel)).Undo!.Id, ClubData.By, Cancel));

        Assert.Equal(theirs, Assert.Single(await club.Store<SeasonStore>().ListAsync(Cancel)).Season.Stints);
    }

    [Fact]
    public async Task An_edit_that_is_refused_is_not_remembered()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        await ForgetAsync(club);

        Problems.AssertProblem("pin.outside-week", await club.Store<PinStore>().PinAsync(squad, new Pin(Week, "recovery.easy-run.1", Week.PlusDays(9), null), ClubData.By, Cancel));

        Assert.Null((await club.Store<EditStore>().StateAsync(squad, ClubData.By, Cancel)).Undo);
    }

    private async Task UndoAndRedoAsync(List<int> history)
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        await club.SeasonAsync(squad);
        await ForgetAsync(club);
        List<string> states = [await ExportAsync(club, squad)];
        foreach (var (number, act) in history.Index())
        {
            await Acts[act](club, squad, number);
            if (await EditsAsync(club, squad) == states.Count)
            {
                states.Add(await ExportAsync(club, squad));
            }
        }

        // In a new scope each time, as after signing in again.
        for (var i = states.Count - 2; i >= 0; i--)
        {
            await UndoAsync(data.TestClub(club.Id), squad);
            Assert.Equal(states[i], await ExportAsync(club, squad));
        }

        Assert.Null((await club.Store<EditStore>().StateAsync(squad, ClubData.By, Cancel)).Undo);
        foreach (var state in states.Skip(1))
        {
            await RedoAsync(data.TestClub(club.Id), squad);
            Assert.Equal(state, await ExportAsync(club, squad));
        }

        Assert.Null((await club.Store<EditStore>().StateAsync(squad, ClubData.By, Cancel)).Redo);
    }

    /// <summary>What coaches do to a squad's inputs. The number makes each time another one.</summary>
    private static readonly IReadOnlyList<Func<TestClub, Guid, int, Task>> Acts =
    [
        (club, squad, n) => SkipAsync(club, squad, $"recovery.easy-run.{n % 2}"),
        async (club, squad, n) => (await club.Store<PinStore>().PinAsync(squad, new Pin(Week, $"recovery.easy-run.{n % 3}", Week.PlusDays(n % 7), new LocalTime(18, n)), ClubData.By, Cancel)).OrThrow(),
        async (club, squad, n) => (await club.Store<PinStore>().SwapAsync(squad, Week, $"recovery.easy-run.{n % 3}", "strength-circuit", ClubData.By, Cancel)).OrThrow(),
        async (club, squad, n) => (await club.Store<PinStore>().AddAsync(squad, Week.PlusDays(n % 7), new LocalTime(17, 0), "easy-run", 30 + n, $"Bring water {n}", ClubData.By, Cancel)).OrThrow(),
        async (club, squad, n) => (await club.Store<PinStore>().EditAsync(squad, new Pin(Week, $"recovery.easy-run.{n % 3}", null, null, false, null, 25 + n, "Gate 2"), ClubData.By, Cancel)).OrThrow(),
        async (club, squad, n) => await club.Store<PinStore>().RemoveAddedAsync(squad, Week, $"added.{n % 3}", ClubData.By, Cancel),
        async (club, squad, n) => (await club.Store<PhaseLengthStore>().SetAsync(squad, 0, [new PhaseLength(0, "long", 1, 5 + n % 3), new PhaseLength(0, "long", 2, 4)], ClubData.By, Cancel)).OrThrow(),
        async (club, squad, _) => (await club.Store<PhaseLengthStore>().SetAsync(squad, 0, [], ClubData.By, Cancel)).OrThrow(),
        async (club, squad, n) => await club.Store<PinStore>().UnpinAsync(squad, Week, $"recovery.easy-run.{n % 3}", ClubData.By, Cancel),
        async (club, squad, n) => (await club.Store<FixtureStore>().AddAsync(squad, new LocalDate(2026, 8, 1).PlusDays(n), null, $"Marrowby {n}", null, ClubData.By, Cancel)).OrThrow(),
        async (club, squad, n) =>
        {
            var match = await MatchAsync(club, squad, n);
            (await club.Store<FixtureStore>().SaveAsync(squad, match.Id, match.Fixture.Date.PlusDays(1), new LocalTime(11, 0), "Quillford", null, match.Version, ClubData.By, Cancel)).OrThrow();
        },
        async (club, squad, n) =>
        {
            var match = await MatchAsync(club, squad, n);
            (await club.Store<FixtureStore>().RemoveAsync(squad, match.Id, match.Version, ClubData.By, Cancel)).OrThrow();
        },
        async (club, squad, n) => (await club.Store<FixtureStore>().TakeFileAsync(squad, [new FixtureFromFile(null, new LocalDate(2026, 9, 1).PlusDays(n), null, null, null, $"row {n}")], [], ClubData.By, Cancel)).OrThrow(),
        async (club, squad, n) => (await club.Store<ClosedDayStore>().AddAsync(squad, new ClosedDays(Week.PlusDays(n), Week.PlusDays(n + 1), "Flooded"), ClubData.By, Cancel)).OrThrow(),
        async (club, squad, _) =>
        {
            if ((await club.Store<ClosedDayStore>().ListAsync(Cancel)).FirstOrDefault(c => c.SquadId == squad) is { } closed)
            {
                (await club.Store<ClosedDayStore>().RemoveAsync(squad, closed.Id, ClubData.By, Cancel)).OrThrow();
            }
        },
        async (club, squad, n) =>
        {
            var season = (await club.Store<SeasonStore>().ListAsync(Cancel)).Single(s => s.SquadId == squad);
            IReadOnlyList<Stint> stints = n % 2 == 0
                ? [new Stint(new LocalDate(2026, 10, 1).PlusDays(n), new(2027, 2, 28))]
                : [new Stint(new(2026, 10, 1), new LocalDate(2026, 11, 20).PlusDays(n)), new Stint(new LocalDate(2026, 12, 20).PlusDays(n), new(2027, 2, 28))];
            (await club.Store<SeasonStore>().SaveAsync(season.Id, null, stints, season.Version, ClubData.By, Cancel)).OrThrow();
        },
        async (club, squad, n) =>
        {
            var stored = (await club.Store<SquadStore>().FindAsync(squad, Cancel)).OrThrow();
            (await club.Store<SquadStore>().SaveAsync(stored.Squad with { Name = $"Women {n}", Practices = [stored.Squad.Practices[0] with { Start = new LocalTime(19, n) }] }, stored.Version, ClubData.By, Cancel)).OrThrow();
        },
        async (club, squad, n) =>
        {
            var stored = (await club.Store<SquadStore>().FindAsync(squad, Cancel)).OrThrow();
            var copy = (await club.Store<TemplateStore>().CloneAsync(stored.TemplateId, null, $"Ours {n} {NewId.Create():N}", ClubData.By, Cancel)).OrThrow();
            (await club.Store<TemplateStore>().UseForSquadAsync(squad, copy, 1, stored.Version, ClubData.By, Cancel)).OrThrow();
        },
    ];

    private static async Task<StoredFixture> MatchAsync(TestClub club, Guid squad, int n)
    {
        var matches = (await club.Store<FixtureStore>().ListAsync(squad, Cancel)).OrThrow();
        return matches[n % matches.Count];
    }

    private static async Task SkipAsync(TestClub club, Guid squad, string slot) =>
        (await club.Store<PinStore>().PinAsync(squad, new Pin(Week, slot, null, null, true), ClubData.By, Cancel)).OrThrow();

    private static async Task UndoAsync(TestClub club, Guid squad) =>
        (await club.Store<EditStore>().UndoAsync(squad, (await club.Store<EditStore>().StateAsync(squad, ClubData.By, Cancel)).Undo!.Id, ClubData.By, Cancel)).OrThrow();

    private static async Task RedoAsync(TestClub club, Guid squad) =>
        (await club.Store<EditStore>().RedoAsync(squad, (await club.Store<EditStore>().StateAsync(squad, ClubData.By, Cancel)).Redo!.Id, ClubData.By, Cancel)).OrThrow();

    /// <summary>All that the squad's year is planned from, and the id of each match, as the plan file says it.</summary>
    private static async Task<string> ExportAsync(TestClub club, Guid squad)
    {
        var request = (await club.DraftAsync(squad)).Request;
        return PlanFile.WriteRequest(request) + string.Join(' ', (await club.Store<FixtureStore>().EnteredAsync(squad, Cancel)).Select(m => $"{m.Match.Id} {m.SourceKey}"));
    }

    private static async Task<int> EditsAsync(TestClub club, Guid squad)
    {
        await using var db = await club.OpenAsync();
        return await db.Edits.CountAsync(e => e.SquadId == squad, Cancel);
    }

    private static async Task ForgetAsync(TestClub club)
    {
        await using var db = await club.OpenAsync();
        await db.Edits.ExecuteDeleteAsync(Cancel);
    }

    /// <summary>Does something once, right after a context has read from a table.</summary>
    private sealed class AfterReading(string from, Func<Task> act) : DbCommandInterceptor
    {
        private bool _done;

        public override async ValueTask<DbDataReader> ReaderExecutedAsync(DbCommand command, CommandExecutedEventData eventData, DbDataReader result, CancellationToken cancellationToken = default)
        {
            if (!_done && command.CommandText.Contains(from, StringComparison.Ordinal))
            {
                _done = true;
                await act();
            }

            return result;
        }
    }
}
