using System.Security.Cryptography;
using ClubCycle.Web.Features.Guardian;
using Microsoft.AspNetCore.Components.Endpoints;
using Microsoft.AspNetCore.Components.Routing;
using Microsoft.Net.Http.Headers;

namespace ClubCycle.Web.Shell;

/// <summary>What browsers may do with our answers. Pages are strict; screens must let MudBlazor set inline styles.</summary>
internal static class SecurityHeaders
{
    private const string NonceKey = "clubcycle.nonce";

    /// <summary>The request's one-time word that allows the import map, the only inline script there is.</summary>
    public static string Nonce(HttpContext request)
    {
        if (request.Items[NonceKey] is not string nonce)
        {
            request.Items[NonceKey] = nonce = Convert.ToBase64String(RandomNumberGenerator.GetBytes(18));
        }

        return nonce;
    }

    public static Task AddAsync(HttpContext request, RequestDelegate next)
    {
        request.Response.OnStarting(() =>
        {
            var headers = request.Response.Headers;
            headers.ContentSecurityPolicy = Policy(request);
            headers.XContentTypeOptions = "nosniff";
            headers.XFrameOptions = "DENY";
            // Addresses of players' and guardians' pages are secrets and must not travel on.
            headers["Referrer-Policy"] = HoldsSecret(request.Request.Path) || IsGuardians(request.Request.Path) ? "no-referrer" : "same-origin";
            headers["Cross-Origin-Opener-Policy"] = "same-origin";
            headers["Cross-Origin-Resource-Policy"] = "same-origin";
            headers["Permissions-Policy"] = "geolocation=(), camera=(), microphone=(), payment=()";
            if (headers.ContentType.ToString() is ("text/css" or "text/javascript") and var text)
            {
                headers.ContentType = text + "; charset=utf-8";
            }

            if (IsHtml(request.Response) && !IsPlayersOwn(request))
            {
                headers.CacheControl = "no-store";
            }

            return Task.CompletedTask;
        });
        return next(request);
    }

    private static string Policy(HttpContext request)
    {
        const string always = "default-src 'none'; img-src 'self' data:; font-src 'self'; connect-src 'self'; form-action 'self'; "
            + "base-uri 'self'; object-src 'none'; frame-ancestors 'none'; ";
        return IsScreen(request)
            ? always + $"script-src 'self' 'nonce-{Nonce(request)}'; style-src 'self' 'unsafe-inline'"
            : always + "script-src 'self'; style-src 'self'" + (HoldsSecret(request.Request.Path) ? "; manifest-src 'self'; worker-src 'self'" : "");
    }

    private static bool IsScreen(HttpContext request) =>
        request.GetEndpoint()?.Metadata is { } metadata
        && metadata.GetMetadata<ComponentTypeMetadata>() is not null
        && request.AcceptsInteractiveRouting();

    private static bool IsHtml(HttpResponse response) =>
        MediaTypeHeaderValue.TryParse(response.ContentType, out var type) && type.MediaType.Equals("text/html", StringComparison.OrdinalIgnoreCase);

    /// <summary>A phone keeps these for when there is no connection, and asks again each time; they say so themselves.</summary>
    private static bool IsPlayersOwn(HttpContext request) =>
        HoldsSecret(request.Request.Path) && HttpMethods.IsGet(request.Request.Method) && request.Response.StatusCode == StatusCodes.Status200OK;

    private static bool HoldsSecret(PathString path) =>
        path.StartsWithSegments("/p", StringComparison.OrdinalIgnoreCase);

    private static bool IsGuardians(PathString path) => path.StartsWithSegments(GuardianEndpoints.Path, StringComparison.OrdinalIgnoreCase);
}
