using ClubCycle.Data;
using ClubCycle.Data.Accounts;
using ClubCycle.Data.Clubs;
using ClubCycle.Data.Fixtures;
using ClubCycle.Data.Plans;
using ClubCycle.Data.Players;
using ClubCycle.Data.Seasons;
using ClubCycle.Data.Squads;
using ClubCycle.Data.Templates;
using ClubCycle.Planning.Languages;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Players;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Seasons;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace ClubCycle.Web.Tests.Features;

/// <summary>Two squads of one club and a squad of another one, to be looked at and left alone.</summary>
public sealed class RightsWorld : IAsyncLifetime
{
    internal TestApp App { get; } = new();

    internal Target Shared { get; private set; } = null!;

    internal Target SameClub { get; private set; } = null!;

    internal Target AnotherClub { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        await App.InitializeAsync();
        AnotherClub = await NewTargetAsync();
        Shared = await NewTargetAsync();
        await Shared.Club.NewCoachAsync(ClubRole.WelfareOfficer);
        SameClub = await Target.CreateAsync(Shared.Club with { OwnSquad = Shared.Club.OtherSquad, OtherSquad = Shared.Squad });
        await Shared.Club.PublishAsync();
    }

    public ValueTask DisposeAsync() => App.DisposeAsync();

    internal async Task<Target> NewTargetAsync() => await Target.CreateAsync(await App.NewClubAsync());
}

