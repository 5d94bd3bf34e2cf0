using ClubCycle.Data;
using ClubCycle.Data.Clubs;
using ClubCycle.Data.Links;
using ClubCycle.Data.Plans;
using ClubCycle.Data.Players;
using ClubCycle.Data.Squads;
using ClubCycle.Planning.Players;
using ClubCycle.Web.Features.Feeds;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Web.Features.Player;

/// <summary>The page behind a player's link: read only, no sign-in, no script needed, small enough for an old phone.</summary>
internal static class PlayerEndpoints
{
    public const string Path = "/p";

    /// <summary>Behind a link's page: takes the answers to the health questions.</summary>
    private const string HealthPath = "health";

    public static IServiceCollection AddPlayerPage(this IServiceCollection services) => services.AddResponseCompression(options => options.EnableForHttps = true);

    /// <summary>Small on a phone's bill. Nothing of a request is mirrored in these pages, so their sizes tell an eavesdropper nothing about the secrets in them.</summary>
    public static void UsePlayerPage(this IApplicationBuilder app) =>
        app.UseWhen(http => http.Request.Path.StartsWithSegments(Path, StringComparison.OrdinalIgnoreCase), page => page.UseResponseCompression());

    public static void MapPlayerPage(this IEndpointRouteBuilder app)
    {
        app.MapGet(Path + "/app.webmanifest", PlayerManifest.Answer).AllowAnonymous().ExcludeFromDescription();
        app.Map(Path + "/{**token}", AnswerAsync).AllowAnonymous().ExcludeFromDescription();

        // The secret is in the address and no cookie counts here, so no other site can send this form.
        app.MapPost(Path + "/{token}/" + HealthPath, AnswerHealthAsync).AllowAnonymous().DisableAntiforgery().ExcludeFromDescription();
    }

    private static async Task<IResult> AnswerHealthAsync(string token, HttpContext http, LinkStore links, IServiceScopeFactory scopes, IClock clock, CancellationToken cancel)
    {
        KeepPrivate(http);
        if (await links.FindAsync(token, cancel) is not { Live: true } link)
        {
            return new RazorComponentResult<LinkGonePage> { StatusCode = StatusCodes.Status404NotFound };
        }

        await using var scope = scopes.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentClub>().Use(link.ClubId);
        var squad = (await scope.ServiceProvider.GetRequiredService<SquadStore>().FindAsync(link.SquadId, cancel)).OrThrow().Squad;
        var form = await FormAsync(http.Request, cancel);
        var answer = form is null ? HealthAnswer.Incomplete : HealthForm.Read(form, squad.AgeGroup.IsYouth);
        if (answer != HealthAnswer.Settled)
        {
            return Page(http, link, token, await ViewAsync(scope.ServiceProvider, link, clock.GetCurrentInstant(), answer, cancel), form is null ? StatusCodes.Status400BadRequest : StatusCodes.Status200OK);
        }

        var today = await scope.ServiceProvider.GetRequiredService<ClubStore>().TodayAsync(cancel);
        (await scope.ServiceProvider.GetRequiredService<PlayerStore>().SettleHealthQuestionsAsync(link.SquadId, link.PlayerId, today, cancel)).OrThrow();
        http.Response.Headers.Location = $"{http.Request.PathBase}{Path}/{token}";
        return TypedResults.StatusCode(StatusCodes.Status303SeeOther);
    }

    private static async Task<IResult> AnswerAsync(string? token, HttpContext http, LinkStore links, IServiceScopeFactory scopes, IClock clock, CancellationToken cancel)
    {
        KeepPrivate(http);
        if (!HttpMethods.IsGet(http.Request.Method) && !HttpMethods.IsHead(http.Request.Method))
        {
            http.Response.Headers.Allow = "GET, HEAD";
            return TypedResults.StatusCode(StatusCodes.Status405MethodNotAllowed);
        }

        if (token is null)
        {
            return new RazorComponentResult<StartPage>();
        }

        if (await links.FindAsync(token, cancel) is not { Live: true } link)
        {
            return new RazorComponentResult<LinkGonePage> { StatusCode = StatusCodes.Status404NotFound };
        }

        if (HttpMethods.IsGet(http.Request.Method))
        {
            // Whoever uses the page only has a link in use as well.
            await links.TouchAsync(link, clock.GetCurrentInstant().InUtc().Date, cancel);
        }

        // A scope of its own: whoever may be signed in here, the link decides the club.
        await using var scope = scopes.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentClub>().Use(link.ClubId);
        return Page(http, link, token, await ViewAsync(scope.ServiceProvider, link, clock.GetCurrentInstant(), null, cancel));
    }

    /// <summary>Null when what was sent is no form or a broken one.</summary>
    internal static async Task<IFormCollection?> FormAsync(HttpRequest request, CancellationToken cancel)
    {
        try
        {
            return request.HasFormContentType ? await request.ReadFormAsync(cancel) : null;
        }
        catch (Exception broken) when (broken is InvalidDataException or IOException)
        {
            return null;
        }
    }

    private static void KeepPrivate(HttpContext http)
    {
        http.Response.Headers.CacheControl = "private, no-cache";
        http.Response.Headers["Referrer-Policy"] = "no-referrer";
        http.Response.Headers["X-Robots-Tag"] = "noindex, nofollow";
    }

    private static InLanguage Page(HttpContext http, FoundLink link, string token, PlayerView view, int status = StatusCodes.Status200OK)
    {
        var here = $"{http.Request.Host}{http.Request.PathBase}";
        var feed = $"{here}{FeedEndpoints.Path}/{token}.ics";
        return new InLanguage(link.Language, new RazorComponentResult<PlayerPage>(new
        {
            View = view,
            FeedAddress = $"{http.Request.Scheme}://{feed}",
            SubscribeAddress = $"webcal://{feed}",
            PageAddress = $"{http.Request.Scheme}://{here}{Path}/{token}",
            HealthAddress = $"{http.Request.PathBase}{Path}/{token}/{HealthPath}",
        })
        {
            StatusCode = status,
        });
    }

    /// <param name="answer">What was just sent; null to look at what is stored.</param>
    private static async Task<PlayerView> ViewAsync(IServiceProvider services, FoundLink link, Instant now, HealthAnswer? answer, CancellationToken cancel)
    {
        var squad = (await services.GetRequiredService<SquadStore>().FindAsync(link.SquadId, cancel)).OrThrow().Squad;
        await using var db = await services.GetRequiredService<IClubDbFactory>().OpenAsync(cancel);
        var player = await db.Players.AsNoTracking().SingleAsync(p => p.Id == link.PlayerId, cancel);
        if (!(await services.GetRequiredService<PlanStore>().PublishedAsync(link.SquadId, cancel)).TryGet(out var published, out _))
        {
            return PlayerView.Nothing(player.Name, squad);
        }

        var results = await services.GetRequiredService<TestResultStore>().ListAsync(link.SquadId, link.PlayerId, cancel);
        var today = now.InZone(published.Zone).LocalDateTime;
        var health = answer ?? (HealthQuestions.AreDue(squad.AgeGroup, player.AsksHealthQuestions, player.HealthSettledOn, today.Date) ? HealthAnswer.Due : HealthAnswer.Settled);
        var told = await services.GetRequiredService<GuardianStore>().IsToldAsync(link.SquadId, link.PlayerId, cancel);
        return PlayerView.Of(player.Name, squad, published, today, new PlayerNumbers(player.BirthYear, player.GrowingFastSince is not null, [.. results.Select(r => r.Result)]), health) with { DecidesAlone = told };
    }
}
