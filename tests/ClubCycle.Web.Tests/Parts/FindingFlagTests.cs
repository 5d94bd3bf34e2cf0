using Bunit;
using ClubCycle.Planning.Rules;
using ClubCycle.Web.Parts;

namespace ClubCycle.Web.Tests.Parts;

public sealed class FindingFlagTests
{
    [Theory]
    [InlineData(Strength.Must, "must")]
    [InlineData(Strength.Should, "should")]
    [InlineData(Strength.Note, "note")]
    public async Task The_word_says_what_the_colour_repeats(Strength strength, string word)
    {
        await using var context = new BunitContext();

        var flag = context.Render<FindingFlag>(p => p.Add(c => c.Strength, strength).Add(c => c.Count, 3)).Find("span");

        Assert.Equal($"3 {word}", flag.TextContent.Trim());
        Assert.Contains($"flag-{word}", flag.ClassList);
    }

    [Fact]
    public async Task A_flag_leads_to_its_findings_when_it_is_given_an_address()
    {
        await using var context = new BunitContext();

        var link = context.Render<FindingFlag>(p => p.Add(c => c.Strength, Strength.Must).Add(c => c.Href, "check?squad=1")).Find("a");

        Assert.Equal("check?squad=1", link.GetAttribute("href"));
        Assert.Equal("must", link.TextContent.Trim());
    }
}
