using ClubCycle.Data;
using ClubCycle.Data.Links;
using ClubCycle.Data.Plans;
using ClubCycle.Data.Squads;
using ClubCycle.Planning;
using ClubCycle.Web.Features.Feeds;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Web.Features.Player;

/// <summary>The page behind a player's link: read only, no sign-in, no script, small enough for an old phone.</summary>
internal static class PlayerEndpoints
{
    public const string Path = "/p";

    public static void MapPlayerPage(this IEndpointRouteBuilder app) =>
        app.Map(Path + "/{**token}", AnswerAsync).AllowAnonymous().ExcludeFromDescription();

    private static async Task<IResult> AnswerAsync(string? token, HttpContext http, LinkStore links, IServiceScopeFactory scopes, IClock clock, CancellationToken cancel)
    {
        http.Response.Headers.CacheControl = "private, no-cache";
        http.Response.Headers["Referrer-Policy"] = "no-referrer";
        http.Response.Headers["X-Robots-Tag"] = "noindex, nofollow";
        if (!HttpMethods.IsGet(http.Request.Method) && !HttpMethods.IsHead(http.Request.Method))
        {
            http.Response.Headers.Allow = "GET, HEAD";
            return TypedResults.StatusCode(StatusCodes.Status405MethodNotAllowed);
        }

        if (await links.FindAsync(token ?? "", cancel) is not { Live: true } link)
        {
            return new RazorComponentResult<LinkGonePage> { StatusCode = StatusCodes.Status404NotFound };
        }

        // A scope of its own: whoever may be signed in here, the link decides the club.
        await using var scope = scopes.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentClub>().Use(link.ClubId);
        var view = await ViewAsync(scope.ServiceProvider, link, clock.GetCurrentInstant(), cancel);
        var feed = $"{http.Request.Host}{http.Request.PathBase}{FeedEndpoints.Path}/{token}.ics";
        return new RazorComponentResult<PlayerPage>(new { View = view, FeedAddress = $"{http.Request.Scheme}://{feed}", SubscribeAddress = $"webcal://{feed}" });
    }

    private static async Task<PlayerView> ViewAsync(IServiceProvider services, FoundLink link, Instant now, CancellationToken cancel)
    {
        var squad = (await services.GetRequiredService<SquadStore>().FindAsync(link.SquadId, cancel)).OrThrow().Squad;
        await using var db = await services.GetRequiredService<IClubDbFactory>().OpenAsync(cancel);
        var player = await db.Players.Where(p => p.Id == link.PlayerId).Select(p => p.Name).SingleAsync(cancel);
        return await services.GetRequiredService<PlanStore>().PublishedAsync(link.SquadId, cancel) switch
        {
            Result<PublishedPlan>.Ok(var published) => PlayerView.Of(player, squad, published, now.InZone(published.Zone).LocalDateTime),
            _ => PlayerView.Nothing(player, squad),
        };
    }
}
