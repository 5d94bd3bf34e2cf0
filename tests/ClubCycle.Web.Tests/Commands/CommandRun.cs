using System.Diagnostics;

namespace ClubCycle.Web.Tests.Commands;

/// <summary>The program as a process of its own, as a person runs it.</summary>
internal sealed record CommandRun(int ExitCode, string Output, string Errors, TimeSpan Took)
{
    public static async Task<CommandRun> OfAsync(IEnumerable<string> arguments, string input = "", IReadOnlyDictionary<string, string>? environment = null)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "ClubCycle.Web.dll"), .. arguments])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var (name, value) in environment ?? new Dictionary<string, string>())
        {
            start.Environment[name] = value;
        }

        var cancel = TestContext.Current.CancellationToken;
        var clock = Stopwatch.StartNew();
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync(cancel);
        var errors = process.StandardError.ReadToEndAsync(cancel);
        await process.StandardInput.WriteAsync(input.AsMemory(), cancel);
        process.StandardInput.Close();
        await process.WaitForExitAsync(cancel);
        return new CommandRun(process.ExitCode, await output, await errors, clock.Elapsed);
    }
}
