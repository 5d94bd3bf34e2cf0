namespace ClubCycle.Web.Shell;

/// <summary>A person's choice of light or dark, written by theme.js; without one the device decides.</summary>
internal static class ThemeCookie
{
    public const string Name = "clubcycle-theme";

    /// <summary><c>light</c>, <c>dark</c>, or null when nobody chose.</summary>
    public static string? Read(HttpContext request) =>
        request.Request.Cookies[Name] switch { "light" => "light", "dark" => "dark", _ => null };
}
