using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;

namespace ClubCycle.Fuzz;

/// <summary>
/// Spoils files until the time is over. Files whose answer is of a new kind are spoiled further. A reader breaks when it throws, gives a value that no store could take, or
/// needs more than <see cref="Patience"/> of processor time.
/// </summary>
internal sealed class Fuzzing(Reader reader, int seed, string finds)
{
    private const int Most = 400;

    private static readonly TimeSpan Patience = TimeSpan.FromMilliseconds(200);
    private static readonly TimeSpan Endless = TimeSpan.FromSeconds(30);

    private readonly Random _random = new(seed);
    private readonly List<byte[]> _files = [.. reader.Corpus()];
    private readonly HashSet<string> _kinds = [];
    private readonly HashSet<string> _broken = [];
    private long _since = Stopwatch.GetTimestamp();
    private TimeSpan _slowest;

    private string Now => Path.Combine(finds, "now");

    public static async Task<int> OnceAsync(Reader reader, string file)
    {
        var bytes = await File.ReadAllBytesAsync(file);
        var (answer, took) = await TimedAsync(reader, bytes);
        Console.WriteLine($"{took.TotalMilliseconds:0} ms: {answer}");
        return took > Patience ? 1 : 0;
    }

    /// <summary>Files of others as they are.</summary>
    public async Task<int> EveryAsync(IEnumerable<string> files)
    {
        await WarmUpAsync();
        using var watch = new Timer(_ => EndIfEndless(), null, Endless, TimeSpan.FromSeconds(1));
        var read = 0;
        foreach (var file in files)
        {
            await TryAsync(await File.ReadAllBytesAsync(file));
            read++;
        }

        Told($"{read} files");
        return read > 0 && _broken.Count == 0 ? 0 : 1;
    }

    public async Task<int> RunAsync(TimeSpan time)
    {
        Console.WriteLine($"{reader.Name}: seed {seed}, {_files.Count} files to start from");
        await WarmUpAsync();
        var spoiling = new Spoiling(_random, reader.Words);
        using var watch = new Timer(_ => EndIfEndless(), null, Endless, TimeSpan.FromSeconds(1));
        var inputs = 0;
        for (var from = Stopwatch.StartNew(); from.Elapsed < time; inputs++)
        {
            var file = spoiling.Spoil(_files[_random.Next(_files.Count)], _files);
            if (await TryAsync(file) && _files.Count < Most)
            {
                _files.Add(file);
            }
        }

        Told($"{inputs} spoiled files");
        return _broken.Count == 0 ? 0 : 1;
    }

    /// <summary>What is loaded and compiled by its end is not counted as anybody's slowness.</summary>
    private async Task WarmUpAsync()
    {
        Directory.CreateDirectory(finds);
        foreach (var file in _files.ToList())
        {
            await TryAsync(file);
        }

        _slowest = TimeSpan.Zero;
    }

    private void Told(string files)
    {
        File.Delete(Now);
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{reader.Name}: {files}, {_kinds.Count} kinds of answer, slowest {_slowest.TotalMilliseconds:0} ms of processor time, {Process.GetCurrentProcess().PeakWorkingSet64 / 1_000_000} MB at most, {_broken.Count} broke the reader (seed {seed})"));
    }

    /// <summary>True for an answer of a new kind.</summary>
    private async Task<bool> TryAsync(byte[] file)
    {
        // Whatever ends this process leaves the file behind.
        await File.WriteAllBytesAsync(Now, file);
        Interlocked.Exchange(ref _since, Stopwatch.GetTimestamp());
        try
        {
            var (answer, took) = await TimedAsync(reader, file);

            // A collection or the compiler may have come between.
            for (var again = 0; took > Patience && again < 4; again++)
            {
                took = TimeSpan.FromTicks(Math.Min(took.Ticks, (await TimedAsync(reader, file)).Took.Ticks));
            }

            _slowest = took > _slowest ? took : _slowest;
            if (took > Patience)
            {
                Keep(file, $"slow {reader.Name}", $"took {took.TotalMilliseconds:0} ms");
            }

            return _kinds.Add(answer);
        }
        catch (Exception broken)
        {
            Keep(file, broken.GetType().Name + broken.StackTrace?.Split('\n')[0], broken.ToString());
            return false;
        }
    }

    private static async Task<(string Answer, TimeSpan Took)> TimedAsync(Reader reader, byte[] file)
    {
        var from = Environment.CpuUsage.TotalTime;
        var answer = await reader.Answer(file);
        return (answer, Environment.CpuUsage.TotalTime - from);
    }

    private void Keep(byte[] file, string kind, string what)
    {
        if (_broken.Add(kind))
        {
            var name = Path.Combine(finds, Convert.ToHexStringLower(SHA256.HashData(file)[..6]));
            File.WriteAllBytes(name, file);
            Console.WriteLine($"{reader.Name}: BROKEN by {name}: {what}");
        }
    }

    private void EndIfEndless()
    {
        if (Stopwatch.GetElapsedTime(Interlocked.Read(ref _since)) > Endless)
        {
            Console.WriteLine($"{reader.Name}: BROKEN by {Now}: no answer within {Endless.TotalSeconds:0} s (seed {seed})");
            Environment.Exit(1);
        }
    }
}
