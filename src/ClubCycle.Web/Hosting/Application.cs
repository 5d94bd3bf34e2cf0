using ClubCycle.Data;
using ClubCycle.Web.Account;
using ClubCycle.Web.Api;
using ClubCycle.Web.Features;
using ClubCycle.Web.Features.Feeds;
using ClubCycle.Web.Features.Guardian;
using ClubCycle.Web.Features.Notices;
using ClubCycle.Web.Features.Outbox;
using ClubCycle.Web.Features.Player;
using ClubCycle.Web.Features.Players;
using ClubCycle.Web.Features.Print;
using ClubCycle.Web.Features.Templates;
using ClubCycle.Web.Features.Welfare;
using ClubCycle.Web.Shell;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.Extensions.Options;
using NodaTime;

namespace ClubCycle.Web.Hosting;

/// <summary>What the web app is made of, and the order in which a request passes through it.</summary>
internal static class Application
{
    public static void AddClubCycle(this WebApplicationBuilder builder, string connectionString, IClock clock)
    {
        builder.Logging.AddQuietConsole(builder.Configuration);
        builder.AddTelemetry();
        builder.WebHost.ConfigureKestrel(server => server.AddServerHeader = false);

        // Style sheets and scripts are found when the build output runs as it is, too.
        builder.WebHost.UseStaticWebAssets();

        // Style sheets go out packed as the build packed them, but for while they are being worked on.
        builder.Configuration["ReloadStaticAssetsAtRuntime"] ??= builder.Environment.IsDevelopment() ? "true" : "false";
        builder.Services.AddSingleton(clock);
        builder.Services.AddClubCycleData(connectionString);
        builder.Services.AddOptionsWithValidateOnStart<TrustedProxies, TrustedProxies>().Bind(builder.Configuration.GetSection(TrustedProxies.Section));
        builder.Services.AddOptionsWithValidateOnStart<CostlyLimits, CostlyLimits>().Bind(builder.Configuration.GetSection(CostlyLimits.Section));
        builder.Services.AddSingleton<CostlyWork>();
        builder.Services.AddSingleton<OnceAMinute>();
        builder.Services.AddOptions<HttpsSettings>().Bind(builder.Configuration.GetSection(HttpsSettings.Section)).ValidateOnStart();
        builder.Services.AddResponseCompression(options => options.EnableForHttps = true);
        builder.Services.AddShell();
        builder.Services.AddLanguages();
        builder.Services.AddAccounts(builder.Configuration);
        builder.Services.AddScreens();
        builder.Services.AddNotices(builder.Configuration);
        builder.Services.AddFeeds(builder.Configuration);
        builder.Services.AddPlayerPage();
        builder.Services.AddSingleton<IOutboxWork, RenderFeeds>();
        builder.Services.AddHostedService<OutboxWorker>();
        builder.Services.AddHostedService<RetentionWorker>();
        builder.Services.AddHostedService<BackupWatch>();
        builder.Services.AddOptions<StopSettings>().Bind(builder.Configuration.GetSection(StopSettings.Section))
            .Validate(stop => stop.DrainSeconds is >= 0 and <= StopSettings.Most, $"Stop__DrainSeconds is not a number from 0 to {StopSettings.Most}. Write how many seconds a node goes on answering that is told to stop.").ValidateOnStart();
        builder.Services.AddSingleton<Drain>();
        builder.Services.AddSingleton<IHostLifetime>(services => services.GetRequiredService<Drain>());
        builder.Services.AddHealth();
        builder.Services.AddOpenApi("v1");
    }

    public static void UseClubCycle(this WebApplication app)
    {
        TrustedProxies.Use(app);
        if (!app.Environment.IsDevelopment() && app.Services.GetRequiredService<IOptions<HttpsSettings>>().Value.Hsts)
        {
            app.UseHsts();
        }

        app.UseMiddleware<HttpsOnly>();
        app.UseFeeds();
        app.Use(RequestMark.AddAsync);

        // The year board is the largest page and holds no lasting secret. Others may: packed together with what an address brings along, their length would tell.
        app.UseWhen(http => http.Request.Path == "/", board => board.UseResponseCompression());
        app.UseShell();
        app.UsePlayerPage();
        app.Use(ShowErrorPages);
        app.Use(NoTrace);
        app.Use(OncePerName.CheckAsync);

        // Said aloud, so that an error page that the shell asks for is routed again.
        app.UseRouting();
        app.UseSetupRedirect();
        app.UseRateLimiter();
        app.UseAuthentication();
        app.UseRequestLocalization();
        app.UseAuthorization();
        app.UseAuthenticationStateOfRequest();
        app.UseClubOfRequest();
        app.UseSecondFactorDuty();

        app.MapShell();
        app.MapHealth();
        app.MapOpenApi().RequireAuthorization(Policies.Coach);
        app.MapPlanApi();
        app.MapAccount();
        app.MapLanguages();
        app.MapPlayerPage();
        app.MapGuardianPage();
        app.MapTemplateFiles();
        app.MapPersonFiles();
        app.MapPrints();
    }

    /// <summary>Nobody needs to see what arrived here.</summary>
    private static Task NoTrace(HttpContext http, RequestDelegate next)
    {
        if (!HttpMethods.IsTrace(http.Request.Method))
        {
            return next(http);
        }

        http.Response.StatusCode = StatusCodes.Status405MethodNotAllowed;
        return Task.CompletedTask;
    }

    /// <summary>An error page is fetched, whatever was sent before: the form that failed must not be judged once more.</summary>
    private static Task ShowErrorPages(HttpContext http, RequestDelegate next)
    {
        if (http.Features.Get<IStatusCodeReExecuteFeature>() is not null || http.Features.Get<IExceptionHandlerFeature>() is not null)
        {
            http.Request.Method = HttpMethods.Get;

            // It was routed with the method that failed.
            http.SetEndpoint(null);
        }

        return next(http);
    }
}
