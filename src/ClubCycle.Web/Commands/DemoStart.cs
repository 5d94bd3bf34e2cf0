using ClubCycle.Data;
using ClubCycle.Data.Accounts;
using ClubCycle.Data.Clubs;
using ClubCycle.Data.Demo;
using ClubCycle.Data.Feeds;
using ClubCycle.Data.Links;
using ClubCycle.Data.Players;
using ClubCycle.Data.Squads;
using ClubCycle.Planning.Feeds;
using ClubCycle.Planning.Squads;
using ClubCycle.Web.Account;
using ClubCycle.Web.Features.Feeds;
using Microsoft.AspNetCore.Identity;

namespace ClubCycle.Web.Commands;

/// <summary>Fresh ways into the demo club, made at each start.</summary>
/// <param name="HeadCoach">Token of a one-time sign-in link.</param>
/// <param name="SquadCoach">Token of a one-time sign-in link.</param>
/// <param name="Player">Token of a player's page and feed.</param>
internal sealed record DemoStart(string HeadCoach, string SquadCoach, string Player)
{
    private const string LinkName = "Printed at the start";

    private static readonly TimeSpan FeedIsReadyWithin = TimeSpan.FromSeconds(30);

    /// <summary>Fills the database with the demo club unless it is there; false when another club lives in it.</summary>
    public static async Task<bool> FillAsync(IServiceProvider services, CancellationToken cancel)
    {
        await using var scope = services.CreateAsyncScope();
        var users = scope.ServiceProvider.GetRequiredService<UserManager<ClubUser>>();
        var head = await users.FindByNameAsync(HeadCoachMail);
        if (head is null && await scope.ServiceProvider.GetRequiredService<ClubStore>().AnyAsync(cancel))
        {
            return false;
        }

        var demo = scope.ServiceProvider.GetRequiredService<DemoClub>();
        await demo.CreateAsync(cancel);
        head ??= await AddAsync(users, "Robin Ashdown", HeadCoachMail, ClubRole.HeadCoach);
        var coach = await users.FindByNameAsync(SquadCoachMail) ?? await AddAsync(users, "Sam Okell", SquadCoachMail, ClubRole.SquadCoach);
        await demo.FillAsync(head.Id, coach.Id, cancel);
        return true;
    }

    /// <summary>After the app started, so that the player's feed is being rendered.</summary>
    public static async Task<DemoStart> LinksAsync(IServiceProvider services, CancellationToken cancel)
    {
        await using var scope = services.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentClub>().Use(DemoClub.ClubId);
        var users = scope.ServiceProvider.GetRequiredService<UserManager<ClubUser>>();
        var head = await KnownAsync(users, HeadCoachMail);
        var coach = await KnownAsync(users, SquadCoachMail);
        var signIn = scope.ServiceProvider.GetRequiredService<SignInLinks>();
        var squads = await scope.ServiceProvider.GetRequiredService<SquadStore>().ListAsync(cancel);
        var squad = squads.First(s => s.Squad.AgeGroup == AgeGroup.Senior).Squad.Key;
        await FeedOfAsync(scope.ServiceProvider.GetRequiredService<FeedStore>(), squad, cancel);
        return new DemoStart(
            await signIn.CreateAsync(head.Id, cancel),
            await signIn.CreateAsync(coach.Id, cancel),
            await PlayerLinkAsync(scope.ServiceProvider, squad, head.Id, cancel));
    }

    private static string HeadCoachMail => "head.coach@example.org";

    private static string SquadCoachMail => "squad.coach@example.org";

    private static async Task<ClubUser> AddAsync(UserManager<ClubUser> users, string name, string email, ClubRole role)
    {
        var user = new ClubUser { Id = NewId.Create(), ClubId = DemoClub.ClubId, DisplayName = name, Email = email, UserName = email, Role = role, GuideClosed = true };
        var made = await users.CreateAsync(user);
        return made.Succeeded ? user : throw new InvalidOperationException($"The demo coach {email} could not be made: {string.Join("; ", made.Errors.Select(e => e.Description))}");
    }

    private static async Task<ClubUser> KnownAsync(UserManager<ClubUser> users, string email) =>
        await users.FindByNameAsync(email) ?? throw new InvalidOperationException($"The demo coach {email} is missing.");

    private static async Task<string> PlayerLinkAsync(IServiceProvider services, Guid squad, Guid by, CancellationToken cancel)
    {
        var links = services.GetRequiredService<LinkStore>();
        var player = (await services.GetRequiredService<PlayerStore>().ListAsync(squad, cancel))[0].Id;
        foreach (var old in (await links.ListAsync(squad, player, cancel)).Where(l => l.Name == LinkName && l.RevokedAt is null))
        {
            (await links.RevokeAsync(squad, player, old.Id, by, cancel)).OrThrow();
        }

        return (await links.CreateAsync(squad, player, LinkName, by, cancel)).OrThrow().Token;
    }

    /// <summary>Waits for the worker, so that the printed feed is full when it is opened at once.</summary>
    private static async Task FeedOfAsync(FeedStore feeds, Guid squad, CancellationToken cancel)
    {
        for (var waited = TimeSpan.Zero; waited < FeedIsReadyWithin && await feeds.FindAsync(squad, FeedRendering.VariantOf(new FeedOptions(), waiting: true), cancel) is null; waited += TimeSpan.FromMilliseconds(200))
        {
            await Task.Delay(200, cancel);
        }
    }
}
