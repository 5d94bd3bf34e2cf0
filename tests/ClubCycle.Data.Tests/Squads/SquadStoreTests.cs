using ClubCycle.Data.Accounts;
using ClubCycle.Data.Squads;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Squads;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Tests.Squads;

public sealed class SquadStoreTests(ClubData data) : IClassFixture<ClubData>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_squad_comes_back_as_it_was_saved()
    {
        var club = await data.NewClubAsync();
        var squad = ClubData.Squad() with
        {
            AgeGroup = AgeGroup.Youth(13),
            TrainingAge = TrainingAge.New,
            Practices = [new Practice(IsoDayOfWeek.Wednesday, new LocalTime(17, 45), 75, [PhaseKind.InSeason, PhaseKind.AerobicBuild])],
            MatchDay = IsoDayOfWeek.Sunday,
            MatchStart = null,
            Windows = [new TimeWindow([IsoDayOfWeek.Monday, IsoDayOfWeek.Friday], new LocalTime(18, 0), new LocalTime(20, 30))],
        };

        var id = (await club.Store<SquadStore>().AddAsync(squad, null, ClubData.By, Cancel)).OrThrow();
        var stored = (await club.Store<SquadStore>().FindAsync(id, Cancel)).OrThrow();

        Assert.Equal(squad with { Key = id, Practices = [], Windows = [] }, stored.Squad with { Practices = [], Windows = [] });
        var practice = Assert.Single(stored.Squad.Practices);
        Assert.Equal(squad.Practices[0] with { Phases = [] }, practice with { Phases = [] });
        Assert.Equal(squad.Practices[0].Phases, practice.Phases);
        var window = Assert.Single(stored.Squad.Windows);
        Assert.Equal(squad.Windows[0].Days, window.Days);
        Assert.Equal((squad.Windows[0].From, squad.Windows[0].To), (window.From, window.To));
        Assert.Equal(1, stored.Version);
    }

    [Fact]
    public async Task A_changed_practice_is_saved()
    {
        var club = await data.NewClubAsync();
        var stored = (await club.Store<SquadStore>().FindAsync(await club.SquadAsync(), Cancel)).OrThrow();
        var later = stored.Squad.Practices[0] with { Start = new LocalTime(20, 0) };

        Assert.Equal(2, (await club.Store<SquadStore>().SaveAsync(stored.Squad with { Practices = [later] }, stored.Version, ClubData.By, Cancel)).OrThrow());

        Assert.Equal(new LocalTime(20, 0), Assert.Single((await club.Store<SquadStore>().FindAsync(stored.Squad.Key, Cancel)).OrThrow().Squad.Practices).Start);
    }

    [Fact]
    public async Task The_second_of_two_savers_is_told_and_the_firsts_change_stays()
    {
        var club = await data.NewClubAsync();
        var stored = (await club.Store<SquadStore>().FindAsync(await club.SquadAsync(), Cancel)).OrThrow();
        (await club.Store<SquadStore>().SaveAsync(stored.Squad with { Name = "First" }, 1, ClubData.By, Cancel)).OrThrow();

        Problems.AssertProblem("squad.changed-meanwhile", await club.Store<SquadStore>().SaveAsync(stored.Squad with { Name = "Second" }, 1, ClubData.By, Cancel));

        Assert.Equal("First", (await club.Store<SquadStore>().FindAsync(stored.Squad.Key, Cancel)).OrThrow().Squad.Name);
    }

    [Fact]
    public async Task Squads_are_listed_youngest_first_then_by_name()
    {
        var club = await data.NewClubAsync();
        foreach (var (name, age) in new[] { ("Masters", AgeGroup.Masters), ("Women 2", AgeGroup.Senior), ("Men 1", AgeGroup.Senior), ("Under 18", AgeGroup.Youth(18)), ("Under 9", AgeGroup.Youth(9)) })
        {
            (await club.Store<SquadStore>().AddAsync(ClubData.Squad(name, age), null, ClubData.By, Cancel)).OrThrow();
        }

        Assert.Equal(["Under 9", "Under 18", "Men 1", "Women 2", "Masters"], (await club.Store<SquadStore>().ListAsync(Cancel)).Select(s => s.Squad.Name));
    }

    [Fact]
    public async Task Only_people_of_the_club_can_coach_its_squads()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        var own = await PersonAsync(club.Id, "own");
        var foreign = await PersonAsync((await data.NewClubAsync("Elsewhere")).Id, "foreign");

        Problems.AssertProblem("person.not-found", await club.Store<SquadStore>().SetCoachesAsync(squad, [own, foreign], ClubData.By, Cancel));
        (await club.Store<SquadStore>().SetCoachesAsync(squad, [own], ClubData.By, Cancel)).OrThrow();

        Assert.Equal([own], await club.Store<SquadStore>().CoachesAsync(squad, Cancel));
        Assert.Equal([squad], await club.Store<SquadStore>().CoachedByAsync(own, Cancel));
        (await club.Store<SquadStore>().SetCoachesAsync(squad, [], ClubData.By, Cancel)).OrThrow();
        Assert.Empty(await club.Store<SquadStore>().CoachesAsync(squad, Cancel));
    }

    [Fact]
    public async Task A_removed_squad_takes_its_plans_players_and_links_along()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        await club.SeasonAsync(squad);
        await club.PlayerAsync(squad);
        await club.PublishAsync(squad);

        (await club.Store<SquadStore>().RemoveAsync(squad, ClubData.By, Cancel)).OrThrow();

        await using var db = await club.OpenAsync();
        Assert.Equal((0, 0, 0, 0, 1), (await db.Players.CountAsync(Cancel), await db.Revisions.CountAsync(Cancel), await db.Sessions.CountAsync(Cancel), await db.Outbox.CountAsync(Cancel), await db.Seasons.CountAsync(Cancel)));
    }

    private async Task<Guid> PersonAsync(Guid clubId, string name)
    {
        var id = NewId.Create();
        await using var db = await data.Contexts.CreateDbContextAsync(Cancel);
        db.Users.Add(new ClubUser { Id = id, ClubId = clubId, UserName = $"{name}-{id}", NormalizedUserName = $"{name}-{id}", DisplayName = name });
        await db.SaveChangesAsync(Cancel);
        return id;
    }
}
