using System.Collections.Concurrent;
using System.Globalization;
using System.Reflection;
using CsCheck;

namespace ClubCycle.Planning.Tests;

/// <summary>
/// Invariants over many random cases in one pass, because making a case costs more than looking at it. <c>CLUBCYCLE_CASES</c> says how many
/// (1,000 unless set; <c>deploy/cases.sh</c> sets it), <c>CLUBCYCLE_SEED</c> repeats a run (CI has a fixed one, so that a landing does not hang on chance); a failure names both the seed and the case.
/// </summary>
public static class Cases
{
    /// <summary>The trait of classes that have more to show where there are more cases.</summary>
    public const string Trait = "Cases";

    /// <summary>The value of <see cref="Trait"/>.</summary>
    public const string Random = "random";

    public static int Count { get; } = Number("CLUBCYCLE_CASES") is { } cases ? (int)cases : 1_000;

    public static ulong Seed { get; } = Number("CLUBCYCLE_SEED") ?? (Environment.GetEnvironmentVariable("CI") == "true" ? 20_261_125 : (ulong)System.Random.Shared.NextInt64());

    /// <summary>The names of a class's invariants: its private static methods that take the parts of one case.</summary>
    public static IEnumerable<string> Of(Type invariants) => Methods(invariants).Select(m => m.Name);

    /// <summary>The first failure of each invariant that fails.</summary>
    /// <param name="make">One case, as the invariants take it; null for a case that does not count.</param>
    public static IReadOnlyDictionary<string, string> Failures(Type invariants, Gen<object[]?> make, int share = 1)
    {
        var methods = Methods(invariants);
        ConcurrentDictionary<string, string> failures = new(StringComparer.Ordinal);
        Parallel.For(0, Math.Max(1, Count / share), new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, number =>
        {
            var one = make.Generate(new PCG((uint)number, Seed), null, out _);
            if (one is null)
            {
                return;
            }

            foreach (var method in methods)
            {
                try
                {
                    method.Invoke(null, one);
                }
                catch (TargetInvocationException failed)
                {
                    failures.TryAdd(method.Name, $"Case {number} of seed {Seed}: {failed.InnerException}");
                }
            }
        });
        return failures;
    }

    private static List<MethodInfo> Methods(Type invariants) =>
        [.. invariants.GetMethods(BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.DeclaredOnly).Where(m => m.Name.Contains('_', StringComparison.Ordinal) && !m.Name.Contains('<', StringComparison.Ordinal))];

    private static ulong? Number(string variable) => ulong.TryParse(Environment.GetEnvironmentVariable(variable), CultureInfo.InvariantCulture, out var number) ? number : null;
}
