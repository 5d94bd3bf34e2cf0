using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace ClubCycle.Benchmarks;

/// <summary>The least that can answer: Kestrel as the app sets it, and nothing in front. Who knows a tag gets a bare status, all others the bytes of a file under the headers of a feed.</summary>
internal static class BareServer
{
    public static async Task RunAsync(string address, string file, string etag, string lastModified)
    {
        var bytes = await File.ReadAllBytesAsync(file);
        var builder = WebApplication.CreateBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls(address).ConfigureKestrel(server => server.AddServerHeader = false);
        var app = builder.Build();
        app.Run(async http =>
        {
            if (http.Request.Headers.IfNoneMatch.Count > 0)
            {
                http.Response.StatusCode = StatusCodes.Status304NotModified;
                return;
            }

            var headers = http.Response.Headers;
            headers.CacheControl = "private, no-cache";
            headers.ETag = etag;
            headers.LastModified = lastModified;
            headers.Vary = "Accept-Encoding";
            headers["Referrer-Policy"] = "no-referrer";
            headers["X-Robots-Tag"] = "noindex, nofollow";
            headers.XContentTypeOptions = "nosniff";
            headers.ContentSecurityPolicy = "default-src 'none'; sandbox";
            headers.ContentType = "text/calendar; charset=utf-8";
            headers.ContentLength = bytes.Length;
            headers.ContentEncoding = "gzip";
            await http.Response.BodyWriter.WriteAsync(bytes);
        });
        await app.RunAsync();
    }
}
