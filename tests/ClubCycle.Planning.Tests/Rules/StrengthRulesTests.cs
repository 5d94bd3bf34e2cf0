using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Weeks;

namespace ClubCycle.Planning.Tests.Rules;

public class StrengthIsBuiltForSixWeeksTests
{
    /// <summary>Four weeks of recovery and eight of building before the season.</summary>
    private static Year Built(string ages, int weeks) =>
        Year.Of(ages).Phase(PhaseKind.Recovery, 4).Phase(PhaseKind.AerobicBuild, 8).Phase(PhaseKind.InSeason, 4)
            .Every(7, weeks, "strength-circuit 2026-08-31 18:00 40").Every(7, weeks, "heavy-lift 2026-09-03 18:00 40");

    [Theory]
    [InlineData(5, 1)]
    [InlineData(6, 0)]
    public void Six_weeks_in_a_row_pass(int weeks, int findings) => Assert.Equal(findings, Built("Senior", weeks).Check(StrengthRules.R17).Count);

    [Fact]
    public void A_week_with_one_session_starts_the_count_again()
    {
        Assert.Equal(3, StrengthRules.LongestRun([true, true, false, true, true, true]));
        Assert.Equal(0, StrengthRules.LongestRun([]));
    }

    [Fact]
    public void Strength_during_recovery_does_not_count() =>
        Assert.Single(Year.Of("Senior").Phase(PhaseKind.Recovery, 8).Phase(PhaseKind.AerobicBuild, 8).Phase(PhaseKind.InSeason, 4).Every(3, 16, "strength-circuit 2026-08-03 18:00 40").Check(StrengthRules.R17));

    [Fact]
    public void A_time_of_five_weeks_is_the_season_dates_doing() =>
        Assert.Equal(Cause.SeasonDates, Assert.Single(Year.Of("Senior").Phase(PhaseKind.Recovery, 4).Phase(PhaseKind.Mixed, 5).Phase(PhaseKind.InSeason, 4).Check(StrengthRules.R17)).ForcedBy);

    [Fact]
    public void A_mix_with_one_session_a_week_is_the_templates_doing() => Assert.Equal(Cause.Template, Assert.Single(Built("Senior", 0).Check(StrengthRules.R17)).ForcedBy);

    [Fact]
    public void Under_fifteen_it_is_not_asked() => Assert.Empty(Built("U16", 0).Check(StrengthRules.R17));

