using ClubCycle.Data;
using ClubCycle.Data.Clubs;
using ClubCycle.Data.Fixtures;
using ClubCycle.Data.Plans;
using ClubCycle.Planning;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Seasons;
using ClubCycle.Web.Features.Both;
using ClubCycle.Web.Features.Plans;
using ClubCycle.Web.Features.Seasons;
using ClubCycle.Web.Features.Settings;
using ClubCycle.Web.Features.Squads;
using ClubCycle.Web.Features.Templates;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace ClubCycle.Web.Tests.Features.Both;

/// <summary>Two coaches have the same thing open, each in a scope of their own. The first wins, the second gets theirs, and saves over it on purpose.</summary>
public sealed class BothAtOnceTests(TestApp app) : IClassFixture<TestApp>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public Task A_template() => TwoAsync(async (club, first, second) =>
    {
        var (a, b) = (first.GetRequiredService<TemplateActions>(), second.GetRequiredService<TemplateActions>());
        var id = (await a.CloneAsync((await a.ListAsync(Cancel)).OrThrow().First(t => t.Name == "senior-standard").Id, null, "House plan", Cancel)).OrThrow();
        var opened = (await a.FindAsync(id, null, Cancel)).OrThrow();
        var typed = (await b.FindAsync(id, null, Cancel)).OrThrow();
        var (theirs, mine) = (opened.Template with { Title = "Theirs" }, typed.Template with { Title = "Mine", Loading = typed.Template.Loading with { FirstWeekVolume = 0.55 } });
        (await a.SaveAsync(opened, theirs, "", Cancel)).OrThrow();

        var both = await LostAsync(
            await b.SaveAsync(typed, mine, "", Cancel), async () => (await b.FindAsync(id, null, Cancel)).OrThrow(), () => second.GetRequiredService<LastSaveActions>().OfTemplateAsync(id, Cancel));
        Assert.Equal("Theirs", both.Theirs.Template.Title);

        (await b.SaveAsync(both.Theirs, mine, "", Cancel)).OrThrow();
        var now = (await a.FindAsync(id, null, Cancel)).OrThrow();
        Assert.Equal((3, "Mine", 0.55), (now.Version, now.Template.Title, now.Template.Loading.FirstWeekVolume));
        Assert.Equal("Theirs", (await a.FindAsync(id, 2, Cancel)).OrThrow().Template.Title);
    });

    [Fact]
    public Task Season_dates_of_which_only_a_stint_changed() => TwoAsync(async (club, first, second) =>
    {
        var (a, b) = (first.GetRequiredService<SeasonActions>(), second.GetRequiredService<SeasonActions>());
        var (opened, typed) = ((await a.ListAsync(Cancel)).OrThrow()[0], (await b.ListAsync(Cancel)).OrThrow()[0]);
        IReadOnlyList<Stint> theirs = [new(new(2026, 10, 8), new(2026, 11, 30)), opened.Season.Stints[1]];
        IReadOnlyList<Stint> mine = [new(new(2026, 10, 15), new(2026, 12, 1)), opened.Season.Stints[1]];
        (await a.SaveAsync(opened, opened.Season.PreviousLastDay, theirs, Cancel)).OrThrow();

        var both = await LostAsync(
            await b.SaveAsync(typed, typed.Season.PreviousLastDay, mine, Cancel), async () => (await b.ListAsync(Cancel)).OrThrow().Single(s => s.Id == typed.Id), () => second.GetRequiredService<LastSaveActions>().OfSeasonAsync(typed.Id, Cancel));
        Assert.Equal(theirs, both.Theirs.Season.Stints);
        Assert.Equal(
            [new Difference("Stint 1", "Thu 15 Oct 2026 to Tue 1 Dec 2026", "Thu 8 Oct 2026 to Mon 30 Nov 2026")],
            BothWords.Season(typed.Season.PreviousLastDay, [.. mine.Select(s => ((LocalDate?)s.First, (LocalDate?)s.Last))], both.Theirs.Season));

        (await b.SaveAsync(both.Theirs, typed.Season.PreviousLastDay, mine, Cancel)).OrThrow();
        Assert.Equal(mine, (await a.ListAsync(Cancel)).OrThrow()[0].Season.Stints);
    });

    [Fact]
    public Task A_match() => TwoAsync(async (club, first, second) =>
    {
        var (a, b) = (first.GetRequiredService<PlanActions>(), second.GetRequiredService<PlanActions>());
        var id = (await a.AddMatchAsync(club.OwnSquad, new(2026, 10, 10), null, "Northgate", null, Cancel)).OrThrow();
        var (opened, typed) = (await MatchAsync(a), await MatchAsync(b));
        (await a.SaveMatchAsync(opened, new(2026, 10, 11), null, "Northgate", null, Cancel)).OrThrow();

        var both = await LostAsync(await b.SaveMatchAsync(typed, new(2026, 10, 9), new LocalTime(18, 0), "Northgate 2", null, Cancel), () => MatchAsync(b), () => second.GetRequiredService<LastSaveActions>().OfMatchAsync(club.OwnSquad, id, Cancel));
        Assert.Equal(
            [new("Day", "Fri 9 Oct 2026", "Sun 11 Oct 2026"), new("Start", "18:00", "nothing"), new("Opponent", "Northgate 2", "Northgate")],
            BothWords.Match(new Fixture(new(2026, 10, 9), new LocalTime(18, 0), "Northgate 2"), both.Theirs.Fixture));

        (await b.SaveMatchAsync(both.Theirs, new(2026, 10, 9), new LocalTime(18, 0), "Northgate 2", null, Cancel)).OrThrow();
        Assert.Equal((new LocalDate(2026, 10, 9), "Northgate 2"), ((await MatchAsync(a)).Fixture.Date, (await MatchAsync(a)).Fixture.Opponent));

        async Task<StoredFixture> MatchAsync(PlanActions plans) => (await plans.FixturesAsync(club.OwnSquad, Cancel)).OrThrow().Single(f => f.Id == id);
    });

    [Fact]
    public Task A_squads_settings() => TwoAsync(async (club, first, second) =>
    {
        var (a, b) = (first.GetRequiredService<SquadActions>(), second.GetRequiredService<SquadActions>());
        var (opened, typed) = ((await a.FindAsync(club.OwnSquad, Cancel)).OrThrow(), (await b.FindAsync(club.OwnSquad, Cancel)).OrThrow());
        var mine = typed.Squad with { Name = "Indigo", MatchStart = new LocalTime(15, 0) };
        (await a.SaveAsync(opened.Squad with { Name = "Azure" }, opened.Version, Cancel)).OrThrow();

        var both = await LostAsync(await b.SaveAsync(mine, typed.Version, Cancel), async () => (await b.FindAsync(club.OwnSquad, Cancel)).OrThrow(), () => second.GetRequiredService<LastSaveActions>().OfSquadAsync(club.OwnSquad, Cancel));
        Assert.Equal([new("Name", "Indigo", "Azure"), new("Usual start", "15:00", "14:00")], BothWords.Squad(mine, both.Theirs.Squad));

        (await b.SaveAsync(mine, both.Theirs.Version, Cancel)).OrThrow();
        var now = (await a.FindAsync(club.OwnSquad, Cancel)).OrThrow().Squad;
        Assert.Equal(("Indigo", new LocalTime(15, 0)), (now.Name, now.MatchStart));
    });

    [Fact]
    public Task The_club() => TwoAsync(async (club, first, second) =>
    {
        var (a, b) = (first.GetRequiredService<ClubActions>(), second.GetRequiredService<ClubActions>());
        var seen = (await b.FindAsync(Cancel)).OrThrow();
        (await a.SaveAsync("Sandhaven East", seen.TimeZone, seen.FirstWeekday, seen.Version, Cancel)).OrThrow();

        var both = await LostAsync(
            await b.SaveAsync("Sandhaven West", "Europe/Madrid", seen.FirstWeekday, seen.Version, Cancel), async () => (await b.FindAsync(Cancel)).OrThrow(), () => second.GetRequiredService<LastSaveActions>().OfClubAsync(Cancel));
        Assert.Equal([new("Name", "Sandhaven West", "Sandhaven East"), new("Time zone", "Europe/Madrid", "Europe/Lisbon")], BothWords.Club("Sandhaven West", "Europe/Madrid", seen.FirstWeekday, both.Theirs));

        (await b.SaveAsync("Sandhaven West", "Europe/Madrid", seen.FirstWeekday, both.Theirs.Version, Cancel)).OrThrow();
        Assert.Equal("Sandhaven West", (await a.FindAsync(Cancel)).OrThrow().Name);
    });

    [Fact]
    public Task A_published_plan() => TwoAsync(async (club, first, second) =>
    {
        await club.PublishAsync();
        var (a, b) = (first.GetRequiredService<PlanActions>(), second.GetRequiredService<PlanActions>());
        var seen = (await b.DraftAsync(club.OwnSquad, Cancel)).OrThrow();
        var session = seen.Plan.Sessions.First(s => s.Kind == SessionKind.Session && s.Date > new LocalDate(2026, 4, 1));
        var week = session.Date.With(DateAdjusters.PreviousOrSame(IsoDayOfWeek.Monday));
        (await a.SkipAsync(club.OwnSquad, week, session.Slot, null, Cancel)).OrThrow();
        await AcceptAllAsync(club);
        (await a.PublishAsync(club.OwnSquad, seen.Revision, NewId.Create(), "Pitch closed", Cancel)).OrThrow();

        var refused = Assert.IsType<Result<Revision>.Failed>(await b.PublishAsync(club.OwnSquad, seen.Revision, NewId.Create(), "Mine", Cancel));
        Assert.Equal("plan.changed-meanwhile", refused.First.Code);
        var revisions = second.GetRequiredService<RevisionActions>();
        var latest = (await revisions.ListAsync(club.OwnSquad, Cancel))[0];
        Assert.Equal(("Pitch closed", "Coach HeadCoach"), (latest.Note, latest.Publisher));
        Assert.Contains((await revisions.CompareAsync(club.OwnSquad, seen.Revision, latest.Number, Cancel)).OrThrow().Changes.Dropped, d => d.Title == session.Title);

        (await b.ReleaseAsync(club.OwnSquad, week, session.Slot, new Pin(week, session.Slot, null, null, true), Cancel)).OrThrow();
        await AcceptAllAsync(club);
        Assert.Equal(latest.Number + 1, (await b.PublishAsync(club.OwnSquad, latest.Number, NewId.Create(), "Mine", Cancel)).OrThrow().Number);
    });

    [Fact]
    public async Task A_save_refused_for_another_reason_is_no_meeting() => Assert.Null(await Meanwhile<ClubRow>.OfAsync(
        [new Problem("club.name-missing", "Give it a name.")], () => throw new InvalidOperationException("Nothing is fetched"), () => throw new InvalidOperationException("Nothing is fetched")));

    private static async Task<Meanwhile<T>> LostAsync<T, TSaved>(Result<TSaved> save, Func<Task<T>> theirs, Func<Task<Data.Edits.LastSave?>> last)
        where T : class
    {
        var both = await Meanwhile<T>.OfAsync(Assert.IsType<Result<TSaved>.Failed>(save).Problems, async () => await theirs(), last);
        Assert.Equal(("Coach HeadCoach", new LocalDateTime(2026, 3, 3, 12, 0)), (both?.Last?.Who, both?.Last?.At));
        return both!;
    }

    private static Task<bool> AcceptAllAsync(TestClub club) => club.App.InClubAsync(club.Id, async services =>
    {
        foreach (var finding in (await services.GetRequiredService<PlanStore>().DraftAsync(club.OwnSquad, Cancel)).OrThrow().InTheWay.ToList())
        {
            (await services.GetRequiredService<AcceptedFindingStore>().AcceptAsync(club.OwnSquad, finding.Rule, finding.Week, "for the test", club.Head, Cancel)).OrThrow();
        }

        return true;
    });

    private async Task TwoAsync(Func<TestClub, IServiceProvider, IServiceProvider, Task> work)
    {
        var club = await app.NewClubAsync();
        var another = await app.InClubAsync(club.Id, services => TestApp.AddCoachAsync(services, club.Id, Data.Accounts.ClubRole.HeadCoach));
        await app.AsAsync(club.Head, first => app.AsAsync(another, async second =>
        {
            await work(club, first, second);
            return true;
        }));
    }
}
