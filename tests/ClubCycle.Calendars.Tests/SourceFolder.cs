namespace ClubCycle.Calendars.Tests;

/// <summary>This project's folder in the repository.</summary>
internal static class SourceFolder
{
    public static string Path { get; } = Find();

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(System.IO.Path.Combine(folder.FullName, "ClubCycle.sln")))
            {
                return System.IO.Path.Combine(folder.FullName, "tests", "ClubCycle.Calendars.Tests");
            }
        }

        throw new InvalidOperationException($"ClubCycle.sln is not above {AppContext.BaseDirectory}.");
    }
}
