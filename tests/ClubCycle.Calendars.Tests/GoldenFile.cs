namespace ClubCycle.Calendars.Tests;

/// <summary>Compares with a file under <c>Golden/</c>; <c>CLUBCYCLE_WRITE_GOLDENS=1</c> writes it instead, for a person to review.</summary>
internal static class GoldenFile
{
    public static void AssertSame(string name, string actual)
    {
        var path = Path.Combine(SourceFolder.Path, "Golden", name);
        if (Environment.GetEnvironmentVariable("CLUBCYCLE_WRITE_GOLDENS") == "1")
        {
            File.WriteAllText(path, actual);
        }

        Assert.True(File.Exists(path), $"{path} is missing; run once with CLUBCYCLE_WRITE_GOLDENS=1 and review it.");
        Assert.Equal(File.ReadAllText(path), actual);
    }
}
