using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;

namespace ClubCycle.Planning.Tests.Rules;

public class SpeedIsTouchedEveryWeekTests
{
    // Vector: the last sprint nine days ago breaks (b). Issurin 2008.
    [Theory]
    [InlineData(5, null)]
    [InlineData(6, Strength.Note)]
    [InlineData(8, Strength.Note)]
    [InlineData(9, Strength.Should)]
    public void Five_days_pass_eight_are_a_note_and_nine_a_warning(int days, Strength? strength) => Assert.Equal(strength, ResidualRules.SpeedAfter(days));

    [Fact]
    public void Nine_days_from_sprint_to_sprint_are_found_with_their_phase() =>
        Assert.Contains(
            "9 days without fast running from 4 Aug (mixed)",
            Assert.Single(Year.Of("Senior").Phase(PhaseKind.Mixed, 2).With("sprint-intervals 2026-08-03 18:00 45", "strides 2026-08-12 18:00 30", "strides 2026-08-16 18:00 30").Check(ResidualRules.R20)).Message,
            StringComparison.Ordinal);

    [Fact]
    public void A_long_stretch_is_one_finding() => Assert.Equal(56, Assert.Single(Year.Of("Senior").Phase(PhaseKind.AerobicBuild, 8).Check(ResidualRules.R20)).Facts!.Measured);

    [Fact]
    public void Practices_and_matches_count() =>
        Assert.Empty(Year.Of("Senior").Phase(PhaseKind.InSeason, 4).Every(7, 4, "practice 2026-08-05 18:00 90").Every(7, 4, "match 2026-08-08 14:00 60").Check(ResidualRules.R20));

    [Fact]
    public void Heavy_lifts_and_jumps_are_no_fast_running() =>
        Assert.Single(Year.Of("Senior").Phase(PhaseKind.Mixed, 4).Every(4, 7, "heavy-lift 2026-08-05 18:00 45").Every(4, 7, "jumps 2026-08-07 18:00 45").Check(ResidualRules.R20));

    [Fact]
    public void Weekly_notes_of_a_phase_are_one_finding() =>
        Assert.StartsWith("4 times in this phase, at the longest 7 days", Assert.Single(Year.Of("Senior").Phase(PhaseKind.InSeason, 4).Every(7, 4, "match 2026-08-08 14:00 60").Check(ResidualRules.R20)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData(PhaseKind.Recovery)]
    [InlineData(PhaseKind.Restore)]
    public void Recovery_is_not_judged_and_the_count_starts_after_it(PhaseKind rest)
    {
        Assert.Empty(Year.Of("Senior").Phase(rest, 4).Check(ResidualRules.R20));
        Assert.Empty(Year.Of("Senior").Phase(rest, 4).Phase(PhaseKind.Mixed, 1).With("strides 2026-09-04 18:00 30").Check(ResidualRules.R20));
    }

    [Theory]
    [InlineData("U12", 0)]
    [InlineData("U13", 1)]
    public void Children_under_eleven_are_not_judged(string ages, int findings) => Assert.Equal(findings, Year.Of(ages).Phase(PhaseKind.AerobicBuild, 4).Check(ResidualRules.R20).Count);

    [Fact]
    public void A_mix_without_speed_forces_it() => Assert.Equal(Cause.Template, Assert.Single(Year.Of("Senior").Phase(PhaseKind.AerobicBuild, 8).Check(ResidualRules.R20)).ForcedBy);

    [Fact]
    public void Closed_days_force_it() =>
        Assert.Equal(
            Cause.ClosedDays,
            Assert.Single(Year.Of("Senior").Phase(PhaseKind.PreSeason, 3).Closed("2026-08-10", "2026-08-16").Every(14, 2, "sprint-intervals 2026-08-07 18:00 45").Check(ResidualRules.R20)).ForcedBy);

    [Theory]
    [InlineData("2026-08-09", 6, 5)]
    [InlineData("2026-08-12", 9, 8)]
    public void Days_are_held_against_the_limit_that_was_passed(string second, int days, int limit)
    {
        var finding = Year.Of("Senior").Phase(PhaseKind.Mixed, 2).With("sprint-intervals 2026-08-03 18:00 45", $"strides {second} 18:00 30", "strides 2026-08-14 18:00 30").Check(ResidualRules.R20)[0];

        Assert.Equal((days, limit, "days"), finding.FiguresOf());
        Assert.Equal(A.Date("2026-08-03"), finding.Week);
    }
}

public class WhatWasBuiltIsTouchedBeforeItFadesTests
{
    private static IEnumerable<(string What, double Limit)> Found(string ages, PhaseKind phase, string sessions, int days) =>
        Year.Of(ages).Phase(phase, 12).Every(days, (84 / days) + 1, sessions).Check(ResidualRules.R21).Select(f => (f.Message[(f.Message.IndexOf("without ", StringComparison.Ordinal) + 8)..f.Message.IndexOf(" from", StringComparison.Ordinal)], f.Facts!.Limit));

    // The limit that was passed. Issurin 2008, 2010; agility 8 and trunk 15 days are editorial.
    [Theory]
    [InlineData("work for muscular endurance", "strength-upkeep", 15, null)]
    [InlineData("work for muscular endurance", "strength-upkeep", 16, 15)]
    [InlineData("work for muscular endurance", "strength-upkeep", 21, 20)]
    [InlineData("repeated sprints", "sprint-intervals", 18, null)]
    [InlineData("repeated sprints", "sprint-intervals", 19, 18)]
    [InlineData("repeated sprints", "sprint-intervals", 23, 22)]
    [InlineData("heavy lifting", "heavy-lift", 30, null)]
    [InlineData("heavy lifting", "heavy-lift", 31, 30)]
    [InlineData("heavy lifting", "heavy-lift", 36, 35)]
    [InlineData("endurance work", "easy-run", 30, null)]
    [InlineData("endurance work", "easy-run", 31, 30)]
    [InlineData("endurance work", "practice", 36, 35)]
    [InlineData("agility work", "reactive-agility", 8, null)]
    [InlineData("agility work", "match", 9, 8)]
    [InlineData("trunk work", "core-and-circuit", 15, null)]
    [InlineData("trunk work", "core-and-circuit", 16, 15)]
    public void Each_quality_has_its_days(string what, string session, int days, int? passed) =>
        Assert.Equal(passed, Found("Senior", PhaseKind.Mixed, $"{session} 2026-08-03 18:00 45", days).Where(f => f.What == what).Select(f => (double?)f.Limit).Max());

    [Fact]
    public void A_quality_that_nothing_for_the_age_trains_is_not_judged()
    {
        Assert.DoesNotContain(Found("U16", PhaseKind.Mixed, "match 2026-08-03 10:00 50", 7), f => f.What == "heavy lifting");
        Assert.Contains(Found("U18", PhaseKind.Mixed, "match 2026-08-03 10:00 50", 7), f => f.What == "heavy lifting");
    }

    [Fact]
    public void Recovery_and_young_children_are_not_judged()
    {
        Assert.Empty(Found("Senior", PhaseKind.Recovery, "easy-run 2026-08-03 18:00 45", 83));
        Assert.Empty(Found("U12", PhaseKind.Mixed, "match 2026-08-03 10:00 40", 83));
    }
}
