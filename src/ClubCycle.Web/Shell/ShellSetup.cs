using ClubCycle.Web.Account;
using Microsoft.AspNetCore.Components.Endpoints;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Http.Features;
using MudBlazor;
using MudBlazor.Services;

namespace ClubCycle.Web.Shell;

/// <summary>Everything that shows pages: components, static files, error pages, headers. Who may see what is set up elsewhere.</summary>
public static class ShellSetup
{
    // Phones and programs get a bare status here, never a page.
    private static readonly PathString[] NoPages = ["/p", "/g", "/api", "/health", "/_blazor"];

    public static IServiceCollection AddShell(this IServiceCollection services)
    {
        services.AddRazorComponents().AddInteractiveServerComponents();
        services.AddCascadingAuthenticationState();
        services.AddSingleton<OpenPages>();
        services.AddMudServices(options =>
        {
            options.SnackbarConfiguration.PositionClass = Defaults.Classes.Position.BottomCenter;
            options.SnackbarConfiguration.ShowTransitionDuration = 0;
            options.SnackbarConfiguration.HideTransitionDuration = 150;
            options.SnackbarConfiguration.VisibleStateDuration = 6000;
        });
        services.AddHsts(options =>
        {
            options.MaxAge = TimeSpan.FromDays(730);
            options.IncludeSubDomains = true;
        });
        return services;
    }

    /// <summary>First in the pipeline but for what needs no page: it wraps all that follows.</summary>
    public static WebApplication UseShell(this WebApplication app)
    {
        app.Use(SecurityHeaders.AddAsync);
        app.Use(OwnPagesOnly.CheckAsync);
        if (!app.Environment.IsDevelopment())
        {
            app.UseExceptionHandler("/error", createScopeForErrors: true);
        }

        app.UseStatusCodePagesWithReExecute("/not-found", "?code={0}", createScopeForStatusCodePages: true);
        app.Use((request, next) =>
        {
            if (NoPages.Any(path => request.Request.Path.StartsWithSegments(path, StringComparison.Ordinal)))
            {
                request.Features.GetRequiredFeature<IStatusCodePagesFeature>().Enabled = false;
            }

            return next(request);
        });
        return app;
    }

    /// <summary>After authentication and authorisation.</summary>
    public static WebApplication MapShell(this WebApplication app)
    {
        app.UseAntiforgery();
        app.MapStaticAssets().AllowAnonymous();
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode(options =>
            // SecurityHeaders forbids framing on every answer.
            options.ContentSecurityFrameAncestorsPolicy = null)
            .Add(OnlyShow);
        return app;
    }

    /// <summary>Forms go to addresses of their own; a page takes none, so nobody can send it a broken one.</summary>
    private static void OnlyShow(EndpointBuilder endpoint)
    {
        if (endpoint.Metadata.OfType<ComponentTypeMetadata>().Any() && endpoint.Metadata.OfType<HttpMethodMetadata>().SingleOrDefault() is { } methods)
        {
            endpoint.Metadata.Remove(methods);
            endpoint.Metadata.Add(new HttpMethodMetadata([HttpMethods.Get]));
        }
    }
}
