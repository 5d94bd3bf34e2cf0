using System.Globalization;

namespace ClubCycle.Fuzz;

/// <summary>
/// Spoiled files for one reader: <c>csv|ics|json SECONDS FINDS [SEED]</c>, or <c>csv|ics|json FILE</c> for one file again. Each file of a folder as it is: <c>csv|ics|json every FOLDER FINDS</c>.
/// The rules of repetition that a file lists with their dates: <c>rules FILE</c>. Ends with 1 when the reader broke.
/// </summary>
internal static class Program
{
    private static async Task<int> Main(string[] args)
    {
        if (args is ["rules", var list])
        {
            return await RuleList.RunAsync(list);
        }

        if (args is [var kind, "every", var folder, var broken] && Reader.Named(kind) is { } every)
        {
            return await new Fuzzing(every, seed: 0, broken).EveryAsync(Directory.EnumerateFiles(folder).Order(StringComparer.Ordinal));
        }

        if (args is [var name, var file] && Reader.Named(name) is { } one)
        {
            return await Fuzzing.OnceAsync(one, file);
        }

        if (args is not [var which, var time, var finds, .. var rest] || Reader.Named(which) is not { } reader || !int.TryParse(time, NumberStyles.None, CultureInfo.InvariantCulture, out var seconds))
        {
            await Console.Error.WriteLineAsync("Say csv, ics or json, the seconds, and the folder for what breaks the reader.");
            return 2;
        }

        var seed = rest is [var given] ? int.Parse(given, CultureInfo.InvariantCulture) : Environment.ProcessId ^ Environment.TickCount;
        return await new Fuzzing(reader, seed, finds).RunAsync(TimeSpan.FromSeconds(seconds));
    }
}
