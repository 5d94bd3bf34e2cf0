using System.Net;
using ClubCycle.Web.Shell;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Net.Http.Headers;

namespace ClubCycle.Web.Tests.Shell;

public sealed class ShellTests : IAsyncLifetime
{
    private readonly WebApplication _app = Build();

    private static CancellationToken Cancel => Xunit.TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => await _app.StartAsync(Cancel);

    public async ValueTask DisposeAsync() => await _app.DisposeAsync();

    [Fact]
    public async Task A_mistyped_address_gets_a_page_that_says_so()
    {
        var answer = await GetAsync("/no/such/screen");

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Contains("There is nothing here", await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/p/gone")]
    [InlineData("/api/v1/gone")]
    public async Task Phones_and_programs_get_a_bare_status(string address)
    {
        var answer = await GetAsync(address);

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Empty(await answer.Content.ReadAsByteArrayAsync(Cancel));
    }

    [Fact]
    public async Task Static_pages_allow_no_inline_style_or_script()
    {
        var policy = Policy(await GetAsync("/not-found"));

        Assert.Equal("'self'", policy["style-src"]);
        Assert.Equal("'self'", policy["script-src"]);
        Assert.Equal("'none'", policy["frame-ancestors"]);
        Assert.Equal("'none'", policy["default-src"]);
    }

    [Fact]
    public async Task Static_pages_carry_neither_a_live_connection_nor_inline_style()
    {
        var html = await (await GetAsync("/not-found")).Content.ReadAsStringAsync(Cancel);

        Assert.DoesNotContain("blazor.web", html, StringComparison.Ordinal);
        Assert.DoesNotContain("MudBlazor", html, StringComparison.Ordinal);
        Assert.DoesNotContain("style=", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<style", html, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/not-found", "same-origin")]
    [InlineData("/p/gone", "no-referrer")]
    public async Task Secret_addresses_are_not_passed_on(string address, string referrers) =>
        Assert.Equal(referrers, Assert.Single((await GetAsync(address)).Headers.GetValues("Referrer-Policy")));

    [Fact]
    public async Task Pages_are_not_kept_by_the_browser_or_guessed_at()
    {
        var answer = await GetAsync("/not-found");

        Assert.True(answer.Headers.CacheControl!.NoStore);
        Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
    }

    [Theory]
    [InlineData("dark", "data-theme=\"dark\"")]
    [InlineData("light", "data-theme=\"light\"")]
    public async Task A_chosen_theme_is_in_the_first_byte_of_the_page(string chosen, string written) =>
        Assert.Contains($"<html lang=\"en\" {written}>", await PageWithThemeAsync(chosen), StringComparison.Ordinal);

    [Fact]
    public async Task A_theme_we_do_not_know_is_ignored() =>
        Assert.Contains("<html lang=\"en\">", await PageWithThemeAsync("neon"), StringComparison.Ordinal);

    private static WebApplication Build()
    {
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions { ApplicationName = typeof(App).Assembly.GetName().Name, EnvironmentName = "Production" });
        builder.Logging.ClearProviders();
        builder.WebHost.UseTestServer();
        builder.Services.AddDataProtection().UseEphemeralDataProtectionProvider();
        builder.Services.AddShell();
        builder.Services.AddAuthorization();
        var app = builder.Build();
        app.UseShell();
        app.UseAuthorization();
        app.MapShell();
        return app;
    }

    private Task<HttpResponseMessage> GetAsync(string address) => _app.GetTestClient().GetAsync(new Uri(address, UriKind.Relative), Cancel);

    private async Task<string> PageWithThemeAsync(string theme)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/not-found");
        request.Headers.Add(HeaderNames.Cookie, $"{ThemeCookie.Name}={theme}");
        return await (await _app.GetTestClient().SendAsync(request, Cancel)).Content.ReadAsStringAsync(Cancel);
    }

    private static Dictionary<string, string> Policy(HttpResponseMessage answer) =>
        Assert.Single(answer.Headers.GetValues("Content-Security-Policy"))
            .Split(';', StringSplitOptions.TrimEntries)
            .Select(directive => directive.Split(' ', 2))
            .ToDictionary(parts => parts[0], parts => parts[1]);
}
