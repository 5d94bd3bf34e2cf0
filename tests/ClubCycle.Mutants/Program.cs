using System.Collections.Concurrent;
using System.Diagnostics;
using ClubCycle.Mutants;

const int Seed = 1;
const int Goal = 80;
var sample = int.TryParse(Environment.GetEnvironmentVariable("CLUBCYCLE_MUTANTS"), out var number) ? number : 40;
var areas = args.Length == 0 ? Area.All : [.. args.Select(name => Area.All.Single(area => area.Name == name))];

var places = Places.Here();
var source = new PlanningSource(places);
var original = source.Original();
using var one = new TestFolder(places.Tests);
using var two = new TestFolder(places.Tests);
var folders = new ConcurrentBag<TestFolder> { one, two };

var below = 0;
foreach (var area in areas)
{
    var watch = Stopwatch.StartNew();
    if (await one.Run(original, area, TimeSpan.FromMinutes(10)) != Fate.Survived)
    {
        throw new InvalidOperationException($"The tests of {area.Name} fail on the planning as it is.");
    }

    var limit = (3 * watch.Elapsed) + TimeSpan.FromSeconds(10);
    var mutants = source.Files.Where(file => file.FilePath == area.Files || file.FilePath.StartsWith(area.Files + "/", StringComparison.Ordinal)).SelectMany(Mutant.Of).ToArray();
    new Random(Seed).Shuffle(mutants);
    var chosen = mutants.AsParallel().AsOrdered().Select(mutant => (Mutant: mutant, Planning: source.With(mutant))).Where(m => m.Planning is not null).Take(sample).ToList();

    var fates = new ConcurrentDictionary<Mutant, Fate>();
    await Parallel.ForEachAsync(chosen, new ParallelOptions { MaxDegreeOfParallelism = folders.Count }, async (next, _) =>
    {
        folders.TryTake(out var folder);
        fates[next.Mutant] = await folder!.Run(next.Planning!, area, limit);
        folders.Add(folder);
    });

    foreach (var survivor in fates.Where(f => f.Value == Fate.Survived).Select(f => f.Key.ToString()).Order(StringComparer.Ordinal))
    {
        Console.WriteLine($"  survived {survivor}");
    }

    var killed = fates.Count(f => f.Value != Fate.Survived);
    var score = 100 * killed / Math.Max(1, chosen.Count);
    below += score < Goal ? 1 : 0;
    Console.WriteLine($"mutation score {area.Name}: {killed}/{chosen.Count} = {score} % ({fates.Values.Count(f => f == Fate.TimedOut)} timed out; {mutants.Length} places, {watch.Elapsed.TotalSeconds:0} s)");
}

return below == 0 ? 0 : 1;
