using System.Net;

namespace ClubCycle.Web.Commands;

/// <summary>Asks a running app how it is, for containers that have no other program to ask with.</summary>
internal static class HealthCommand
{
    private const string Ready = "/health/ready";

    public static async Task<int> RunAsync(string[] arguments, TextWriter output, TextWriter errors)
    {
        var text = arguments.Length switch { 0 => $"http://127.0.0.1:{OwnPort()}{Ready}", 1 => arguments[0], _ => "" };
        if (!Uri.TryCreate(text, UriKind.Absolute, out var address) || address.Scheme is not ("http" or "https"))
        {
            await errors.WriteLineAsync($"Write: health [ADDRESS], for example health http://127.0.0.1:8080{Ready}");
            return ExitCode.Problems;
        }

        try
        {
            using var http = new HttpClient { Timeout = TimeSpan.FromSeconds(5) };
            using var answer = await http.GetAsync(address);
            await output.WriteLineAsync(answer.StatusCode == HttpStatusCode.OK ? (await answer.Content.ReadAsStringAsync()).Trim() : $"{(int)answer.StatusCode}");
            return answer.StatusCode == HttpStatusCode.OK ? ExitCode.Done : ExitCode.Failed;
        }
        catch (Exception silent) when (silent is HttpRequestException or TaskCanceledException)
        {
            await errors.WriteLineAsync($"No answer from {address}: {silent.Message}");
            return ExitCode.Failed;
        }
    }

    /// <summary>Where this container's app listens.</summary>
    private static int OwnPort() =>
        Environment.GetEnvironmentVariable("ASPNETCORE_URLS")?.Split(';')[0].Split(':')[^1].TrimEnd('/') is { } port && int.TryParse(port, System.Globalization.CultureInfo.InvariantCulture, out var number) ? number : 5080;
}
