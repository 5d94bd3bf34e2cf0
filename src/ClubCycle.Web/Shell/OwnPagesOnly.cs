using Microsoft.Net.Http.Headers;

namespace ClubCycle.Web.Shell;

/// <summary>A live page is opened by our own pages only: browsers let any site start a WebSocket, cookies and all.</summary>
internal static class OwnPagesOnly
{
    public static Task CheckAsync(HttpContext http, RequestDelegate next)
    {
        if (!http.Request.Path.StartsWithSegments("/_blazor") || IsOwn(http.Request))
        {
            return next(http);
        }

        http.Response.StatusCode = StatusCodes.Status403Forbidden;
        return Task.CompletedTask;
    }

    // Scripts cannot write either header. The first needs no knowledge of our name behind a proxy, but is sent over https or to this machine only.
    private static bool IsOwn(HttpRequest request) => request.Headers["Sec-Fetch-Site"].ToString() switch
    {
        "" => request.Headers[HeaderNames.Origin].ToString() is var origin
            && (origin.Length == 0 || (Uri.TryCreate(origin, UriKind.Absolute, out var from) && new HostString(from.Authority) == request.Host)),
        var site => site is "same-origin" or "none",
    };
}
