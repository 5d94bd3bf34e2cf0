using ClubCycle.Planning;

namespace ClubCycle.Web.Commands;

/// <summary>How the app was asked to start.</summary>
/// <param name="Demo">Fill a fresh database with the demo club and print links into it.</param>
/// <param name="Migrate">Bring the schema of a given database up to date first; a private one always is.</param>
/// <param name="Settings">Everything else, for the configuration: <c>--urls=…</c>.</param>
internal sealed record ServeOptions(bool Demo, bool Migrate, string[] Settings)
{
    public static Result<ServeOptions> Read(IReadOnlyList<string> arguments)
    {
        var demo = arguments.Contains("--demo");
        if (demo && arguments.Contains("--empty"))
        {
            return new Problem("command.usage", "--demo and --empty contradict each other. Choose one.");
        }

        var settings = arguments.Where(argument => argument is not ("--demo" or "--empty" or "--migrate")).ToArray();
        return Array.Find(settings, setting => !setting.StartsWith("--", StringComparison.Ordinal) || !setting.Contains('=')) is { } unknown
            ? new Problem("command.usage", $"\"{unknown}\" is not understood. Write: serve [--demo | --empty] [--migrate], and settings as --name=value.")
            : new ServeOptions(demo, arguments.Contains("--migrate"), settings);
    }
}
