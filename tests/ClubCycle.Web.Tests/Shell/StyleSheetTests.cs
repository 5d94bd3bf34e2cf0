using System.Text.RegularExpressions;

namespace ClubCycle.Web.Tests.Shell;

public sealed partial class StyleSheetTests
{
    [Fact]
    public void Static_pages_load_at_most_20_kB_of_style() =>
        Assert.InRange(new FileInfo(StyleSheet.PathOf("clubcycle.css")).Length, 1, 20_000);

    [Theory]
    [InlineData("clubcycle.css")]
    [InlineData("screens.css")]
    public void Nothing_is_fetched_from_elsewhere(string sheet)
    {
        var css = File.ReadAllText(StyleSheet.PathOf(sheet));

        Assert.DoesNotContain("@import", css, StringComparison.Ordinal);
        Assert.All(Address().Matches(css), address => Assert.Matches(@"^(\.\./fonts/|#)", address.Groups[1].Value));
    }

    [Fact]
    public void Every_variable_in_use_is_declared()
    {
        var both = File.ReadAllText(StyleSheet.PathOf("clubcycle.css")) + File.ReadAllText(StyleSheet.PathOf("screens.css"));
        var declared = Declared().Matches(both).Select(m => m.Groups[1].Value).ToHashSet();
        declared.Add("--weeks"); // set by the year board for its number of columns

        Assert.Empty(Used().Matches(both).Select(m => m.Groups[1].Value).Except(declared));
    }

    [GeneratedRegex(@"url\(""?([^"")]+)""?\)")]
    private static partial Regex Address();

    [GeneratedRegex(@"(--[a-z-]+)\s*:")]
    private static partial Regex Declared();

    [GeneratedRegex(@"var\((--[a-z-]+)")]
    private static partial Regex Used();
}
