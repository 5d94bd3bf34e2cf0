using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Weeks;

namespace ClubCycle.Planning.Tests.Rules;

public class TheWeekBeforeTheFirstMatchIsHalfAsFullTests
{
    // Vector: a mean of 2,000 accepts 800 to 1,180. Bosquet et al. 2007.
    [Theory]
    [InlineData(799, false)]
    [InlineData(800, true)]
    [InlineData(1180, true)]
    [InlineData(1181, false)]
    public void Forty_to_fifty_nine_percent_taper(double load, bool tapers) => Assert.Equal(tapers, TaperRules.Tapers(2000, load));

    /// <summary>Four weeks of 2,000 AU with five runs each, the last week, a match.</summary>
    private static Year Before(int load, int sessions, string first = "match 2026-09-12 14:00 60") =>
        Year.Of("Senior").Phase(PhaseKind.PreSeason, 4, WeekLoading.Loading, 2000).Phase(PhaseKind.PreSeason, 1, WeekLoading.Taper, load).Phase(PhaseKind.InSeason, 1)
            .With([.. Enumerable.Range(0, 4).SelectMany(w => Enumerable.Range(0, 5).Select(d => $"easy-run {A.Date("2026-08-03").PlusWeeks(w).PlusDays(d):uuuu-MM-dd} 18:00 40"))])
            .Every(1, sessions, "easy-run 2026-08-31 18:00 20").With(first);

    [Fact]
    public void Half_the_load_in_four_of_five_sessions_passes() => Assert.Empty(Before(1000, 4).Check(TaperRules.R46));

    [Theory]
    [InlineData(1300)]
    [InlineData(700)]
    public void Too_full_and_too_empty_are_found(int load) => Assert.Contains("of the 2000 AU", Assert.Single(Before(load, 4).Check(TaperRules.R46)).Message, StringComparison.Ordinal);

    [Fact]
    public void Three_of_five_sessions_are_too_few() => Assert.Equal("sessions", Assert.Single(Before(1000, 3).Check(TaperRules.R46)).Facts!.Unit);

    [Fact]
    public void Without_a_match_there_is_nothing_to_taper_for() => Assert.Empty(Before(2000, 5, "easy-run 2026-09-12 14:00 60").Check(TaperRules.R46));

    [Fact]
    public void Practices_that_hold_more_by_themselves_force_it() =>
        Assert.Equal(Cause.Contacts, Assert.Single(Before(1300, 3).With("practice 2026-09-03 18:00 250").Check(TaperRules.R46)).ForcedBy);

    [Theory]
    [InlineData(1181, 1180)]
    [InlineData(799, 800)]
    public void The_load_is_held_against_the_limit_that_it_misses(int load, double limit)
    {
        var finding = Assert.Single(Before(load, 4).Check(TaperRules.R46));

        Assert.Equal((load, limit, "AU"), finding.FiguresOf());
        Assert.Equal(A.Date("2026-08-31"), finding.Week);
    }

    [Fact]
    public void Three_sessions_are_held_against_four() => Assert.Equal((3, 4, "sessions"), Assert.Single(Before(1000, 3).Check(TaperRules.R46)).FiguresOf());

    [Theory]
    [InlineData(600, 1)]
    [InlineData(599, 0)]
    public void Weeks_that_hold_next_to_nothing_are_not_tapered(int before, int findings) =>
        Assert.Equal(
            findings,
            Year.Of("Senior").Phase(PhaseKind.PreSeason, 4, WeekLoading.Loading, before).Phase(PhaseKind.PreSeason, 1, WeekLoading.Taper, before).Phase(PhaseKind.InSeason, 1).With("match 2026-09-12 14:00 60").Check(TaperRules.R46).Count);

    [Fact]
    public void Three_weeks_before_are_too_few_to_judge() =>
        Assert.Empty(Year.Of("Senior").Phase(PhaseKind.PreSeason, 3, WeekLoading.Loading, 2000).Phase(PhaseKind.PreSeason, 1, WeekLoading.Taper, 2000).Phase(PhaseKind.InSeason, 1).With("match 2026-09-05 14:00 60").Check(TaperRules.R46));

    [Fact]
    public void What_took_sessions_away_is_named()
    {
        Assert.Equal(Cause.ClosedDays, Assert.Single(Before(1000, 3).Closed("2026-09-06", "2026-09-06").Check(TaperRules.R46)).ForcedBy);
        Assert.Equal(Cause.Contacts, Assert.Single(Before(700, 5).Every(7, 4, "practice 2026-08-08 10:00 60").Check(TaperRules.R46)).ForcedBy);
        Assert.Equal(Cause.Template, Assert.Single(Before(1000, 3).Asking("easy-run", "easy-run", "easy-run").Check(TaperRules.R46)).ForcedBy);
        Assert.Null(Assert.Single(Before(1000, 3).Asking("easy-run", "easy-run", "easy-run", "easy-run").Check(TaperRules.R46)).ForcedBy);
    }
}
