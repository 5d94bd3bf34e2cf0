using Bunit;
using ClubCycle.Planning.Workouts;
using ClubCycle.Web.Parts;

namespace ClubCycle.Web.Tests.Parts;

public sealed class HardnessBarTests
{
    [Theory]
    [InlineData(Hardness.Easy, "8", "easy")]
    [InlineData(Hardness.Moderate, "16", "moderate")]
    [InlineData(Hardness.Hard, "24", "hard")]
    public async Task Hardness_is_one_two_or_three_thirds_of_24_and_a_word(Hardness hardness, string height, string word)
    {
        await using var context = new BunitContext();

        var bar = context.Render<HardnessBar>(p => p.Add(c => c.Hardness, hardness));

        Assert.Equal(height, bar.Find(".hardness-bar-fill").GetAttribute("height"));
        Assert.Equal(word, bar.Find("svg").GetAttribute("aria-label"));
    }
}
