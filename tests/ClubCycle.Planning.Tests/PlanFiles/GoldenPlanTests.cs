using System.Globalization;
using ClubCycle.Planning.PlanFiles;

namespace ClubCycle.Planning.Tests.PlanFiles;

public class GoldenPlanTests
{
    [Theory]
    [InlineData("season-a")]
    [InlineData("season-b")]
    [InlineData("season-c")]
    public void Reference_seasons_give_the_approved_bytes(string name)
    {
        var request = PlanFile.ReadRequest(File.ReadAllText(Path.Combine(GoldenFile.Folder, $"PlanFiles/Golden/{name}.request.json"))).OrThrow();

        GoldenFile.Matches($"PlanFiles/Golden/{name}.plan.json", PlanFile.WritePlan(A.Plan(request)));
    }

    [Theory]
    [InlineData("tr-TR")]
    [InlineData("ar-SA")]
    [InlineData("de-DE")]
    public void The_bytes_do_not_depend_on_the_culture(string culture)
    {
        var expected = PlanFile.WritePlan(A.Plan(A.Request()));
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(culture);

            Assert.Equal(expected, PlanFile.WritePlan(A.Plan(A.Request())));
        }
        finally
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = before;
        }
    }

    [Fact]
    public void A_written_plan_reads_back_and_writes_the_same()
    {
        var text = PlanFile.WritePlan(A.Plan(A.Request(A.SeasonD)));

        Assert.Equal(text, PlanFile.WritePlan(PlanFile.ReadPlan(text).OrThrow()));
    }

    [Fact]
    public void A_written_request_reads_back_and_plans_the_same()
    {
        var first = A.Request(A.SeasonA, fixtures: [new(A.Date("2026-10-03"), A.Time("12:30"), "Reds & \"Blues\" ☀")], closed: [new(A.Date("2026-07-20"), A.Date("2026-08-02"), "club closed")]);
        var request = first with { Published = A.Plan(first), PlanFrom = A.Date("2026-06-10"), Pins = [new(A.Date("2026-07-06"), "mixed.speed.1", A.Date("2026-07-09"), A.Time("18:00"))] };
        var text = PlanFile.WriteRequest(request);
        var again = PlanFile.ReadRequest(text).OrThrow();

        Assert.Equal(text, PlanFile.WriteRequest(again));
        Assert.Equal(PlanFile.WritePlan(A.Plan(request)), PlanFile.WritePlan(A.Plan(again)));
    }

    [Fact]
    public void A_template_reads_back_as_it_was_written() =>
        Assert.All(Planning.Templates.BuiltInTemplates.All, template =>
        {
            var text = TemplateFile.Write(template);
            Assert.Equal(text, TemplateFile.Write(TemplateFile.Read(text).OrThrow()));
        });
}
