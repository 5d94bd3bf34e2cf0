using System.Security.Claims;

namespace ClubCycle.Web.Hosting;

/// <summary>Whose request something was logged in. A scope of every message below it; a live page's is the request that opened it.</summary>
internal sealed class RequestMark(HttpContext http)
{
    private HttpContext? _http = http;
    private string? _person;

    public string Request { get; } = http.TraceIdentifier;

    /// <summary>The id of who is signed in; null for strangers.</summary>
    public string? Person => _http is { } open ? IdOf(open.User) : _person;

    public static async Task AddAsync(HttpContext http, RequestDelegate next)
    {
        RequestMark mark = new(http);
        using (http.RequestServices.GetRequiredService<ILogger<RequestMark>>().BeginScope(mark))
        {
            try
            {
                await next(http);
            }
            finally
            {
                // What goes on in the background keeps the mark; the request is somebody else's soon.
                (mark._person, mark._http) = (IdOf(http.User), null);
            }
        }
    }

    public static RequestMark? Of(IExternalScopeProvider? scopes)
    {
        Found found = new();
        scopes?.ForEachScope(static (scope, found) => found.Mark = scope as RequestMark ?? found.Mark, found);
        return found.Mark;
    }

    private static string? IdOf(ClaimsPrincipal person) => person.FindFirstValue(ClaimTypes.NameIdentifier);

    private sealed class Found
    {
        public RequestMark? Mark { get; set; }
    }
}
