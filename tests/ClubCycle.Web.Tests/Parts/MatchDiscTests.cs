using Bunit;
using ClubCycle.Web.Parts;

namespace ClubCycle.Web.Tests.Parts;

public sealed class MatchDiscTests
{
    [Theory]
    [InlineData(false, "match", "match-disc")]
    [InlineData(true, "practice", "practice-disc")]
    public async Task A_match_is_filled_and_a_practice_outlined(bool practice, string word, string shape)
    {
        await using var context = new BunitContext();

        var disc = context.Render<MatchDisc>(p => p.Add(c => c.Practice, practice));

        Assert.Equal(word, disc.Find("svg").GetAttribute("aria-label"));
        Assert.Equal(shape, disc.Find("circle").ClassName);
    }
}