    [Fact]
    public void From_fifteen_on_it_is_asked_and_told_with_its_weeks()
    {
        var finding = Assert.Single(Built("U17", 1).Check(StrengthRules.R17));

        Assert.Equal((1, 6, "weeks"), finding.FiguresOf());
        Assert.StartsWith("1 week in a row", finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(5, Cause.SeasonDates, " The season dates leave 5 weeks.")]
    [InlineData(6, Cause.Template, "6 build it.")]
    public void Less_than_six_weeks_before_the_matches_are_the_season_dates_doing(int weeks, Cause cause, string told)
    {
        var finding = Assert.Single(Year.Of("Senior").Phase(PhaseKind.Recovery, 4).Phase(PhaseKind.AerobicBuild, weeks).Phase(PhaseKind.InSeason, 4).Check(StrengthRules.R17));

        Assert.Equal(cause, finding.ForcedBy);
        Assert.EndsWith(told, finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_match_in_pre_season_ends_the_time_to_build() =>
        Assert.Single(Built("Senior", 6).With("match 2026-10-10 14:00 60").Check(StrengthRules.R17));

    [Fact]
    public void A_squad_that_joins_late_has_no_six_weeks_left() => Assert.Equal(Cause.JoinedLate, Assert.Single(Built("Senior", 0).Joined("2026-09-21").Check(StrengthRules.R17)).ForcedBy);
}

public class StrengthIsKeptInSeasonTests
{
    private static Year Season(string ages, int weeks) => Year.Of(ages).Phase(PhaseKind.InSeason, 4).Every(7, weeks, "core-and-circuit 2026-08-04 18:00 35");

    [Fact]
    public void Weeks_without_strength_are_one_finding_with_their_number() =>
        Assert.StartsWith("3 of 4 weeks", Assert.Single(Season("Senior", 1).Check(StrengthRules.R22)).Message, StringComparison.Ordinal);

    [Fact]
    public void One_circuit_a_week_passes() => Assert.Empty(Season("Senior", 4).Check(StrengthRules.R22));

    [Fact]
    public void Easy_runs_are_no_strength() => Assert.Single(Year.Of("Senior").Phase(PhaseKind.InSeason, 4).Every(7, 4, "easy-run 2026-08-04 18:00 35").Check(StrengthRules.R22));

    [Fact]
    public void Under_fifteen_it_is_not_asked() => Assert.Empty(Season("U16", 0).Check(StrengthRules.R22));

    [Fact]
    public void A_closed_week_is_not_judged() => Assert.Empty(Season("Senior", 3).Closed("2026-08-24", "2026-08-30").Check(StrengthRules.R22));

    [Theory]
    [InlineData(82, 0)]
    [InlineData(81, 1)]
    public void Lifts_more_than_five_points_lighter_than_in_pre_season_are_a_note(int percent, int notes)
    {
        var year = Year.Of("Senior").Phase(PhaseKind.PreSeason, 1).Phase(PhaseKind.InSeason, 1).With("heavy-lift 2026-08-04 18:00 45", "strength-upkeep 2026-08-11 18:00 35")
            .Lifting("heavy-lift", 87).Lifting("strength-upkeep", percent);

        Assert.Equal(notes, year.Check(StrengthRules.R22).Count(f => f.Strength == Strength.Note));
    }

    [Fact]
    public void From_fifteen_on_it_is_asked() => Assert.Equal((0, 1, "sessions"), Assert.Single(Season("U17", 0).Check(StrengthRules.R22)).FiguresOf());

    [Fact]
    public void Lighter_lifts_are_told_against_the_last_of_pre_season()
    {
        var note = Year.Of("Senior").Phase(PhaseKind.PreSeason, 2).Phase(PhaseKind.InSeason, 1)
            .With("heavy-lift 2026-08-04 18:00 45").Lifting("heavy-lift", 95).With("lift-and-jump 2026-08-11 18:00 45", "strength-upkeep 2026-08-18 18:00 35")
            .Lifting("lift-and-jump", 87).Lifting("strength-upkeep", 80).Check(StrengthRules.R22).Single(f => f.Strength == Strength.Note);

        Assert.Equal((80, 82, "%"), note.FiguresOf());
        Assert.StartsWith("In 1 of 1 weeks", note.Message, StringComparison.Ordinal);
    }
}

public class PhasesHaveTheirStrengthSessionsTests
{
    private static Year Weekly(PhaseKind phase, int sessions) =>
        Enumerable.Range(0, sessions).Aggregate(Year.Of("Senior").Phase(phase, 3), (year, day) => year.Every(7, 3, $"strength-circuit 2026-08-0{3 + day} 18:00 40"));

    [Theory]
    [InlineData(PhaseKind.Recovery, 0, 3)]
    [InlineData(PhaseKind.AerobicBuild, 2, 4)]
    [InlineData(PhaseKind.Mixed, 2, 4)]
    [InlineData(PhaseKind.PreSeason, 2, 4)]
    [InlineData(PhaseKind.Break, 1, 3)]
    public void Least_and_most_pass_and_one_beyond_is_found(PhaseKind phase, int least, int most)
    {
        Assert.Empty(Weekly(phase, least).Check(StrengthRules.R24));
        Assert.Empty(Weekly(phase, most).Check(StrengthRules.R24));
        Assert.Single(Weekly(phase, most + 1).Check(StrengthRules.R24));
        Assert.True(least == 0 || Weekly(phase, least - 1).Check(StrengthRules.R24).Count == 1);
    }

    /// <summary>The seniors' break asks for two circuits a week.</summary>
    [Theory]
    [InlineData(WeekLoading.Unloading, Cause.EasierWeek)]
    [InlineData(WeekLoading.Loading, null)]
    public void Only_an_easier_week_explains_what_the_mix_asked_for(WeekLoading loading, Cause? forcedBy) =>
        Assert.Equal(forcedBy, Assert.Single(Year.Of("Senior").Phase(PhaseKind.Break, 1, loading).Check(StrengthRules.R24)).ForcedBy);

    [Fact]
    public void In_season_only_the_most_is_judged()
    {
        Assert.Empty(Weekly(PhaseKind.InSeason, 0).Check(StrengthRules.R24));
        Assert.Single(Weekly(PhaseKind.InSeason, 4).Check(StrengthRules.R24));
    }

    [Fact]
    public void Too_few_and_too_many_are_told_with_their_number_and_weeks()
    {
        var few = Assert.Single(Weekly(PhaseKind.Mixed, 1).Check(StrengthRules.R24));
        var many = Assert.Single(Weekly(PhaseKind.Mixed, 5).Check(StrengthRules.R24));

        Assert.Equal((1, 2, "sessions"), few.FiguresOf());
        Assert.StartsWith("3 of 3 weeks of this mixed phase have fewer than 2", few.Message, StringComparison.Ordinal);
        Assert.Equal(((5, 4, "sessions"), Cause.Template), (many.FiguresOf(), many.ForcedBy));
        Assert.Equal(15, many.Facts!.Sessions.Count);
    }

    [Fact]
    public void The_session_too_many_may_be_a_coachs() =>
        Assert.Equal(Cause.Coach, Assert.Single(Year.Of("Senior").Phase(PhaseKind.Break, 1).Every(1, 4, "strength-circuit 2026-08-03 18:00 40").Pinned().Check(StrengthRules.R24)).ForcedBy);

    [Theory]
    [InlineData("U16", 0)]
    [InlineData("U17", 1)]
    public void Under_fifteen_it_is_not_asked(string ages, int findings) => Assert.Equal(findings, Year.Of(ages).Phase(PhaseKind.Mixed, 3).Check(StrengthRules.R24).Count);
}
