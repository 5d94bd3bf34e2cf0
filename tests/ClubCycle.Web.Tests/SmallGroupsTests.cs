using System.Text.RegularExpressions;
using ClubCycle.Planning.Players;

namespace ClubCycle.Web.Tests;

public sealed partial class SmallGroupsTests
{
    /// <summary>A mean or median over people would be a statistic; there is none, and a new one has to ask whether the group is large enough.</summary>
    [Fact]
    public void No_statistic_over_people_is_worked_out_without_asking_whether_they_are_enough()
    {
        var root = RootOf(AppContext.BaseDirectory);
        var files = Directory.EnumerateFiles(Path.Combine(root, "src", "ClubCycle.Data"), "*.cs", SearchOption.AllDirectories)
            .Concat(Directory.EnumerateFiles(Path.Combine(root, "src", "ClubCycle.Web"), "*.*", SearchOption.AllDirectories).Where(f => f.EndsWith(".cs", StringComparison.Ordinal) || f.EndsWith(".razor", StringComparison.Ordinal)))
            .ToList();

        Assert.True(files.Count > 200);
        Assert.DoesNotContain(files, file => File.ReadAllText(file) is var text && Statistic().IsMatch(text) && !text.Contains(nameof(SmallGroup), StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("players.Average(p => p.Effort)")]
    [InlineData("var middle = Median(results);")]
    public void A_statistic_is_recognised(string code) => Assert.Matches(Statistic(), code);

    private static string RootOf(string folder) =>
        File.Exists(Path.Combine(folder, "ClubCycle.sln")) ? folder : RootOf(Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("The tests do not run below ClubCycle.sln"));

    [GeneratedRegex(@"\.Average(Async)?\(|\bMedian|Percentile|StandardDeviation|\bavg\(", RegexOptions.IgnoreCase)]
    private static partial Regex Statistic();
}
