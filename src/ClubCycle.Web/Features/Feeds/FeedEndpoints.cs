using ClubCycle.Data.Telemetry;

namespace ClubCycle.Web.Features.Feeds;

/// <summary>Where calendars poll.</summary>
internal static class FeedEndpoints
{
    public const string Path = "/calendar";

    public static IServiceCollection AddFeeds(this IServiceCollection services, IConfiguration settings)
    {
        services.AddOptionsWithValidateOnStart<FeedLimits, FeedLimits>().Bind(settings.GetSection(FeedLimits.Section));
        services.AddSingleton<KeptChanges>();
        services.AddSingleton<FeedCache>();
        services.AddSingleton<MissLimit>();
        services.AddSingleton<FeedAnswers>();
        return services;
    }

    /// <summary>Takes every request below the path, whatever its method, before anything that pages need. So a wrong one is answered here and never led to the sign-in page.</summary>
    public static void UseFeeds(this WebApplication app)
    {
        var answers = app.Services.GetRequiredService<FeedAnswers>();
        app.Use(next => http => http.Request.Path.Value is { } path && IsBelow(path) ? CountedAsync(http, answers.AnswerAsync(http, path.AsSpan(Path.Length))) : next(http));
    }

    private static Task CountedAsync(HttpContext http, Task answer)
    {
        if (!answer.IsCompletedSuccessfully)
        {
            return WaitAsync(http, answer);
        }

        ClubMeter.FeedAnswered(http.Response.StatusCode);
        return answer;
    }

    private static async Task WaitAsync(HttpContext http, Task answer)
    {
        await answer;
        ClubMeter.FeedAnswered(http.Response.StatusCode);
    }

    // In any case, so that a secret in a wrongly typed address goes nowhere else.
    private static bool IsBelow(string path) =>
        path.StartsWith(Path, StringComparison.OrdinalIgnoreCase) && (path.Length == Path.Length || path[Path.Length] == '/');
}
