using System.Globalization;

namespace ClubCycle.Web.Tests.Shell;

/// <summary>WCAG 2.2, success criteria 1.4.3 (text at least 4.5 to 1) and 1.4.11 (graphics at least 3 to 1), with its definitions of relative luminance and contrast ratio.</summary>
public sealed class ContrastTests
{
    private static readonly Dictionary<string, string> Light = StyleSheet.Base.Colours(":root");
    private static readonly Dictionary<string, string> DarkByDevice = StyleSheet.Base.Colours("html:not([data-theme=\"light\"])");
    private static readonly Dictionary<string, string> DarkByChoice = StyleSheet.Base.Colours("html[data-theme=\"dark\"]");

    private static readonly (string Text, string[] Grounds)[] Texts =
    [
        ("ink", ["ground", "sheet", "shade", "accent-ground", "must-ground", "should-ground", "note-ground", "good-ground"]),
        ("ink-soft", ["ground", "sheet", "shade", "accent-ground"]),
        ("accent", ["ground", "sheet", "shade", "accent-ground"]),
        ("accent-deep", ["ground", "sheet", "accent-ground"]),
        ("on-accent", ["accent", "accent-deep"]),
        ("must", ["ground", "sheet", "must-ground"]),
        ("should", ["ground", "sheet", "should-ground"]),
        ("note", ["ground", "sheet", "note-ground"]),
        ("good", ["ground", "sheet", "good-ground"]),
        ("phase-ink", ["phase-break", "phase-break-mark", "phase-recovery", "phase-restore", "phase-restore-mark", "phase-aerobic-build", "phase-aerobic-build-mark", "phase-mixed", "phase-mixed-mark"]),
        ("phase-pre-season-ink", ["phase-pre-season", "phase-pre-season-mark"]),
        ("phase-in-season-ink", ["phase-in-season"]),
    ];

    private static readonly (string Shape, string[] Grounds)[] Graphics =
    [
        ("line-strong", ["ground", "sheet", "shade"]),
        ("accent", ["ground", "sheet", "shade"]),
        ("ink", ["ground", "line"]),
        ("glyph-ink", ["aerobic-endurance", "speed", "agility", "core-strength", "muscular-endurance"]),
    ];

    public static TheoryData<bool, string, string, double> Pairs()
    {
        var pairs = new TheoryData<bool, string, string, double>();
        foreach (var dark in new[] { false, true })
        {
            foreach (var (text, grounds) in Texts)
            {
                Array.ForEach(grounds, ground => pairs.Add(dark, text, ground, 4.5));
            }

            foreach (var (shape, grounds) in Graphics)
            {
                Array.ForEach(grounds, ground => pairs.Add(dark, shape, ground, 3));
            }
        }

        return pairs;
    }

    [Theory]
    [MemberData(nameof(Pairs))]
    public void Words_and_signs_stand_out_from_their_ground(bool dark, string front, string ground, double atLeast) =>
        Assert.InRange(Ratio(Colour(dark, front), Colour(dark, ground)), atLeast, 21);

    [Fact]
    public void Dark_is_the_same_whether_the_device_or_the_person_asks_for_it()
    {
        Assert.NotEmpty(DarkByDevice);
        Assert.Equal(DarkByDevice, DarkByChoice);
    }

    [Fact]
    public void Every_tint_of_the_light_theme_has_a_dark_twin()
    {
        // Glyphs are dark ink on the same bright chips in both themes.
        string[] shared = ["aerobic-endurance", "speed", "agility", "core-strength", "muscular-endurance", "glyph-ink"];

        Assert.Equal(Light.Keys.Except(shared).Order(), DarkByDevice.Keys.Order());
    }

    /// <summary>Two ratios known from elsewhere: the definition's extremes, and the grey commonly quoted as the lightest that passes on white.</summary>
    [Theory]
    [InlineData("#000000", "#FFFFFF", 21.0)]
    [InlineData("#767676", "#FFFFFF", 4.54)]
    public void The_ratio_agrees_with_known_values(string one, string other, double expected) =>
        Assert.Equal(expected, Ratio(one, other), 0.005);

    private static string Colour(bool dark, string name) =>
        dark && DarkByChoice.TryGetValue(name, out var colour) ? colour : Light[name];

    private static double Ratio(string one, string other)
    {
        var (a, b) = (Luminance(one), Luminance(other));
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    private static double Luminance(string colour) =>
        (0.2126 * Linear(colour[1..3])) + (0.7152 * Linear(colour[3..5])) + (0.0722 * Linear(colour[5..7]));

    private static double Linear(string hex)
    {
        var value = int.Parse(hex, NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0;
        return value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4);
    }
}
