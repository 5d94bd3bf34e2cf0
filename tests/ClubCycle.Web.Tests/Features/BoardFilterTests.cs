using ClubCycle.Planning;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;
using ClubCycle.Web.Features.Board;
using NodaTime;

namespace ClubCycle.Web.Tests.Features;

public sealed class BoardFilterTests
{
    private static readonly LocalDate Monday = new(2026, 10, 5);

    private static readonly BoardSquad Girls = Squad("Girls", "U14", PhaseKind.Mixed);
    private static readonly BoardSquad Boys = Squad("Boys", "U16", PhaseKind.InSeason, Strength.Should) with { HasUnpublishedChanges = true };
    private static readonly BoardSquad Women = Squad("Women", "Senior", PhaseKind.InSeason, Strength.Must);
    private static readonly BoardSquad Lost = Squad("Lost", "Masters", PhaseKind.Mixed) with { Plan = null };

    [Fact]
    public void Without_a_wish_every_squad_is_shown() => Assert.Equal(["Girls", "Boys", "Women", "Lost"], Names(new BoardFilter()));

    [Theory]
    [InlineData("youth", "Girls Boys")]
    [InlineData("adults", "Women Lost")]
    [InlineData("U16", "Boys")]
    public void An_age_shows_its_squads(string age, string names) => Assert.Equal(names.Split(' '), Names(new BoardFilter(Age: age)));

    [Fact]
    public void A_phase_shows_the_squads_that_are_in_it_today() => Assert.Equal(["Boys", "Women"], Names(new BoardFilter(Phase: "in-season")));

    [Theory]
    [InlineData("must", "Women Lost")]
    [InlineData("should", "Boys Women Lost")]
    [InlineData("draft", "Boys")]
    public void Findings_and_drafts_can_be_asked_for(string with, string names) => Assert.Equal(names.Split(' '), Names(new BoardFilter(With: with)));

    [Fact]
    public void Wishes_add_up() => Assert.Equal(["Boys"], Names(new BoardFilter("youth", "in-season", "should")));

    [Fact]
    public void Two_squads_to_compare_stand_alone_whatever_else_was_wished() =>
        Assert.Equal(["Girls", "Women"], Names(new BoardFilter("youth", With: "draft", First: Women.Id.ToString(), Second: Girls.Id.ToString())));

    [Fact]
    public void One_of_two_is_not_yet_a_comparison() => Assert.Equal(4, Names(new BoardFilter(First: Women.Id.ToString())).Count);

    [Fact]
    public void The_address_holds_what_is_wished_and_nothing_else() => Assert.Equal("&age=youth&with=must", new BoardFilter("youth", "", "must").Query);

    private static List<string> Names(BoardFilter filter) => [.. new[] { Girls, Boys, Women, Lost }.Where(s => filter.Wants(s, Monday.PlusDays(2))).Select(s => s.Name)];

    private static BoardSquad Squad(string name, string age, PhaseKind phase, Strength strength = Strength.Note) =>
        new(NamedId.From("squad", name), name, age, A.Plan([A.Week(Monday, phase)], findings: [A.Finding(strength)]), null, 1, false);
}
