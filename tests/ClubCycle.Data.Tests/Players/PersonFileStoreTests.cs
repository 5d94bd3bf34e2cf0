using ClubCycle.Data.Links;
using ClubCycle.Data.Players;
using ClubCycle.Planning.Feeds;
using ClubCycle.Planning.Players;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Tests.Players;

public sealed class PersonFileStoreTests(ClubData data) : IClassFixture<ClubData>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Everything_that_is_stored_about_a_player_is_in_the_file_and_nothing_of_anybody_else()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        var player = await club.PlayerAsync(squad);
        var other = await club.PlayerAsync(squad, "Bo L.");
        foreach (var id in new[] { player, other })
        {
            (await club.Store<LinkStore>().CreateAsync(squad, id, "own phone", new FeedOptions(DayOnly: true), ClubData.By, Cancel)).OrThrow();
            (await club.Store<TestResultStore>().AddAsync(squad, id, new FieldTestResult(TestKind.ShuttleRun, new LocalDate(2026, 2, 20), 9), ClubData.By, Cancel)).OrThrow();
            await club.Store<WelfareStore>().NoteReadAsync(squad, id, ClubData.By, Cancel);
        }

        var stored = (await club.Store<PlayerStore>().ListAsync(squad, Cancel)).Single(p => p.Id == player);
        (await club.Store<PlayerStore>().LimitAsync(squad, player, new PlayerLimits(2011, true, new LocalDate(2026, 2, 1), new LocalDate(2026, 1, 15)), stored.Version, ClubData.By, Cancel)).OrThrow();

        var file = (await club.Store<PersonFileStore>().GatherAsync(squad, player, "The mother asked for it", ClubData.By, Cancel)).OrThrow();

        Assert.Equal(
            ("Test club", "Women 1", "Ana P.", 2011, true, new LocalDate(2026, 2, 1), new LocalDate(2026, 1, 15), false, new LocalDate(2026, 3, 1)),
            (file.Club, file.Squad, file.Name, file.BirthYear, file.AsksHealthQuestions, file.HealthSettledOn, file.GrowingFastSince, file.Protected, file.AddedOn));
        Assert.Equal(new PersonLink("own phone", "spmd", ClubData.Start, null, null), Assert.Single(file.Links));
        Assert.Equal(new PersonTest(new LocalDate(2026, 2, 20), "ShuttleRun", 9, null, null), Assert.Single(file.Tests));
        Assert.Equal("player.history-read", Assert.Single(file.Access).What);
    }

    /// <summary>A column that somebody adds later belongs in the file, or here with the reason why not.</summary>
    [Fact]
    public async Task No_column_about_a_player_is_forgotten()
    {
        var club = await data.NewClubAsync();
        await using var db = await club.OpenAsync();

        Assert.Equal(
            [
                "guardian_consents: Answer, AnsweredOn, AskedAt, ClubId, EndedOn, Language, LinkUsed, PlayerId, TokenHash",
                "links: ClubId, CreatedAt, Id, LastPollDay, Name, Options, PlayerId, RevokedAt, TokenHash",
                "players: AddedOn, AsksHealthQuestions, BirthYear, ClubId, GrowingFastSince, HealthSettledOn, Id, Name, Protected, SquadId, Version",
                "test_results: ClubId, EnteredBy, Exercise, Id, Kind, PlayerId, Second, TakenOn, Value",
            ],
            db.Model.GetEntityTypes()
                .Where(t => t.ClrType == typeof(PlayerRow) || t.GetForeignKeys().Any(k => k.PrincipalEntityType.ClrType == typeof(PlayerRow)))
                .Select(t => $"{t.GetTableName()}: {string.Join(", ", t.GetProperties().Select(p => p.Name).Order(StringComparer.Ordinal))}").Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("", "export.reason-missing")]
    [InlineData("  ", "export.reason-missing")]
    [InlineData("two\nlines", "export.reason-control-character")]
    public async Task Without_a_reason_that_can_be_read_nothing_is_given_out(string reason, string code)
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        var player = await club.PlayerAsync(squad);

        Problems.AssertProblem(code, await club.Store<PersonFileStore>().GatherAsync(squad, player, reason, ClubData.By, Cancel));
        Assert.Empty(await club.Store<WelfareStore>().AccessAsync(10, Cancel));
    }

    [Fact]
    public async Task A_sixth_file_in_a_day_is_refused_and_the_next_day_begins_anew()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        var player = await club.PlayerAsync(squad);
        var files = club.Store<PersonFileStore>();
        for (var i = 0; i < PersonFileStore.MostADay; i++)
        {
            (await files.GatherAsync(squad, player, "asked", ClubData.By, Cancel)).OrThrow();
        }

        Problems.AssertProblem("export.too-many", await files.GatherAsync(squad, player, "asked", ClubData.By, Cancel));
        (await files.GatherAsync(squad, player, "asked", NewId.Create(), Cancel)).OrThrow();
        data.Clock.Now = ClubData.Start + Duration.FromHours(12);
        (await files.GatherAsync(squad, player, "asked", ClubData.By, Cancel)).OrThrow();
    }

    [Fact]
    public async Task Who_presses_many_times_at_once_gets_no_more_than_the_days_files()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        var player = await club.PlayerAsync(squad);

        var answers = await Task.WhenAll(Enumerable.Range(0, 10).Select(_ => data.TestClub(club.Id).Store<PersonFileStore>().GatherAsync(squad, player, "asked", ClubData.By, Cancel)));

        Assert.Equal(PersonFileStore.MostADay, answers.Count(a => a is Planning.Result<PersonFile>.Ok));
    }

    [Fact]
    public async Task A_player_of_another_squad_or_club_is_not_there()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        var player = await club.PlayerAsync(squad);
        var other = await data.NewClubAsync();

        Problems.AssertProblem("player.not-found", await club.Store<PersonFileStore>().GatherAsync(await club.SquadAsync("Men 1"), player, "asked", ClubData.By, Cancel));
        Problems.AssertProblem("player.not-found", await other.Store<PersonFileStore>().GatherAsync(squad, player, "asked", ClubData.By, Cancel));
    }
}
