using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Templates;

namespace ClubCycle.Planning.Tests.PlanFiles;

public class TemplateFileTests
{
    private static readonly string Valid = TemplateFile.Write(BuiltInTemplates.Find("senior-standard")!);

    [Theory]
    [InlineData("\"title\": \"Senior standard\",", "", "request.missing-property", "title")]
    [InlineData("\"title\": \"Senior standard\",", "\"title\": \"Senior\", \"author\": \"me\",", "request.unknown-property", "author")]
    [InlineData("\"Senior standard\"", "\"\"", "template.title", "title")]
    [InlineData("\"senior-standard\"", "\"Senior Standard\"", "template.name", "name")]
    [InlineData("\"unloadEvery\": 4", "\"unloadEvery\": 5", "request.out-of-range", "loading.unloadEvery")]
    [InlineData("\"unloadVolume\": 0.6", "\"unloadVolume\": 0.9", "template.unload-volume", "loading.unloadVolume")]
    [InlineData("\"unloadVolume\": 0.6", "\"unloadVolume\": \"0,6\"", "request.wrong-type", "loading.unloadVolume")]
    [InlineData("\"name\": \"long\",\n      \"minWeeks\": 16,", "\"name\": \"long\",\n      \"minWeeks\": 41,", "template.chain-weeks", "chains[2]")]
    [InlineData("\"speed.3\"", "\"speed.2\"", "template.slot-twice", "mixes[5].slots[3].name")]
    public void A_file_that_cannot_be_planned_with_is_refused_at_its_place(string find, string put, string code, string at)
    {
        Assert.Contains(find, Valid, StringComparison.Ordinal);

        var failed = Assert.IsType<Result<Template>.Failed>(TemplateFile.Read(Valid.Replace(find, put, StringComparison.Ordinal)));

        Assert.Equal((code, at), Assert.Single(failed.Problems.Select(p => (p.Code, p.At))));
    }

    [Fact]
    public void Inside_a_request_the_place_starts_at_the_template()
    {
        var request = HostileRequestTests.Valid.Replace("\"senior-standard\"", Valid.Replace("\"unloadVolume\": 0.6", "\"unloadVolume\": 0.9", StringComparison.Ordinal), StringComparison.Ordinal);

        Assert.Equal("template.loading.unloadVolume", Assert.Single(HostileRequestTests.ProblemsOf(request)).At);
    }

    [Fact]
    public void A_template_that_is_too_old_for_the_squad_is_refused()
    {
        var problems = HostileRequestTests.ProblemsOf(HostileRequestTests.Valid.Replace("\"Senior\"", "\"U12\"", StringComparison.Ordinal));

        // A session that a coach swapped or added is refused by itself.
        Assert.Contains(problems, p => p.Code == "template.workout-not-for-age");
        Assert.All(problems, p => Assert.Equal(p.At.StartsWith("pins", StringComparison.Ordinal) ? "pin.workout" : "template.workout-not-for-age", p.Code));
    }
}
