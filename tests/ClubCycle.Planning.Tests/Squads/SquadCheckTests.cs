using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Squads;
using NodaTime;

namespace ClubCycle.Planning.Tests.Squads;

public class SquadCheckTests
{
    [Fact]
    public void An_ordinary_squad_is_fine() => Assert.Empty(SquadCheck.Check(A.Squad(windows: [Window("18:00", "21:00")])));

    [Theory]
    [InlineData("", "squad.name-missing")]
    [InlineData("  \u3000", "squad.name-missing")]
    [InlineData("Women\n1", "squad.name-control-character")]
    [InlineData("Women\u00001", "squad.name-control-character")]
    public void A_squad_needs_a_name_that_can_be_shown(string name, string code) => Refused(A.Squad() with { Name = name }, code, "squad.name");

    [Fact]
    public void A_name_has_a_hundred_characters_at_most()
    {
        Assert.Empty(SquadCheck.Check(A.Squad() with { Name = new string('n', 100) }));
        Refused(A.Squad() with { Name = new string('n', 101) }, "squad.name-too-long", "squad.name");
    }

    [Theory]
    [InlineData("Mädchen A ☀")]
    [InlineData("<b>Herren</b> \"1\"")]
    [InlineData("女子チーム")]
    public void Any_script_and_sign_may_be_in_a_name(string name) => Assert.Empty(SquadCheck.Check(A.Squad() with { Name = name }));

    [Theory]
    [InlineData(15, true)]
    [InlineData(14, false)]
    [InlineData(240, true)]
    [InlineData(241, false)]
    [InlineData(0, false)]
    [InlineData(int.MinValue, false)]
    public void A_practice_lasts_fifteen_minutes_to_four_hours(int minutes, bool fine)
    {
        var squad = A.Squad(practices: [A.Practice(IsoDayOfWeek.Monday), A.Practice(IsoDayOfWeek.Tuesday, "10:00", minutes)]);
        if (fine)
        {
            Assert.Empty(SquadCheck.Check(squad));
        }
        else
        {
            Refused(squad, "squad.practice-minutes", "squad.practices[1].minutes");
        }
    }

    [Fact]
    public void A_practice_may_end_at_midnight_and_not_later()
    {
        Assert.Empty(SquadCheck.Check(A.Squad(practices: [A.Practice(IsoDayOfWeek.Monday, "22:30", 90)])));
        Refused(A.Squad(practices: [A.Practice(IsoDayOfWeek.Monday, "22:31", 90)]), "squad.practice-past-midnight", "squad.practices[0].start");
    }

    [Fact]
    public void A_day_holds_one_practice_in_a_phase()
    {
        var early = A.Practice(IsoDayOfWeek.Monday, "18:00", 60);
        var late = A.Practice(IsoDayOfWeek.Monday, "20:00", 60);

        Refused(A.Squad(practices: [early, late]), "squad.practice-twice-a-day", "squad.practices[1].day");
        Assert.Empty(SquadCheck.Check(A.Squad(practices: [early with { Phases = [PhaseKind.PreSeason] }, late with { Phases = [PhaseKind.InSeason] }])));
    }

    [Fact]
    public void A_week_holds_seven_practices_at_most()
    {
        Practice[] daily = [.. Enumerable.Range(1, 7).Select(day => A.Practice((IsoDayOfWeek)day))];

        Assert.Empty(SquadCheck.Check(A.Squad(practices: daily)));
        Refused(A.Squad(practices: [.. daily, A.Practice(IsoDayOfWeek.Monday) with { Phases = [PhaseKind.Break] }]), "squad.too-many-practices", "squad.practices");
    }

    [Theory]
    [InlineData("21:00", "18:00")]
    [InlineData("18:00", "18:00")]
    public void A_window_ends_after_it_starts(string from, string to) =>
        Refused(A.Squad(windows: [Window("18:00", "21:00"), Window(from, to)]), "squad.window-reversed", "squad.windows[1].to");

    [Fact]
    public void A_window_names_its_weekdays() => Refused(A.Squad(windows: [Window("18:00", "21:00") with { Days = [] }]), "squad.window-without-days", "squad.windows[0].days");

    [Fact]
    public void All_problems_are_said_at_once() =>
        Assert.Equal(3, SquadCheck.Check(A.Squad(practices: [A.Practice(IsoDayOfWeek.Monday, "23:00", 300)], windows: [Window("20:00", "19:00")])).Count);

    private static TimeWindow Window(string from, string to) => new([IsoDayOfWeek.Monday], A.Time(from), A.Time(to));

    private static void Refused(Squad squad, string code, string at)
    {
        var problem = Assert.Single(SquadCheck.Check(squad));

        Assert.Equal((code, at), (problem.Code, problem.At));
    }
}
