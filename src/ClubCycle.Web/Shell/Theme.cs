using MudBlazor;

namespace ClubCycle.Web.Shell;

/// <summary>MudBlazor's measures and type in our look. Colours come from the style sheet (screens.css maps them), so that light and dark need no script.</summary>
public static class Theme
{
    private static readonly string[] Family = ["Source Sans 3", "system-ui", "sans-serif"];

    public static MudTheme Club { get; } = new()
    {
        LayoutProperties = new LayoutProperties { DefaultBorderRadius = "6px" },
        Typography = new Typography
        {
            Default = new DefaultTypography { FontFamily = Family, FontSize = "1rem", LineHeight = "1.5", LetterSpacing = "normal" },
            Body1 = new Body1Typography { FontFamily = Family, FontSize = "1.0625rem", LetterSpacing = "normal" },
            Body2 = new Body2Typography { FontFamily = Family, FontSize = "1rem", LetterSpacing = "normal" },
            Button = new ButtonTypography { FontFamily = Family, FontSize = "1rem", FontWeight = "600", TextTransform = "none", LetterSpacing = "normal" },
            H6 = new H6Typography { FontFamily = Family, FontSize = "1.3125rem", FontWeight = "650", LetterSpacing = "normal" },
        },
    };
}
