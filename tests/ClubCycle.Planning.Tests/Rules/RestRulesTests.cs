using ClubCycle.Planning.Rules;

namespace ClubCycle.Planning.Tests.Rules;

public class YoungPlayersRestOneDayAWeekTests
{
    private static readonly string[] SixDays = [.. Enumerable.Range(3, 6).Select(d => $"practice 2026-08-0{d} 18:00 60")];

    [Fact]
    public void Seven_active_days_are_a_must_finding() =>
        Assert.Equal(Strength.Must, Assert.Single(Year.Of("U16").With(SixDays).With("easy-run 2026-08-09 10:00 30").Check(RestRules.R01)).Strength);

    [Fact]
    public void Six_active_days_pass() => Assert.Empty(Year.Of("U16").With(SixDays).Check(RestRules.R01));

    [Fact]
    public void Active_recovery_leaves_a_day_a_rest_day() =>
        Assert.Empty(Year.Of("U16").With(SixDays).With("active-recovery 2026-08-09 10:00 20").Check(RestRules.R01));

    [Fact]
    public void Adults_are_not_meant() =>
        Assert.Empty(Year.Of("Senior").With(SixDays).With("easy-run 2026-08-09 10:00 30").Check(RestRules.R01));

    [Fact]
    public void Hockey_on_all_seven_days_forces_it_and_a_run_among_it_does_not()
    {
        var hockey = Assert.Single(Year.Of("U16").With(SixDays).With("match 2026-08-09 10:00 60").Check(RestRules.R01));
        Assert.Equal(((0, 1, "days"), Cause.Contacts), (hockey.FiguresOf(), hockey.ForcedBy));
        Assert.EndsWith("Practices and matches alone take 7 days.", hockey.Message, StringComparison.Ordinal);

        var run = Assert.Single(Year.Of("U16").With(SixDays).With("easy-run 2026-08-09 10:00 30").Check(RestRules.R01));
        Assert.Null(run.ForcedBy);
        Assert.EndsWith("belong there.", run.Message, StringComparison.Ordinal);
    }
}

public class YoungerChildrenRestTwoDaysAWeekTests
{
    private static readonly string[] FiveDays = [.. Enumerable.Range(3, 5).Select(d => $"practice 2026-08-0{d} 17:00 45")];

    [Fact]
    public void Six_active_days_are_too_many_at_twelve() =>
        Assert.Equal(Strength.Should, Assert.Single(Year.Of("U14").With(FiveDays).With("match 2026-08-08 10:00 50").Check(RestRules.R02)).Strength);

    [Fact]
    public void Five_active_days_pass_at_twelve() => Assert.Empty(Year.Of("U14").With(FiveDays).Check(RestRules.R02));

    [Fact]
    public void Six_active_days_pass_at_thirteen() =>
        Assert.Empty(Year.Of("U15").With(FiveDays).With("match 2026-08-08 10:00 50").Check(RestRules.R02));

    [Fact]
    public void Six_days_of_hockey_force_it()
    {
        var finding = Assert.Single(Year.Of("U14").With(FiveDays).With("match 2026-08-08 10:00 50").Check(RestRules.R02));

        Assert.Equal(((1, 2, "days"), Cause.Contacts), (finding.FiguresOf(), finding.ForcedBy));
    }

    [Fact]
    public void A_session_that_a_coach_fixed_forces_it() =>
        Assert.Equal(Cause.Coach, Assert.Single(Year.Of("U14").With(FiveDays).With("body-weight 2026-08-08 10:00 30").Pinned().Check(RestRules.R02)).ForcedBy);
}

public class AdultsRestOneDayAWeekTests
{
    private static readonly string[] SixDays = [.. Enumerable.Range(3, 6).Select(d => $"easy-run 2026-08-0{d} 18:00 30")];

    [Fact]
    public void Seven_active_days_are_a_should_finding() =>
        Assert.Equal(Strength.Should, Assert.Single(Year.Of("Senior").With(SixDays).With("match 2026-08-09 14:00 60").Check(RestRules.R03)).Strength);

    [Fact]
    public void Six_active_days_pass() => Assert.Empty(Year.Of("Senior").With(SixDays).Check(RestRules.R03));
}
