using System.Net;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.Options;
using Microsoft.Net.Http.Headers;

namespace ClubCycle.Web.Hosting;

/// <summary>Whether other machines are answered in the clear, settings <c>Https:…</c>.</summary>
public sealed class HttpsSettings
{
    public const string Section = "Https";

    /// <summary>Answers other machines over plain http, so that whoever is on the way reads passwords and the secrets of links. For trying it out in a network of one's own.</summary>
    public bool AllowPlain { get; set; }

    /// <summary>Tells browsers that came by https to come by nothing else for two years, subdomains too.</summary>
    public bool Hsts { get; set; } = true;
}

/// <summary>
/// Over plain http only this machine is answered. Pages lead on to https where there is one; what hangs on a secret address does not, so that a wrong address is
/// noticed at once and does not give its secret away with each poll.
/// </summary>
internal sealed class HttpsOnly(RequestDelegate next, IOptions<HttpsSettings> settings, IOptions<TrustedProxies> proxies, IServer server)
{
    /// <summary>Asked for by programs, which must not learn to begin in the clear.</summary>
    private static readonly PathString[] ForPrograms = ["/api", "/openapi", "/_blazor"];

    public Task InvokeAsync(HttpContext http)
    {
        if (http.Request.IsHttps || settings.Value.AllowPlain || IsThisMachine(http.Connection.RemoteIpAddress) || http.Request.Path.StartsWithSegments("/health"))
        {
            return next(http);
        }

        http.Response.Headers.CacheControl = "no-store";
        http.Response.Headers.ContentSecurityPolicy = "default-src 'none'; frame-ancestors 'none'";
        http.Response.Headers.XContentTypeOptions = "nosniff";
        if (SecretAddresses.Is(http.Request.Path))
        {
            http.Response.StatusCode = StatusCodes.Status404NotFound;
            return Task.CompletedTask;
        }

        if (PortOfHttps() is { } port && (HttpMethods.IsGet(http.Request.Method) || HttpMethods.IsHead(http.Request.Method)) && !ForPrograms.Any(one => http.Request.Path.StartsWithSegments(one, StringComparison.OrdinalIgnoreCase)))
        {
            var host = port == 443 ? new HostString(http.Request.Host.Host) : new HostString(http.Request.Host.Host, port);
            http.Response.StatusCode = StatusCodes.Status307TemporaryRedirect;
            http.Response.Headers[HeaderNames.Location] = $"https://{host}{http.Request.PathBase}{http.Request.Path}{http.Request.QueryString}";
            return Task.CompletedTask;
        }

        http.Response.StatusCode = StatusCodes.Status403Forbidden;
        return http.Response.WriteAsync("Other machines are answered over https only. Put a proxy with TLS in front and name it in Proxies__Trusted (docs/operations.md).", http.RequestAborted);
    }

    /// <summary>Nobody, when there is no network in between.</summary>
    private static bool IsThisMachine(IPAddress? from) => from is null || IPAddress.IsLoopback(from);

    /// <summary>Where https is: at a trusted proxy, or at an address of our own; null when nowhere.</summary>
    private int? PortOfHttps() =>
        proxies.Value.Any ? 443
        : server.Features.Get<IServerAddressesFeature>()?.Addresses.Select(BindingAddress.Parse).FirstOrDefault(address => address.Scheme == Uri.UriSchemeHttps)?.Port;
}
