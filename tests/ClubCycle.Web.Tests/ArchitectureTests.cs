using System.Reflection;
using ClubCycle.Calendars;
using ClubCycle.Planning;

namespace ClubCycle.Web.Tests;

/// <summary>The arrows between the projects, read from the built assemblies.</summary>
public sealed class ArchitectureTests
{
    [Fact]
    public void Planning_rests_on_NodaTime_alone() =>
        Assert.Equal(["NodaTime"], NeededBy(typeof(AnnualPlanner).Assembly));

    [Fact]
    public void Calendars_rests_on_Planning_and_the_libraries_for_its_files() =>
        Assert.Equal(["ClubCycle.Planning", "CsvHelper", "Ical.Net", "NodaTime", "PublicHoliday"], NeededBy(typeof(IcsWriter).Assembly));

    [Fact]
    public void Data_knows_neither_Calendars_nor_Web() =>
        Assert.Empty(NeededBy(Assembly.Load("ClubCycle.Data")).Intersect(["ClubCycle.Calendars", "ClubCycle.Web"]));

    [Fact]
    public void Only_Web_knows_all_the_others()
    {
        var web = NeededBy(typeof(Program).Assembly);

        Assert.Contains("ClubCycle.Calendars", web);
        Assert.Contains("ClubCycle.Planning", web);
    }

    /// <summary>Every reference that is not part of the .NET runtime itself.</summary>
    private static IEnumerable<string> NeededBy(Assembly assembly) =>
        assembly.GetReferencedAssemblies()
            .Select(name => name.Name!)
            .Where(name => !name.StartsWith("System.", StringComparison.Ordinal) && name is not ("System" or "netstandard" or "mscorlib"))
            .Order(StringComparer.Ordinal);
}
