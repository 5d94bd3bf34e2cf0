using System.Diagnostics;

namespace ClubCycle.Mutants;

/// <summary>A copy of the built tests whose planning assembly can be replaced.</summary>
internal sealed class TestFolder : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("clubcycle-mutants-").FullName;

    public TestFolder(string tests)
    {
        foreach (var file in Directory.EnumerateFiles(tests))
        {
            File.Copy(file, Path.Combine(_folder, Path.GetFileName(file)));
        }

        foreach (var folder in Directory.EnumerateDirectories(tests))
        {
            Directory.CreateSymbolicLink(Path.Combine(_folder, Path.GetFileName(folder)), folder);
        }
    }

    /// <param name="limit">For each stage.</param>
    public async Task<Fate> Run(byte[] planning, Area area, TimeSpan limit)
    {
        await File.WriteAllBytesAsync(Path.Combine(_folder, "ClubCycle.Planning.dll"), planning);
        foreach (var tests in area.Stages)
        {
            if (await Run(tests, limit) is not Fate.Survived and var fate)
            {
                return fate;
            }
        }

        return Fate.Survived;
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    /// <summary>The random plans are the same each time; the properties of single functions take other values.</summary>
    private async Task<Fate> Run(string[] tests, TimeSpan limit)
    {
        string[] arguments = [Path.Combine(_folder, "ClubCycle.Planning.Tests.dll"), "-stopOnFail", "-noColor", .. tests.SelectMany(name => new[] { "-method", name })];
        using var process = new Process { StartInfo = new("dotnet", arguments) { RedirectStandardOutput = true, RedirectStandardError = true } };
        process.StartInfo.Environment["CLUBCYCLE_CASES"] = "20";
        process.StartInfo.Environment["CLUBCYCLE_SEED"] = "1";
        process.StartInfo.Environment["DOTNET_TieredPGO"] = "0";
        process.StartInfo.Environment.Remove("CLUBCYCLE_WRITE_GOLDENS");
        process.Start();
        process.BeginErrorReadLine();
        process.BeginOutputReadLine();
        using var timer = new CancellationTokenSource(limit);
        try
        {
            await process.WaitForExitAsync(timer.Token);
        }
        catch (OperationCanceledException)
        {
            process.Kill(entireProcessTree: true);
            await process.WaitForExitAsync(CancellationToken.None);
            return Fate.TimedOut;
        }

        return process.ExitCode == 0 ? Fate.Survived : Fate.Killed;
    }
}
