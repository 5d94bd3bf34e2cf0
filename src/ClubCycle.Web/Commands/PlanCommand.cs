using System.Text;
using ClubCycle.Calendars;
using ClubCycle.Planning;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Web.Api;

namespace ClubCycle.Web.Commands;

/// <summary>Plans one squad from a file: no server, no database, no container of services.</summary>
internal static class PlanCommand
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    public static async Task<int> RunAsync(IReadOnlyList<string> arguments, Stream input, TextWriter output, TextWriter errors)
    {
        var (source, folder, wrong) = arguments switch
        {
            [var file] when !file.StartsWith("--", StringComparison.Ordinal) => (file, (string?)null, false),
            [var file, "--out", var target] => (file, target, false),
            ["--out", var target, var file] => (file, target, false),
            _ => ("", null, true),
        };
        if (wrong)
        {
            return Say(errors, new Problem("command.usage", "Write: plan REQUEST.json [--out FOLDER]. Use - as the file to read from standard input."));
        }

        var outcome = await ReadAsync(source, input) switch
        {
            Result<string>.Ok(var json) => PlanAnswer.To(json),
            Result<string>.Failed failed => new Result<PlanAnswer>.Failed(failed.Problems),
            var other => throw new InvalidOperationException($"Unknown result {other.GetType()}"),
        };
        return outcome switch
        {
            Result<PlanAnswer>.Failed(var problems) => Say(errors, [.. problems]),
            Result<PlanAnswer>.Ok(var answer) when folder is null => Print(answer, output),
            Result<PlanAnswer>.Ok(var answer) => await WriteAsync(answer, folder, errors),
            var other => throw new InvalidOperationException($"Unknown result {other.GetType()}"),
        };
    }

    private static async Task<Result<string>> ReadAsync(string source, Stream input)
    {
        try
        {
            await using var stream = source == "-" ? input : File.OpenRead(source);
            using var reader = new StreamReader(stream, Utf8);
            return await reader.ReadToEndAsync();
        }
        catch (Exception missing) when (missing is FileNotFoundException or DirectoryNotFoundException or ArgumentException)
        {
            return new Problem("request.file-not-found", $"There is no file {source}. Check the path of the request.");
        }
        catch (Exception unreadable) when (unreadable is UnauthorizedAccessException or IOException)
        {
            return new Problem("request.file-unreadable", $"The file {source} cannot be read: {unreadable.Message} Check that it is a file you may read.");
        }
    }

    private static int Print(PlanAnswer answer, TextWriter output)
    {
        output.Write(PlanFile.WritePlan(answer.Plan));
        return ExitCode.Done;
    }

    private static async Task<int> WriteAsync(PlanAnswer answer, string folder, TextWriter errors)
    {
        try
        {
            Directory.CreateDirectory(folder);
            await File.WriteAllTextAsync(Path.Combine(folder, "plan.json"), PlanFile.WritePlan(answer.Plan), Utf8);
            await File.WriteAllTextAsync(Path.Combine(folder, "plan.ics"), CalendarOf(answer), Utf8);
            return ExitCode.Done;
        }
        catch (Exception unwritable) when (unwritable is UnauthorizedAccessException or IOException)
        {
            return Say(errors, new Problem("command.folder-not-writable", $"The plan cannot be written to {folder}: {unwritable.Message} Name another folder with --out."));
        }
    }

    /// <summary>A plan file knows no time of change, so the cycle's first day stands in: equal requests give equal bytes.</summary>
    private static string CalendarOf(PlanAnswer answer)
    {
        var stamp = answer.Plan.Cycle.Start.AtMidnight().InUtc().ToInstant();
        return IcsWriter.Write(FeedBuilder.From(answer.Plan, answer.Request.Zone, answer.Request.Squad.Name, _ => (0, stamp)));
    }

    private static int Say(TextWriter errors, params IReadOnlyList<Problem> problems)
    {
        errors.WriteLine(PlanFile.WriteProblems(problems).TrimEnd('\n'));
        return ExitCode.Problems;
    }
}
