using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Seasons;
using NodaTime;

namespace ClubCycle.Planning.Tests.PlanFiles;

public class PlaceTests
{
    [Fact]
    public void Practices_and_matches_take_place_where_squad_and_fixture_say()
    {
        var plan = AnnualPlanner.Plan(WithPlaces()).OrThrow();

        Assert.All(plan.Sessions, s => Assert.Equal(s.Kind switch { SessionKind.Practice => "Pitch 1", SessionKind.Match => "Marrowby; north", _ => s.InsidePractice ? "Pitch 1" : null }, s.Place));
        Assert.Contains(plan.Sessions, s => s.Kind == SessionKind.Practice);
        Assert.Contains(plan.Sessions, s => s.Kind == SessionKind.Match);
        Assert.Contains(plan.Sessions, s => s.InsidePractice);
    }

    [Fact]
    public void Places_survive_the_plan_file()
    {
        var plan = AnnualPlanner.Plan(WithPlaces()).OrThrow();

        var read = PlanFile.ReadPlan(PlanFile.WritePlan(plan)).OrThrow();
        var request = PlanFile.ReadRequest(PlanFile.WriteRequest(WithPlaces())).OrThrow();

        Assert.Equal(plan.Sessions.Select(s => s.Place), read.Sessions.Select(s => s.Place));
        Assert.Equal([" Pitch 1"], request.Squad.Practices.Select(p => p.Place));
        Assert.Equal(["Marrowby; north"], request.Fixtures!.Select(f => f.Place));
    }

    [Fact]
    public void Without_places_the_plan_file_names_none() =>
        Assert.DoesNotContain("\"place\"", PlanFile.WriteRequest(A.Request()) + PlanFile.WritePlan(AnnualPlanner.Plan(A.Request()).OrThrow()), StringComparison.Ordinal);

    [Fact]
    public void A_place_of_more_than_a_hundred_characters_or_lines_is_refused()
    {
        var tooLong = new string('x', 101);

        Assert.Contains("squad.practice-place", Codes(A.Request(squad: A.Squad(practices: [A.Practice(IsoDayOfWeek.Tuesday) with { Place = tooLong }]))));
        Assert.Contains("fixture.place", Codes(A.Request(fixtures: [new Fixture(new LocalDate(2026, 10, 3), Place: "Pitch 1\nnorth")])));
    }

    private static IEnumerable<string> Codes(PlanRequest request) =>
        AnnualPlanner.Plan(request) is Result<SquadPlan>.Failed failed ? failed.Problems.Select(p => p.Code) : [];

    private static PlanRequest WithPlaces() => A.Request(
        squad: A.Squad(practices: [A.Practice(IsoDayOfWeek.Tuesday) with { Place = " Pitch 1" }]),
        fixtures: [new Fixture(new LocalDate(2026, 10, 3), Place: "Marrowby; north")]);
}
