namespace ClubCycle.Planning.Languages;

/// <summary>What the texts of a calendar are written in.</summary>
public enum Language
{
    English,
    Dutch,
    German,
    Spanish,
}

public static class LanguageNames
{
    public static IReadOnlyList<Language> All { get; } = [.. Enum.GetValues<Language>()];

    /// <summary>BCP 47.</summary>
    public static string Code(this Language language) => language switch
    {
        Language.English => "en",
        Language.Dutch => "nl",
        Language.German => "de",
        Language.Spanish => "es",
        _ => throw new ArgumentOutOfRangeException(nameof(language), language, "Not a language."),
    };

    /// <summary>As those who speak it call it.</summary>
    public static string OwnName(this Language language) => language switch
    {
        Language.English => "English",
        Language.Dutch => "Nederlands",
        Language.German => "Deutsch",
        Language.Spanish => "Español",
        _ => throw new ArgumentOutOfRangeException(nameof(language), language, "Not a language."),
    };

    /// <summary>The language of a <see cref="Code"/>; null for any other text.</summary>
    public static Language? Find(string? code)
    {
        foreach (var language in All)
        {
            if (language.Code() == code)
            {
                return language;
            }
        }

        return null;
    }
}
