using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;

namespace ClubCycle.Benchmarks;

/// <summary>The load generator wrk: one thread, 64 connections.</summary>
internal static partial class Wrk
{
    /// <returns>Requests a second. Throws when any answer was an error.</returns>
    public static async Task<double> RunAsync(string address, int seconds, IReadOnlyList<string> headers, string? script = null)
    {
        List<string> arguments = ["-t1", "-c64", $"-d{seconds.ToString(CultureInfo.InvariantCulture)}s", .. headers.SelectMany(h => new[] { "-H", h })];
        if (script is not null)
        {
            arguments.AddRange(["-s", script]);
        }

        using var wrk = Process.Start(new ProcessStartInfo("wrk", [.. arguments, address]) { RedirectStandardOutput = true })!;
        var told = await wrk.StandardOutput.ReadToEndAsync();
        await wrk.WaitForExitAsync();
        return !told.Contains("Non-2xx", StringComparison.Ordinal) && !told.Contains("Socket errors", StringComparison.Ordinal) && RequestsPerSecond().Match(told) is { Success: true } figure
            ? double.Parse(figure.Groups[1].ValueSpan, CultureInfo.InvariantCulture)
            : throw new InvalidOperationException($"wrk on {address} told:\n{told}");
    }

    [GeneratedRegex(@"Requests/sec:\s+([\d.]+)")]
    private static partial Regex RequestsPerSecond();
}
