using System.Text.RegularExpressions;

namespace ClubCycle.Web.Tests.Hosting;

/// <summary>docs/abuse-cases.md against the tests that it names.</summary>
public sealed partial class AbuseCaseTests
{
    private static readonly string Root = RootOf(AppContext.BaseDirectory);
    private static readonly string Page = File.ReadAllText(Path.Combine(Root, "docs", "abuse-cases.md"));
    private static readonly IReadOnlyList<(string Number, string Shown)> Rows = [.. RowLine().Matches(Page).Select(m => (m.Groups[1].Value, m.Groups[2].Value))];

    [Fact]
    public void There_are_thirty_cases_in_their_order() => Assert.Equal(Enumerable.Range(1, 30).Select(n => $"{n}"), Rows.Select(r => r.Number));

    [Fact]
    public void Each_case_names_a_test_or_is_looked_at_by_hand_or_open() =>
        Assert.DoesNotContain(Rows, r => !TestName().IsMatch(r.Shown) && r.Shown.Trim() is not ("manual" or "open"));

    [Fact]
    public void Every_test_that_is_named_exists()
    {
        var methods = Directory.EnumerateFiles(Path.Combine(Root, "tests"), "*Tests.cs", SearchOption.AllDirectories)
            .SelectMany(file => TestMethod().Matches(File.ReadAllText(file)).Select(m => $"{Path.GetFileNameWithoutExtension(file)}.{m.Groups[1].Value}")).ToHashSet();

        Assert.DoesNotContain(TestName().Matches(Page).Select(m => m.Groups[1].Value), test => !methods.Contains(test));
    }

    /// <summary>Case 21: where nothing is fetched, nobody can say what. The health command asks the server that the command line names.</summary>
    [Fact]
    public void Nothing_in_the_source_fetches_an_address() =>
        Assert.Empty(
            from file in Directory.EnumerateFiles(Path.Combine(Root, "src"), "*.*", SearchOption.AllDirectories)
            where Path.GetExtension(file) is ".cs" or ".razor" && !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal)
            where Path.GetFileName(file) != "HealthCommand.cs" && Fetches().IsMatch(File.ReadAllText(file))
            select Path.GetRelativePath(Root, file));

    private static string RootOf(string folder) =>
        File.Exists(Path.Combine(folder, "ClubCycle.sln")) ? folder : RootOf(Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("The tests do not run below ClubCycle.sln"));

    [GeneratedRegex(@"^\| ([0-9]+) \|[^|]*\|[^|]*\|([^|]*)\|$", RegexOptions.Multiline)]
    private static partial Regex RowLine();

    [GeneratedRegex(@"`(\w+Tests\.\w+)`")]
    private static partial Regex TestName();

    [GeneratedRegex(@"\[(?:Fact|Theory)[^\n]*\n(?:\s*\[[^\n]*\n|\s*//[^\n]*\n)*\s*public (?:async )?\w+ (\w+)\(")]
    private static partial Regex TestMethod();

    [GeneratedRegex(@"\b(HttpClient|IHttpClientFactory|WebClient|WebRequest|HttpRequestMessage|ClientWebSocket)\b")]
    private static partial Regex Fetches();
}
