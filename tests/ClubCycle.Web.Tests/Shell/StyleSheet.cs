using System.Text.RegularExpressions;

namespace ClubCycle.Web.Tests.Shell;

/// <summary>Just enough of a style sheet to ask what a selector declares.</summary>
internal sealed partial class StyleSheet(string css)
{
    private readonly string _css = Comment().Replace(css, "");

    public static StyleSheet Base { get; } = new(File.ReadAllText(PathOf("clubcycle.css")));

    public static StyleSheet Screens { get; } = new(File.ReadAllText(PathOf("screens.css")));

    public static string PathOf(string name)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "ClubCycle.sln")))
        {
            folder = folder.Parent;
        }

        return Path.Combine(folder?.FullName ?? throw new InvalidOperationException("The tests do not run below ClubCycle.sln"), "src", "ClubCycle.Web", "wwwroot", "css", name);
    }

    /// <summary>All declarations of blocks with exactly this selector, in order of appearance.</summary>
    public IEnumerable<(string Name, string Value)> Declarations(string selector) =>
        from block in Regex.Matches(_css, $@"(?<=^|[}}{{;\n])\s*{Regex.Escape(selector)}\s*\{{([^{{}}]*)\}}")
        from declaration in block.Groups[1].Value.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
        let parts = declaration.Split(':', 2, StringSplitOptions.TrimEntries)
        select (parts[0], parts[1]);

    /// <summary>The colours among a selector's variables.</summary>
    public Dictionary<string, string> Colours(string selector) =>
        Declarations(selector).Where(d => d.Name.StartsWith("--", StringComparison.Ordinal) && d.Value.StartsWith('#')).ToDictionary(d => d.Name[2..], d => d.Value, StringComparer.Ordinal);

    [GeneratedRegex(@"/\*.*?\*/", RegexOptions.Singleline)]
    private static partial Regex Comment();
}
