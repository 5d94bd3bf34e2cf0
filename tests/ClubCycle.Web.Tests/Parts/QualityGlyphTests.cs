using Bunit;
using ClubCycle.Planning.Workouts;
using ClubCycle.Web.Parts;

namespace ClubCycle.Web.Tests.Parts;

public sealed class QualityGlyphTests
{
    public static TheoryData<Quality, string> Words => new()
    {
        { Quality.AerobicEndurance, "aerobic endurance" },
        { Quality.Speed, "speed" },
        { Quality.Agility, "agility" },
        { Quality.CoreStrength, "core strength" },
        { Quality.MuscularEndurance, "muscular endurance" },
    };

    [Theory]
    [MemberData(nameof(Words))]
    public async Task A_glyph_alone_is_read_as_its_word(Quality quality, string word)
    {
        await using var context = new BunitContext();

        var svg = context.Render<QualityGlyph>(p => p.Add(c => c.Quality, quality)).Find("svg");

        Assert.Equal("img", svg.GetAttribute("role"));
        Assert.Equal(word, svg.GetAttribute("aria-label"));
    }

    [Theory]
    [MemberData(nameof(Words))]
    public async Task A_glyph_beside_its_word_is_not_read_twice(Quality quality, string word)
    {
        await using var context = new BunitContext();

        var part = context.Render<QualityGlyph>(p => p.Add(c => c.Quality, quality).Add(c => c.WordFollows, true));

        Assert.Equal("true", part.Find("svg").GetAttribute("aria-hidden"));
        Assert.Equal(word, part.Find("span").TextContent);
    }

    [Fact]
    public async Task No_two_glyphs_look_alike_without_colour()
    {
        await using var context = new BunitContext();

        var shapes = Enum.GetValues<Quality>()
            .Select(quality => context.Render<QualityGlyph>(p => p.Add(c => c.Quality, quality)).Find("svg").LastElementChild!.OuterHtml)
            .ToList();

        Assert.Distinct(shapes);
    }
}
