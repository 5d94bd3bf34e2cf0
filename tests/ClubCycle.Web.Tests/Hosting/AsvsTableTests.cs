using System.Text.RegularExpressions;

namespace ClubCycle.Web.Tests.Hosting;

/// <summary>docs/asvs.md against the list of requirements and the tests that it names.</summary>
public sealed partial class AsvsTableTests
{
    private static readonly string[] Verdicts = ["met", "deviation", "not applicable"];

    private static readonly string Root = RootOf(AppContext.BaseDirectory);
    private static readonly string Page = File.ReadAllText(Path.Combine(Root, "docs", "asvs.md"));

    private static readonly IReadOnlyList<Row> Rows =
        [.. RowLine().Matches(Page).Select(m => new Row(m.Groups[1].Value, m.Groups[2].Value, m.Groups[3].Value.Trim(), m.Groups[4].Value.Trim(), m.Groups[5].Value.Trim()))];

    private sealed record Row(string Id, string Level, string What, string Verdict, string How);

    [Fact]
    public void The_list_holds_70_requirements_of_level_1_and_183_of_level_2() =>
        Assert.Equal((70, 183), (Required().Count(r => r.Level == "1"), Required().Count(r => r.Level == "2")));

    [Fact]
    public void Every_requirement_has_one_row_with_its_level_in_the_order_of_the_list() =>
        Assert.Equal(Required(), Rows.Select(row => (row.Id, row.Level)));

    [Fact]
    public void Every_row_says_what_it_is_about() => Assert.Empty(Rows.Where(row => row.What.Length < 3).Select(row => row.Id));

    [Fact]
    public void Every_verdict_is_one_of_three() => Assert.Empty(Rows.Where(row => !Verdicts.Contains(row.Verdict)).Select(row => $"{row.Id}: {row.Verdict}"));

    [Fact]
    public void No_row_is_left_open() => Assert.Empty(OpenRow().Matches(Page).Select(m => m.Value));

    [Fact]
    public void Whatever_is_met_names_a_test() => Assert.Empty(Rows.Where(row => row.Verdict == "met" && !TestName().IsMatch(row.How)).Select(row => row.Id));

    [Fact]
    public void Every_test_that_is_named_exists()
    {
        var methods = Directory.EnumerateFiles(Path.Combine(Root, "tests"), "*Tests.cs", SearchOption.AllDirectories)
            .SelectMany(file => TestMethod().Matches(File.ReadAllText(file)).Select(m => (Path.GetFileNameWithoutExtension(file), m.Groups[1].Value))).ToHashSet();

        Assert.Empty(TestName().Matches(Page).Select(m => (m.Groups[1].Value, m.Groups[2].Value)).Where(test => !methods.Contains(test)).Select(test => $"{test.Item1}.{test.Item2}"));
    }

    [Fact]
    public void Whatever_is_not_met_says_why() => Assert.Empty(Rows.Where(row => row.Verdict != "met" && row.How.Split(' ').Length < 3).Select(row => row.Id));

    [Fact]
    public void Every_deviation_says_why_and_then_what_compensates() =>
        Assert.Empty(Rows.Where(row => row.Verdict == "deviation" && !(row.How.Split("Compensation") is [var why, var instead] && Words(why) >= 3 && Words(instead) >= 3)).Select(row => row.Id));

    [Theory]
    [InlineData("met")]
    [InlineData("deviation")]
    [InlineData("not applicable")]
    public void The_counts_at_the_top_are_right(string verdict)
    {
        var (one, two) = (Rows.Count(row => row.Verdict == verdict && row.Level == "1"), Rows.Count(row => row.Verdict == verdict && row.Level == "2"));

        Assert.Contains($"\n| {verdict} | {one} | {two} | {one + two} |\n", Page, StringComparison.Ordinal);
    }

    private static int Words(string text) => text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length;

    private static IEnumerable<(string Id, string Level)> Required() =>
        from line in File.ReadLines(Path.Combine(Root, "tests", "ClubCycle.Web.Tests", "Hosting", "asvs-5.0.0.txt"))
        where !line.StartsWith('#')
        let parts = line.Split(' ')
        from last in parts.Skip(2)
        select ($"{parts[1]}.{last}", parts[0]);

    private static string RootOf(string folder) =>
        File.Exists(Path.Combine(folder, "ClubCycle.sln")) ? folder : RootOf(Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("The tests do not run below ClubCycle.sln"));

    [GeneratedRegex(@"^\| ([0-9]+\.[0-9]+\.[0-9]+) \| ([0-9]) \|([^|]*)\|([^|]*)\|([^|]*)\|$", RegexOptions.Multiline)]
    private static partial Regex RowLine();

    [GeneratedRegex(@"^\|.*\| open \|.*$", RegexOptions.Multiline)]
    private static partial Regex OpenRow();

    [GeneratedRegex(@"`(\w+Tests)\.(\w+)`")]
    private static partial Regex TestName();

    [GeneratedRegex(@"\[(?:Fact|Theory)[^\n]*\n(?:\s*\[[^\n]*\n|\s*//[^\n]*\n)*\s*public (?:async )?\w+ (\w+)\(")]
    private static partial Regex TestMethod();
}
