using System.Text.Json;

namespace ClubCycle.Web.Tests.Hosting;

/// <summary>ASVS 15.1.2: docs/parts.cdx.json, written by deploy/parts.sh, against what the program was built with.</summary>
public sealed class PartsListTests
{
    [Fact]
    public void The_list_of_parts_names_every_library_of_the_program_with_its_version()
    {
        using var list = JsonDocument.Parse(File.ReadAllText(Path.Combine(Root, "docs", "parts.cdx.json")));
        using var built = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "ClubCycle.Web.deps.json")));

        var listed = list.RootElement.GetProperty("components").EnumerateArray().Select(part => $"{part.GetProperty("name").GetString()}/{part.GetProperty("version").GetString()}").ToHashSet(StringComparer.Ordinal);
        var used = built.RootElement.GetProperty("libraries").EnumerateObject().Where(library => library.Value.GetProperty("type").GetString() == "package").Select(library => library.Name).ToList();

        Assert.True(used.Count > 20);
        Assert.Empty(used.Except(listed));
    }

    private static string Root { get; } = RootOf(AppContext.BaseDirectory);

    private static string RootOf(string folder) =>
        File.Exists(Path.Combine(folder, "ClubCycle.sln")) ? folder : RootOf(Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("The tests do not run below ClubCycle.sln"));
}
