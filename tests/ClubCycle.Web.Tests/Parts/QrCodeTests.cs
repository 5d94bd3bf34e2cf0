using System.Globalization;
using System.Text.RegularExpressions;
using Bunit;
using ClubCycle.Web.Parts;

namespace ClubCycle.Web.Tests.Parts;

/// <summary>Checked against ISO/IEC 18004 (clause numbers from memory): what a reader looks for first, drawn in the right places and not mirrored.</summary>
public sealed partial class QrCodeTests
{
    private const int QuietZone = 4;
    private const string Address = "https://club.example/p/AbCdEfGhIjKlMnOpQrStUvWxYz0123456789AbCdEfG";

    [Fact]
    public async Task The_symbol_has_a_size_of_the_standard_and_a_quiet_zone_of_four_modules()
    {
        var (size, dark) = await DrawnAsync();

        Assert.Equal(0, (size - 17) % 4);
        Assert.InRange((size - 17) / 4, 1, 40);
        Assert.All(dark, module => Assert.True(module.X >= 0 && module.Y >= 0 && module.X < size && module.Y < size));
    }

    [Fact]
    public async Task Finder_patterns_stand_in_three_corners()
    {
        var (size, dark) = await DrawnAsync();

        Assert.True(IsFinder(dark, 0, 0));
        Assert.True(IsFinder(dark, size - 7, 0));
        Assert.True(IsFinder(dark, 0, size - 7));
        Assert.False(IsFinder(dark, size - 7, size - 7));
    }

    [Fact]
    public async Task Timing_patterns_alternate_between_the_finders()
    {
        var (size, dark) = await DrawnAsync();

        for (var i = 8; i < size - 8; i++)
        {
            Assert.Equal(i % 2 == 0, dark.Contains((i, 6)));
            Assert.Equal(i % 2 == 0, dark.Contains((6, i)));
        }
    }

    [Fact]
    public async Task The_format_word_is_a_code_word_for_level_M_so_the_symbol_is_not_mirrored()
    {
        var (size, dark) = await DrawnAsync();

        // Most significant bit first: along row 8 from the left, then up column 8.
        (int X, int Y)[] places = [(0, 8), (1, 8), (2, 8), (3, 8), (4, 8), (5, 8), (7, 8), (8, 8), (8, 7), (8, 5), (8, 4), (8, 3), (8, 2), (8, 1), (8, 0)];
        var word = places.Aggregate(0, (bits, place) => (bits << 1) | (dark.Contains(place) ? 1 : 0)) ^ 0b101010000010010;

        Assert.Equal(0b00, word >> 13);
        Assert.Equal(0, RemainderOfFormat(word));
        Assert.True(dark.Contains((8, size - 8)), "the module that is always dark");
    }

    [Fact]
    public async Task The_secret_address_is_not_its_accessible_name()
    {
        await using var context = new BunitContext();

        Assert.Equal("Player page", Render(context).Find("svg").GetAttribute("aria-label"));
        Assert.DoesNotContain("club.example", Render(context).Markup, StringComparison.Ordinal);
    }

    private static IRenderedComponent<QrCode> Render(BunitContext context) =>
        context.Render<QrCode>(p => p.Add(c => c.Text, Address).Add(c => c.Label, "Player page"));

    /// <summary>Size without the quiet zone, and the dark modules from its corner on.</summary>
    private static async Task<(int Size, HashSet<(int X, int Y)> Dark)> DrawnAsync()
    {
        await using var context = new BunitContext();
        var code = Render(context);
        var size = int.Parse(code.Find("svg").GetAttribute("viewBox")!.Split(' ')[2], CultureInfo.InvariantCulture) - (2 * QuietZone);
        var dark = Run().Matches(code.Find("path").GetAttribute("d")!)
            .SelectMany(m => Enumerable.Range(Number(m, 1), Number(m, 3)).Select(x => (x - QuietZone, Number(m, 2) - QuietZone)))
            .ToHashSet();
        return (size, dark);

        static int Number(Match match, int group) => int.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);
    }

    private static bool IsFinder(HashSet<(int X, int Y)> dark, int left, int top) =>
        Enumerable.Range(0, 49).All(i =>
        {
            var (x, y) = (i % 7, i / 7);
            var ring = Math.Max(Math.Abs(x - 3), Math.Abs(y - 3));
            return dark.Contains((left + x, top + y)) == (ring != 2);
        });

    // BCH(15,5), generator x^10 + x^8 + x^5 + x^4 + x^2 + x + 1.
    private static int RemainderOfFormat(int word)
    {
        for (var bit = 14; bit >= 10; bit--)
        {
            if ((word >> bit & 1) == 1)
            {
                word ^= 0b10100110111 << (bit - 10);
            }
        }

        return word;
    }

    [GeneratedRegex(@"M(\d+) (\d+)h(\d+)v1h-\d+z")]
    private static partial Regex Run();
}
