using System.Net.Mime;
using ClubCycle.Data.Clubs;
using ClubCycle.Web.Account;
using ClubCycle.Web.Features.Board;
using ClubCycle.Web.Features.Plans;
using ClubCycle.Web.Hosting;
using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using NodaTime.Text;

namespace ClubCycle.Web.Features.Print;

/// <summary>Pages to print, with the rights of the screens that show the same. What is not there and what is not yours are answered alike.</summary>
internal static class PrintEndpoints
{
    public static void MapPrints(this IEndpointRouteBuilder app)
    {
        var print = app.MapGroup("/print").RequireAuthorization(Policies.Coach).CountAsCostly().ExcludeFromDescription();
        print.MapGet("/wall-chart.pdf", ClubAsync);
        print.MapGet("/squads/{squad:guid}/wall-chart.pdf", SquadAsync);
        print.MapGet("/squads/{squad:guid}/weeks/{day}.pdf", WeekAsync);
    }

    /// <summary>The club's chart, of the squads that a filter of the year board wants.</summary>
    public static string ClubHref(PaperSize size, BoardFilter? filter = null) => $"/print/wall-chart.pdf?size={size.Name}{filter?.Query}";

    public static string SquadHref(Guid squad, PaperSize size) => $"/print/squads/{squad}/wall-chart.pdf?size={size.Name}";

    public static string WeekHref(Guid squad, LocalDate first) => $"/print/squads/{squad}/weeks/{LocalDatePattern.Iso.Format(first)}.pdf";

    private static Task<IResult> ClubAsync(string? size, [AsParameters] BoardFilter filter, PlanActions plans, ClubStore clubs, IClock clock, PrintPress press, HttpContext http, CancellationToken cancel) =>
        PaperSize.OfChart(size) is not { } paper ? NoSuchSize() : press.RunAsync(
            async time =>
            {
                if (!(await plans.BoardAsync(null, time)).TryGet(out var board, out _))
                {
                    return TypedResults.NotFound();
                }

                var head = await HeadAsync(clubs, clock, time);
                return Pdf(http, ClubChart.Draw(paper, head, [.. board.Select(BoardSquad.Of).Where(squad => filter.Wants(squad, head.Today))], time, board.Count), $"wall-chart-{paper.Name}.pdf");
            },
            cancel);

    private static Task<IResult> SquadAsync(Guid squad, string? size, PlanActions plans, ClubStore clubs, IClock clock, PrintPress press, HttpContext http, CancellationToken cancel) =>
        PaperSize.OfChart(size) is not { } paper ? NoSuchSize() : press.RunAsync(
            async time => (await plans.DraftAsync(squad, time)).TryGet(out var draft, out _)
                ? Pdf(http, SquadChart.Draw(paper, await HeadAsync(clubs, clock, time), BoardSquad.Of(squad, draft), draft.Request.Squad.AgeGroup.Under is not <= 12, time), $"squad-year-{paper.Name}.pdf")
                : TypedResults.NotFound(),
            cancel);

    private static Task<IResult> WeekAsync(Guid squad, string day, PlanActions plans, ClubStore clubs, IClock clock, PrintPress press, HttpContext http, CancellationToken cancel) =>
        press.RunAsync(
            async time => LocalDatePattern.Iso.Parse(day).TryGetValue(default, out var date)
                && (await plans.DraftAsync(squad, time)).TryGet(out var draft, out _)
                && draft.Plan.Weeks.FirstOrDefault(w => w.First <= date && date <= w.Last) is { } week
                ? Pdf(http, WeekSheet.Draw(await HeadAsync(clubs, clock, time), draft, week, time), $"week-{LocalDatePattern.Iso.Format(week.First)}.pdf")
                : TypedResults.NotFound(),
            cancel);

    private static Task<IResult> NoSuchSize() => Task.FromResult<IResult>(TypedResults.BadRequest(PrintText.NoSuchSize));

    // Shown by the browser, which prints it; the name is for who saves it.
    private static FileContentHttpResult Pdf(HttpContext http, byte[] bytes, string name)
    {
        http.Response.Headers.CacheControl = "no-store";
        http.Response.Headers.ContentDisposition = $"inline; filename=\"{name}\"";
        return TypedResults.Bytes(bytes, MediaTypeNames.Application.Pdf);
    }

    private static async Task<PrintHead> HeadAsync(ClubStore clubs, IClock clock, CancellationToken cancel)
    {
        var club = (await clubs.FindAsync(cancel)).OrThrow();
        return new PrintHead(club.Name, clock.GetCurrentInstant(), DateTimeZoneProviders.Tzdb[club.TimeZone]);
    }
}
