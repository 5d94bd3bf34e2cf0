using ClubCycle.Data.Accounts;
using ClubCycle.Planning;
using ClubCycle.Planning.Feeds;
using ClubCycle.Web.Features.Plans;
using ClubCycle.Web.Features.Players;
using ClubCycle.Web.Features.Seasons;
using ClubCycle.Web.Features.Squads;
using ClubCycle.Web.Features.Templates;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace ClubCycle.Web.Tests.Features;

/// <summary>Records that name an own squad but whose id belongs to a foreign one: what is not of the squad is not there.</summary>
public sealed class ForgedArgumentTests(RightsWorld world) : IClassFixture<RightsWorld>
{
    private static readonly Dictionary<string, (string Refused, Func<IServiceProvider, Target, Target, Task<string>> Call)> Forgeries = new()
    {
        ["player, to erase"] = ("player.not-found", async (s, own, theirs) => Told(await Players(s).RemoveAsync(theirs.Player with { SquadId = own.Squad }, Cancel))),
        ["player, to see the links"] = ("nothing", async (s, own, theirs) => (await Players(s).LinksAsync(theirs.Player with { SquadId = own.Squad }, Cancel)).Count == 0 ? "nothing" : "links"),
        ["player, to make a link"] = ("player.not-found", async (s, own, theirs) => Told(await Players(s).NewLinkAsync(theirs.Player with { SquadId = own.Squad }, "mine", new FeedOptions(), Cancel))),
        ["player, to change a link"] = ("link.not-found", async (s, own, theirs) => Told(await Players(s).ChangeLinkAsync(theirs.Player with { SquadId = own.Squad }, theirs.Link, "mine", new FeedOptions(), Cancel))),
        ["player, to revoke every link"] = ("player.not-found", async (s, own, theirs) => Told(await Players(s).RevokeAllAsync(theirs.Player with { SquadId = own.Squad }, Cancel))),
        ["player, to revoke a link"] = ("link.not-found", async (s, own, theirs) => Told(await Players(s).RevokeAsync(theirs.Player with { SquadId = own.Squad }, theirs.Link, Cancel))),
        ["link of an own player"] = ("link.not-found", async (s, own, theirs) => Told(await Players(s).RevokeAsync(own.Player, theirs.Link, Cancel))),
        ["match, to move"] = ("fixture.not-found", async (s, own, theirs) => Told(await Plans(s).SaveMatchAsync(theirs.Match with { SquadId = own.Squad }, new LocalDate(2026, 10, 17), null, null, null, Cancel))),
        ["match, to move as a usual one"] = ("fixture.not-found", async (s, own, theirs) => Told(await Plans(s).SaveMatchAsync(theirs.Match with { SquadId = own.Squad, Version = 0 }, new LocalDate(2026, 10, 17), null, null, null, Cancel))),
        ["match, to remove"] = ("fixture.not-found", async (s, own, theirs) => Told(await Plans(s).RemoveMatchAsync(theirs.Match with { SquadId = own.Squad }, Cancel))),
        ["closed days"] = ("closed-days.not-found", async (s, own, theirs) => Told(await s.GetRequiredService<SeasonActions>().OpenAsync(theirs.Closed with { SquadId = own.Squad }, Cancel))),
        ["closed days of the club"] = ("closed-days.not-found", async (s, own, theirs) => Told(await s.GetRequiredService<SeasonActions>().OpenAsync(theirs.ClubClosed with { SquadId = own.Squad }, Cancel))),
        ["squad, to plan by a template"] = ("squad.not-found", async (s, own, theirs) => Told(await s.GetRequiredService<SquadActions>().UseTemplateAsync(own.Stored with { Squad = own.Stored.Squad with { Key = theirs.Squad } }, own.Template.Id, Cancel))),
        ["squad, to save"] = ("squad.not-found", async (s, own, theirs) => Told(await s.GetRequiredService<SquadActions>().SaveAsync(own.Stored.Squad with { Key = theirs.Squad }, theirs.Stored.Version, Cancel))),
    };

    private static readonly Dictionary<string, (string Refused, Func<IServiceProvider, Target, Target, Task<string>> Call)> ForgeriesOfHeads = new(Forgeries)
    {
        ["season, to save"] = ("season.not-found", async (s, own, theirs) => Told(await s.GetRequiredService<SeasonActions>().SaveAsync(theirs.Season with { SquadId = own.Squad }, null, Target.Stints, Cancel))),
        ["season, to remove"] = ("season.not-found", async (s, own, theirs) => Told(await s.GetRequiredService<SeasonActions>().RemoveAsync(theirs.Season with { SquadId = own.Squad }, Cancel))),
        ["template, to save"] = ("template.not-found", async (s, own, theirs) => Told(await s.GetRequiredService<TemplateActions>().SaveAsync(own.Template with { Id = theirs.Template.Id }, own.Template.Template, "", Cancel))),
        ["template, to plan a squad by"] = ("template.not-found", async (s, own, theirs) => Told(await s.GetRequiredService<TemplateActions>().UseAsync(own.Stored, theirs.Template.Id, 1, Cancel))),
        ["template, to try"] = ("template.not-found", async (s, own, theirs) => Told(await s.GetRequiredService<SquadActions>().TryTemplateAsync(own.Squad, theirs.Template.Id, Cancel))),
    };

    public static TheoryData<string> AgainstSquads => [.. Forgeries.Keys];

    public static TheoryData<string> AgainstClubs => [.. ForgeriesOfHeads.Keys];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [MemberData(nameof(AgainstSquads))]
    public async Task A_squad_coach_cannot_reach_another_squad_of_the_club_through_the_own_one(string forged)
    {
        var coach = await world.Shared.Club.NewCoachAsync(ClubRole.SquadCoach, world.SameClub.Squad);

        await AssertRefusedAsync(Forgeries[forged], coach, world.SameClub, world.Shared);
    }

    [Theory]
    [MemberData(nameof(AgainstClubs))]
    public Task A_head_coach_cannot_reach_another_club_through_an_own_squad(string forged) =>
        AssertRefusedAsync(ForgeriesOfHeads[forged], world.AnotherClub.Club.Head, world.AnotherClub, world.Shared);

    [Fact]
    public async Task A_new_squad_never_takes_the_place_of_one_that_is_there()
    {
        var target = await world.NewTargetAsync();

        var added = await world.App.AsAsync(target.Club.Head, s => s.GetRequiredService<SquadActions>().AddAsync(target.Stored.Squad, Cancel));

        Assert.NotEqual(target.Squad, added.OrThrow());
    }

    private async Task AssertRefusedAsync((string Refused, Func<IServiceProvider, Target, Target, Task<string>> Call) forgery, Guid person, Target mine, Target theirs)
    {
        var before = await theirs.StoredAsync();

        Assert.Equal(forgery.Refused, await world.App.AsAsync(person, services => forgery.Call(services, mine, theirs)));
        Assert.Equal(before, await theirs.StoredAsync());
    }

    private static PlayerActions Players(IServiceProvider services) => services.GetRequiredService<PlayerActions>();

    private static PlanActions Plans(IServiceProvider services) => services.GetRequiredService<PlanActions>();

    private static string Told<T>(Result<T> result) => result is Result<T>.Failed failed ? failed.First.Code : "done";
}
