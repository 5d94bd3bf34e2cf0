using System.Globalization;
using System.Reflection;
using System.Text.RegularExpressions;
using ClubCycle.Data;
using ClubCycle.Planning;

namespace ClubCycle.Web.Tests.Hosting;

/// <summary>docs/limits.md against the program (ASVS 2.1.1 to 2.1.3, 2.3.2, 5.1.1, 15.1.3).</summary>
public sealed partial class LimitsPageTests
{
    private static readonly Assembly[] Parts = [typeof(Problem).Assembly, Assembly.Load("ClubCycle.Calendars"), typeof(DataSetup).Assembly, typeof(Program).Assembly];

    private static readonly string Page = File.ReadAllText(Path.Combine(RootOf(AppContext.BaseDirectory), "docs", "limits.md"));

    public static TheoryData<string, string, string> Numbers => [.. Number().Matches(Page).Select(m => (m.Groups[1].Value, m.Groups[2].Value, m.Groups[3].Value))];

    [Theory]
    [MemberData(nameof(Numbers))]
    public void A_number_on_the_page_is_the_programs(string type, string name, string value)
    {
        var held = Assert.Single(Parts.SelectMany(part => part.GetTypes()).Where(t => t.Name == type).Select(t => Held(t, name)).OfType<int>());

        Assert.Equal(value, held.ToString(CultureInfo.InvariantCulture));
    }

    [Fact]
    public void Every_limit_of_the_program_on_what_people_type_stands_on_the_page()
    {
        var limits = Parts.SelectMany(part => part.GetTypes()).SelectMany(type => type.GetFields(BindingFlags.Public | BindingFlags.Static).Where(f => f.IsLiteral && f.Name is "LongestName" or "LongestTitle" or "LongestWhy" or "LongestReason"))
            .Select(field => $"{field.DeclaringType!.Name}.{field.Name} = ").Distinct().ToList();

        Assert.True(limits.Count >= 8);
        Assert.All(limits, limit => Assert.Contains(limit, Page, StringComparison.Ordinal));
    }

    private static object? Held(Type type, string name) =>
        type.GetField(name, BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static) is { IsLiteral: true } constant ? constant.GetRawConstantValue()
        : type.GetProperty(name) is { } setting && type.GetConstructor([]) is not null ? setting.GetValue(Activator.CreateInstance(type))
        : null;

    private static string RootOf(string folder) =>
        File.Exists(Path.Combine(folder, "ClubCycle.sln")) ? folder : RootOf(Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("The tests do not run below ClubCycle.sln"));

    [GeneratedRegex(@"`([A-Za-z]+)\.([A-Za-z]+) = ([0-9]+)`")]
    private static partial Regex Number();
}
