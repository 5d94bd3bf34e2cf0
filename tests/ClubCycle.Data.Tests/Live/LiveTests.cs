using System.Collections.Concurrent;
using System.Diagnostics;
using ClubCycle.Data.Feeds;
using ClubCycle.Data.Fixtures;
using ClubCycle.Data.Links;
using ClubCycle.Data.Live;
using ClubCycle.Data.Seasons;
using ClubCycle.Data.Squads;
using ClubCycle.Planning.Seasons;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;

namespace ClubCycle.Data.Tests.Live;

/// <summary>What is saved is heard by those whom it concerns, through PostgreSQL, as on another node.</summary>
public sealed class LiveTests : IAsyncLifetime
{
    private readonly ClubData data = new();
    private readonly ClubChanges changes = new();
    private ChangeListener? listener;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync() => data.InitializeAsync();

    public async ValueTask DisposeAsync()
    {
        if (listener is not null)
        {
            await listener.StopAsync(CancellationToken.None);
            listener.Dispose();
        }

        await data.DisposeAsync();
    }

    [Fact]
    public async Task A_commit_tells_its_squad_and_who_saved_it_once()
    {
        var club = await ListeningAsync();
        var squad = await club.SquadAsync();
        await SettledAsync(club);
        var heard = Hear(club.Id, squad);

        await club.Store<SquadStore>().SaveAsync(ClubData.Squad("Women 2") with { Key = squad }, 1, ClubData.By, Cancel);
        await SettledAsync(club);

        Assert.Equal(new ClubChange(club.Id, squad, club.Store<CurrentClub>().Origin), Assert.Single(heard, c => c.SquadId is not null));
    }

    [Fact]
    public async Task A_rollback_tells_nobody()
    {
        var club = await ListeningAsync();
        var squad = await club.SquadAsync();
        await SettledAsync(club);
        var heard = Hear(club.Id, squad);

        await using (var db = await club.OpenAsync())
        await using (await db.Database.BeginTransactionAsync(Cancel))
        {
            await db.Squads.ExecuteUpdateAsync(set => set.SetProperty(s => s.Name, "Women 2"), Cancel);
        }

        await SettledAsync(club);
        Assert.DoesNotContain(heard, c => c.SquadId is not null);
    }

    [Fact]
    public async Task Forty_rows_of_one_transaction_are_one_message()
    {
        var club = await ListeningAsync();
        var squad = await club.SquadAsync();
        await SettledAsync(club);
        var heard = Hear(club.Id, squad);

        await using (var db = await club.OpenAsync())
        {
            db.Fixtures.AddRange(Enumerable.Range(0, 40).Select(i => new FixtureRow { ClubId = club.Id, Id = NewId.Create(), SquadId = squad, Date = new(2026, 10, 1 + (i % 28)) }));
            await db.SaveChangesAsync(Cancel);
        }

        await SettledAsync(club);
        Assert.Single(heard, c => c.SquadId is not null);
    }

    [Fact]
    public async Task Another_club_and_another_squad_hear_nothing()
    {
        var club = await ListeningAsync();
        var other = await data.NewClubAsync("Other");
        var squad = await club.SquadAsync();
        var sister = await club.SquadAsync("Women 2");
        await SettledAsync(club);
        var (otherClub, otherSquad, own, whole) = (Hear(other.Id, null), Hear(club.Id, sister), Hear(club.Id, squad), Hear(club.Id, null));

        await club.Store<ClosedDayStore>().AddAsync(squad, new ClosedDays(new(2026, 6, 1), new(2026, 6, 1), "Flooded"), ClubData.By, Cancel);
        await UntilAsync(() => !own.IsEmpty && !whole.IsEmpty);
        await SettledAsync(club);

        Assert.Empty(otherClub);
        Assert.DoesNotContain(otherSquad, c => c.SquadId is not null);
        Assert.All(own.Concat(whole), c => Assert.Equal(club.Id, c.ClubId));
    }

    [Fact]
    public async Task What_concerns_the_whole_club_is_told_to_every_squad_of_it()
    {
        var club = await ListeningAsync();
        var squad = await club.SquadAsync();
        await SettledAsync(club);
        var heard = Hear(club.Id, squad);

        await club.SeasonAsync();

        await UntilAsync(() => heard.Any(c => c.SquadId is null && c.Origin == club.Store<CurrentClub>().Origin));
    }

    [Fact]
    public async Task Who_has_left_hears_nothing()
    {
        var club = await ListeningAsync();
        ConcurrentQueue<ClubChange> heard = [];
        changes.Subscribe(club.Id, null, heard.Enqueue).Dispose();

        await club.SquadAsync();
        await SettledAsync(club);

        Assert.Empty(heard);
    }

    [Fact]
    public async Task A_listener_whose_connection_is_cut_comes_back_and_says_that_everything_may_have_changed()
    {
        var club = await ListeningAsync();
        var squad = await club.SquadAsync();
        await SettledAsync(club);
        var heard = Hear(club.Id, squad);

        await CutAsync();
        await UntilAsync(() => heard.Any(c => c == new ClubChange(club.Id, null, null)));
        heard.Clear();
        await club.Store<SquadStore>().SaveAsync(ClubData.Squad("Women 2") with { Key = squad }, 1, ClubData.By, Cancel);

        await UntilAsync(() => heard.Any(c => c.SquadId == squad));
    }