/// <summary>A squad with one of everything that belongs to a squad, and the club it is in.</summary>
internal sealed record Target(
    TestClub Club, StoredSquad Stored, StoredPlayer Player, Guid Link, StoredFixture Match, StoredClosedDays Closed, StoredClosedDays ClubClosed, StoredSeason Season, StoredTemplate Template, Pin Pin, Guid Test, Pin Added, PhaseBoundary Boundary, StoredPlayer Child)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public Guid Squad => Stored.Squad.Key;

    /// <summary>Fills the club's own squad.</summary>
    public static Task<Target> CreateAsync(TestClub club) => club.App.InClubAsync(club.Id, async services =>
    {
        var (squad, by) = (club.OwnSquad, club.Head);
        var templates = services.GetRequiredService<TemplateStore>();
        var squads = services.GetRequiredService<SquadStore>();
        var closed = services.GetRequiredService<ClosedDayStore>();
        var clubs = services.GetRequiredService<ClubStore>();
        var row = (await clubs.FindAsync(Cancel)).OrThrow();
        (await clubs.SaveAsync(row.Name, row.TimeZone, row.FirstWeekday, row.Version, by, Cancel)).OrThrow();
        var stored = (await squads.FindAsync(squad, Cancel)).OrThrow();
        var clone = (await templates.CloneAsync(stored.TemplateId, null, "House plan", by, Cancel)).OrThrow();
        (await templates.UseForSquadAsync(squad, clone, 1, stored.Version, by, Cancel)).OrThrow();
        (await services.GetRequiredService<SeasonStore>().AddAsync(squad, new LocalDate(2026, 2, 28), Stints, by, Cancel)).OrThrow();
        var flooded = (await closed.AddAsync(squad, new ClosedDays(new(2026, 10, 20), new(2026, 10, 20), "Flooded"), by, Cancel)).OrThrow();
        var holidays = (await closed.AddAsync(null, new ClosedDays(new(2026, 12, 24), new(2026, 12, 26), "Holidays"), by, Cancel)).OrThrow();
        (await services.GetRequiredService<FixtureStore>().ImportAsync(squad, [new Fixture(new LocalDate(2026, 10, 10), null, "Northgate")], by, Cancel)).OrThrow();
        var pin = (await services.GetRequiredService<PinStore>().PinAsync(squad, new Pin(new LocalDate(2026, 5, 4), "aerobic-build.easy-run.1", null, null, true), by, Cancel)).OrThrow();
        var added = (await services.GetRequiredService<PinStore>().AddAsync(squad, new LocalDate(2026, 5, 6), null, "easy-run", 40, "Bring a ball", by, Cancel)).OrThrow();
        (await services.GetRequiredService<PhaseLengthStore>().SetAsync(squad, 0, [new PhaseLength(0, "long", 0, 4)], by, Cancel)).OrThrow();
        var player = (await services.GetRequiredService<PlayerStore>().AddAsync(squad, ["Robin Vale"], by, Cancel)).OrThrow()[0];
        var link = await (club with { Player = player }).NewLinkAsync();
        var child = (await services.GetRequiredService<PlayerStore>().AddAsync(squad, ["Ash Vale"], by, Cancel)).OrThrow()[0];
        (await services.GetRequiredService<PlayerStore>().LimitAsync(squad, child, new PlayerLimits(2014, false, null, null), 1, by, Cancel)).OrThrow();
        (await services.GetRequiredService<GuardianStore>().AskAsync(squad, child, Language.English, by, Cancel)).OrThrow();
        (await services.GetRequiredService<PersonFileStore>().GatherAsync(squad, player, "The father asked for it", club.Coach, Cancel)).OrThrow();
        var draft = (await services.GetRequiredService<PlanStore>().DraftAsync(squad, Cancel)).OrThrow();
        var days = await closed.ListAsync(Cancel);
        return new Target(
            club,
            (await squads.FindAsync(squad, Cancel)).OrThrow(),
            (await services.GetRequiredService<PlayerStore>().ListAsync(squad, Cancel)).Single(p => p.Id == player),
            link.Id,
            Assert.Single((await services.GetRequiredService<FixtureStore>().ListAsync(squad, Cancel)).OrThrow()),
            days.Single(d => d.Id == flooded),
            days.Single(d => d.Id == holidays),
            (await services.GetRequiredService<SeasonStore>().ListAsync(Cancel)).Single(s => s.SquadId == squad),
            (await templates.FindAsync(clone, null, Cancel)).OrThrow(),
            pin,
            (await services.GetRequiredService<TestResultStore>().AddAsync(squad, player, Shuttles, by, Cancel)).OrThrow(),
            added,
            PhaseBoundary.Of(draft.Request, draft.Plan)[^1],
            (await services.GetRequiredService<PlayerStore>().ListAsync(squad, Cancel)).Single(p => p.Id == child));
    });

    public static FieldTestResult Shuttles { get; } = new(TestKind.ShuttleRun, new LocalDate(2026, 2, 20), 9);

    public static IReadOnlyList<Stint> Stints { get; } = [new(new(2026, 10, 1), new(2026, 11, 30)), new(new(2027, 1, 1), new(2027, 2, 28))];

    /// <summary>Digests of all that is stored for the club but what a background worker writes in its own time and that somebody was refused.</summary>
    public Task<List<string>> StoredAsync() => Club.App.InClubAsync(Club.Id, async services =>
    {
        await using var db = await services.GetRequiredService<IClubDbFactory>().OpenAsync(Cancel);
        var tables = db.Model.GetEntityTypes().Where(t => t.GetSchema() == ClubCycleDb.ClubSchema).Select(t => t.GetTableName()).Except(["outbox", "feed_bodies", "audit"])
            .Select(table => $"select '{table} ' || md5(string_agg(t::text, '|' order by t::text)) as \"Value\" from club.{table} t where club_id = {{0}}")
            .Append("select 'audit ' || md5(string_agg(t::text, '|' order by t::text)) from club.audit t where club_id = {0} and what <> 'access.refused'")
            .Append("select 'users ' || md5(string_agg(t::text, '|' order by t::text)) from accounts.users t where club_id = {0}")
            .Append("select 'user_tokens ' || md5(string_agg(t::text, '|' order by t::text)) from accounts.user_tokens t where user_id in (select id from accounts.users where club_id = {0})");
        return (await db.Database.SqlQueryRaw<string?>(string.Join(" union all ", tables), Club.Id).ToListAsync(Cancel)).OfType<string>().Order(StringComparer.Ordinal).ToList();
    });

    /// <summary>Takes a person's account away while a page of theirs is still open.</summary>
    public Task RemoveAccountAsync(Guid person) => Club.App.InClubAsync(Club.Id, async services =>
    {
        var users = services.GetRequiredService<UserManager<ClubUser>>();
        var gone = await users.DeleteAsync((await users.FindByIdAsync(person.ToString()))!);
        Assert.True(gone.Succeeded);
        return gone;
    });
}
