using System.ComponentModel;
using System.Diagnostics;

namespace ClubCycle.Data.Embedded;

/// <summary>How a program ended, with everything it said.</summary>
/// <param name="WasFound">False when there is no such program.</param>
internal sealed record ProgramRun(int ExitCode, string Output, bool WasFound = true)
{
    public bool Succeeded => WasFound && ExitCode == 0;

    public static async Task<ProgramRun> OfAsync(string program, IEnumerable<string> arguments, string folder, CancellationToken cancel, IReadOnlyDictionary<string, string>? environment = null)
    {
        Process process;
        try
        {
            process = Start(program, arguments, folder, environment);
        }
        catch (Win32Exception missing)
        {
            return new ProgramRun(-1, missing.Message, WasFound: false);
        }

        using var running = process;

        process.StandardInput.Close();
        var output = process.StandardOutput.ReadToEndAsync(cancel);
        var errors = process.StandardError.ReadToEndAsync(cancel);
        await process.WaitForExitAsync(cancel);
        // A server started by pg_ctl may hold the pipes open on Windows: what was said so far must do.
        await Task.WhenAny(Task.WhenAll(output, errors), Task.Delay(TimeSpan.FromSeconds(2), cancel));
        return new ProgramRun(process.ExitCode, Text(output) + Text(errors));

        static string Text(Task<string> read) => read.IsCompletedSuccessfully ? read.Result : "";
    }

    /// <summary>With all three streams in our hands.</summary>
    public static Process Start(string program, IEnumerable<string> arguments, string folder, IReadOnlyDictionary<string, string>? environment = null)
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            WorkingDirectory = folder,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        // The log is read for known English sentences, and nobody's PGPORT or PGDATA may point us elsewhere.
        start.Environment["LC_ALL"] = "C";
        foreach (var name in start.Environment.Keys.Where(name => name.StartsWith("PG", StringComparison.OrdinalIgnoreCase)).ToList())
            start.Environment.Remove(name);
        foreach (var (name, value) in environment ?? new Dictionary<string, string>())
            start.Environment[name] = value;
        return Process.Start(start)!;
    }
}