    [Fact]
    public async Task Two_hundred_screens_hear_of_one_change_within_a_second()
    {
        var club = await ListeningAsync();
        var squad = await club.SquadAsync();
        await SettledAsync(club);
        var heard = Enumerable.Range(0, 200).Select(i => Hear(club.Id, i % 2 == 0 ? squad : null)).ToList();

        var watch = Stopwatch.StartNew();
        await club.Store<SquadStore>().SaveAsync(ClubData.Squad("Women 2") with { Key = squad }, 1, ClubData.By, Cancel);
        await UntilAsync(() => heard.TrueForAll(h => h.Any(c => c.SquadId == squad)));

        Assert.InRange(watch.Elapsed, TimeSpan.Zero, TimeSpan.FromSeconds(1));
        TestContext.Current.SendDiagnosticMessage($"200 screens heard of a change in {watch.ElapsedMilliseconds} ms, saving included");
    }

    [Fact]
    public async Task A_phone_that_reads_its_calendar_tells_no_screen_and_a_revoked_link_does()
    {
        var club = await ListeningAsync();
        var squad = await club.SquadAsync();
        var player = await club.PlayerAsync(squad);
        var links = club.Store<LinkStore>();
        var link = (await links.CreateAsync(squad, player, "phone", ClubData.By, Cancel)).OrThrow();
        await SettledAsync(club);
        var heard = Hear(club.Id, squad);

        await using (var db = await club.OpenAsync())
        {
            await db.Links.ExecuteUpdateAsync(set => set.SetProperty(l => l.LastPollDay, new NodaTime.LocalDate(2026, 3, 2)), Cancel);
        }

        await SettledAsync(club);
        var own = club.Store<CurrentClub>().Origin;
        Assert.DoesNotContain(heard, c => c.Origin == own);
        await links.RevokeAsync(squad, player, link.Id, ClubData.By, Cancel);
        await SettledAsync(club);

        Assert.Contains(heard, c => c.Origin == own);
    }

    [Fact]
    public async Task A_feed_that_is_ready_is_told_to_those_who_keep_feeds_and_to_no_screen()
    {
        var club = await ListeningAsync();
        var squad = await club.SquadAsync();
        await SettledAsync(club);
        ConcurrentQueue<ClubChange?> kept = [];
        changes.SubscribeFeeds(kept.Enqueue);
        var shown = Hear(club.Id, squad);

        await club.Store<FeedStore>().SaveAsync(squad, "spm", new FeedBody("a", [1], [1], 1, NodaTime.Instant.FromUnixTimeSeconds(1)), Cancel);
        await UntilAsync(() => kept.Contains(new ClubChange(club.Id, squad, null)));
        await SettledAsync(club);

        Assert.DoesNotContain(shown, c => c.SquadId == squad);
    }

    [Fact]
    public async Task A_link_whose_options_change_is_told()
    {
        var club = await ListeningAsync();
        var squad = await club.SquadAsync();
        (await club.Store<LinkStore>().CreateAsync(squad, await club.PlayerAsync(squad), "phone", ClubData.By, Cancel)).OrThrow();
        await SettledAsync(club);
        var heard = Hear(club.Id, squad);

        await using (var db = await club.OpenAsync())
        {
            await db.Links.ExecuteUpdateAsync(set => set.SetProperty(l => l.Options, "s"), Cancel);
        }

        await UntilAsync(() => heard.Any(c => c.Origin == club.Store<CurrentClub>().Origin));
    }

    /// <summary>A club and a listener that hears.</summary>
    private async Task<TestClub> ListeningAsync()
    {
        var club = await data.NewClubAsync();
        listener = new ChangeListener(data.ConnectionString, changes, NullLogger<ChangeListener>.Instance);
        var connected = Hear(club.Id, null);
        await listener.StartAsync(Cancel);
        await UntilAsync(() => !connected.IsEmpty);
        return club;
    }

    private ConcurrentQueue<ClubChange> Hear(Guid club, Guid? squad)
    {
        ConcurrentQueue<ClubChange> heard = [];
        changes.Subscribe(club, squad, heard.Enqueue);
        return heard;
    }

    /// <summary>All that was saved before has been told: messages come in the order of their commits. Comes from a scope of its own.</summary>
    private async Task SettledAsync(TestClub club)
    {
        var other = data.TestClub(club.Id);
        var heard = Hear(club.Id, null);
        await using var db = await other.OpenAsync();
        await db.Clubs.ExecuteUpdateAsync(set => set.SetProperty(c => c.Name, c => c.Name + "."), Cancel);
        await UntilAsync(() => heard.Any(c => c.Origin == other.Store<CurrentClub>().Origin));
    }

    private async Task CutAsync()
    {
        await using var connection = new NpgsqlConnection(data.ConnectionString);
        await connection.OpenAsync(Cancel);
        await using var cut = new NpgsqlCommand("select count(pg_terminate_backend(pid)) from pg_stat_activity where datname = current_database() and application_name = $1", connection);
        cut.Parameters.AddWithValue(ChangeListener.Name);
        Assert.Equal(1L, await cut.ExecuteScalarAsync(Cancel));
    }

    private static async Task UntilAsync(Func<bool> happened)
    {
        for (var watch = Stopwatch.StartNew(); !happened(); await Task.Delay(10, Cancel))
        {
            Assert.True(watch.Elapsed < TimeSpan.FromSeconds(20), "Nothing was heard within 20 seconds.");
        }
    }
}
