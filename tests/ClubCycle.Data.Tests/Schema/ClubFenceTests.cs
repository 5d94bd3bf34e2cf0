using ClubCycle.Data.Players;
using ClubCycle.Data.Plans;
using ClubCycle.Data.Squads;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace ClubCycle.Data.Tests.Schema;

/// <summary>Two fences stand between clubs; each is tried with the other out of the way.</summary>
public sealed class ClubFenceTests(ClubData data) : IClassFixture<ClubData>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_store_finds_another_clubs_rows_as_little_as_rows_that_are_not_there()
    {
        var (mine, theirs, theirSquad) = await TwoClubsAsync();

        Problems.AssertProblem("squad.not-found", await mine.Store<SquadStore>().FindAsync(theirSquad, Cancel));
        Problems.AssertProblem("squad.not-found", await mine.Store<PlanStore>().DraftAsync(theirSquad, Cancel));
        Problems.AssertProblem("squad.not-found", await mine.Store<PlanStore>().PublishAsync(theirSquad, 0, NewId.Create(), ClubData.By, "", Cancel));
        Problems.AssertProblem("squad.not-found", await mine.Store<SquadStore>().RemoveAsync(theirSquad, ClubData.By, Cancel));
        Problems.AssertProblem("squad.not-found", await mine.Store<PlayerStore>().AddAsync(theirSquad, ["Mallory X."], ClubData.By, Cancel));
        Assert.Empty(await mine.Store<SquadStore>().ListAsync(Cancel));
        Assert.Single(await theirs.Store<SquadStore>().ListAsync(Cancel));
    }

    [Fact]
    public async Task With_the_query_filter_off_row_security_still_hides_the_other_club()
    {
        var (mine, theirs, _) = await TwoClubsAsync();

        await using var db = await mine.OpenAsync();
#pragma warning disable EF1003 // Filters are switched off on purpose.
        Assert.Equal([mine.Id], await db.Clubs.IgnoreQueryFilters().Select(c => c.ClubId).ToListAsync(Cancel));
        Assert.Empty(await db.Squads.IgnoreQueryFilters().ToListAsync(Cancel));
        Assert.Empty(await db.Players.IgnoreQueryFilters().ToListAsync(Cancel));
        Assert.Equal(0, await db.Players.IgnoreQueryFilters().ExecuteDeleteAsync(Cancel));
#pragma warning restore EF1003
        await using var their = await theirs.OpenAsync();
        Assert.Equal(1, await their.Players.CountAsync(Cancel));
    }

    [Fact]
    public async Task With_row_security_open_the_query_filter_still_hides_the_other_club()
    {
        var (mine, _, _) = await TwoClubsAsync();

        await using var db = await mine.OpenAsync();
        await db.Database.OpenConnectionAsync(Cancel);
        await db.Database.ExecuteSqlAsync($"select set_config('app.club', '*', false)", Cancel);

        Assert.Equal([mine.Id], await db.Clubs.Select(c => c.ClubId).ToListAsync(Cancel));
        Assert.Empty(await db.Players.ToListAsync(Cancel));
    }

    [Fact]
    public async Task A_row_cannot_be_written_into_another_club()
    {
        var (mine, theirs, theirSquad) = await TwoClubsAsync();

        await using var db = await mine.OpenAsync();
        db.Players.Add(new PlayerRow { ClubId = theirs.Id, Id = NewId.Create(), SquadId = theirSquad, Name = "Mallory X." });

        var refused = await Assert.ThrowsAsync<DbUpdateException>(() => db.SaveChangesAsync(Cancel));
        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, Assert.IsType<PostgresException>(refused.InnerException).SqlState);
    }

    [Fact]
    public async Task A_row_cannot_refer_to_another_clubs_row()
    {
        var (mine, _, theirSquad) = await TwoClubsAsync();

        await using var db = await mine.OpenAsync();
        db.Players.Add(new PlayerRow { ClubId = mine.Id, Id = NewId.Create(), SquadId = theirSquad, Name = "Mallory X." });

        var refused = await Assert.ThrowsAsync<DbUpdateException>(() => db.SaveChangesAsync(Cancel));
        Assert.Equal(PostgresErrorCodes.ForeignKeyViolation, Assert.IsType<PostgresException>(refused.InnerException).SqlState);
    }

    [Fact]
    public async Task A_context_without_a_club_sees_no_club_data_even_on_a_connection_used_for_one_before()
    {
        await TwoClubsAsync();

        await using var db = await data.Contexts.CreateDbContextAsync(Cancel);

        Assert.Empty(await db.Clubs.ToListAsync(Cancel));
        Assert.Empty(await db.Database.SqlQuery<string>($"select name as \"Value\" from club.players").ToListAsync(Cancel));
        Assert.Empty(await db.Users.ToListAsync(Cancel));
    }

    [Fact]
    public async Task A_scope_without_a_club_opens_no_context()
    {
        _ = data.ConnectionString;
        var contexts = new ClubDbFactory(data.Contexts, new CurrentClub());

        await Assert.ThrowsAsync<InvalidOperationException>(() => contexts.OpenAsync(Cancel));
    }

    [Fact]
    public void A_scope_keeps_its_club()
    {
        var club = new CurrentClub();
        club.Use(ClubData.By);
        club.Use(ClubData.By);

        Assert.Throws<InvalidOperationException>(() => club.Use(NewId.Create()));
        Assert.Equal(ClubData.By, club.Id);
    }

    private async Task<(TestClub Mine, TestClub Theirs, Guid TheirSquad)> TwoClubsAsync()
    {
        var mine = await data.NewClubAsync("Mine");
        var theirs = await data.NewClubAsync("Theirs");
        var squad = await theirs.PlannedSquadAsync();
        await theirs.PlayerAsync(squad);
        await theirs.PublishAsync(squad);
        return (mine, theirs, squad);
    }
}
