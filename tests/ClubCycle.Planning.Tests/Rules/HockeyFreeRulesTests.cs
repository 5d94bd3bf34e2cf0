using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;

namespace ClubCycle.Planning.Tests.Rules;

public class YoungPlayersHaveMonthsAwayFromHockeyTests
{
    // Vector: one 28-day and one 30-day block are 58 days: enough for the must, short for the should. Rule after AAP 2007 and 2024.
    [Fact]
    public void Two_blocks_of_about_a_month_meet_the_must_but_not_the_should()
    {
        var days = HockeyFreeRules.DaysInBlocks([28, 30, 27, 6]);

        Assert.Equal(58, days);
        Assert.Equal(Strength.Should, HockeyFreeRules.Shortage(days));
    }

    [Theory]
    [InlineData(55, Strength.Must)]
    [InlineData(56, Strength.Should)]
    [InlineData(83, Strength.Should)]
    [InlineData(84, null)]
    public void Eight_weeks_are_a_must_and_twelve_a_should(int days, Strength? shortage) => Assert.Equal(shortage, HockeyFreeRules.Shortage(days));

    [Fact]
    public void Days_between_contacts_are_counted_to_both_ends_of_the_cycle()
    {
        var year = Year.Of("U12").Phase(PhaseKind.Recovery, 20).With("practice 2026-08-31 18:00 60", "match 2026-10-05 10:00 40");

        // 28 days before the practice, 34 between, 76 after: all blocks count.
        Assert.Empty(year.Check(HockeyFreeRules.R07));
        Assert.Equal(Strength.Must, Assert.Single(Year.Of("U12").Phase(PhaseKind.Recovery, 7).With("practice 2026-08-10 18:00 60").Check(HockeyFreeRules.R07)).Strength);
        Assert.Empty(Year.Of("Senior").Phase(PhaseKind.InSeason, 4).Check(HockeyFreeRules.R07));
    }

    // Twelve weeks of a practice a day but for two blocks: 28 days count, 27 do not.
    [Theory]
    [InlineData(28, 56, Strength.Should)]
    [InlineData(27, 28, Strength.Must)]
    public void Only_blocks_of_four_weeks_count(int second, int days, Strength strength)
    {
        var year = Year.Of("U14").Phase(PhaseKind.AerobicBuild, 12).With("practice 2026-08-31 18:00 60", $"practice {A.Date("2026-09-01").PlusDays(second):uuuu-MM-dd} 18:00 60");
        var finding = Assert.Single(year.Every(1, 83 - 29 - second, $"practice {A.Date("2026-09-01").PlusDays(second):uuuu-MM-dd} 19:00 60").Check(HockeyFreeRules.R07));

        Assert.Equal(((days, strength == Strength.Must ? 56 : 84, "days"), strength), (finding.FiguresOf(), finding.Strength));
    }
}

public class HockeyTakesEightMonthsAtMostTests
{
    [Theory]
    [InlineData(9, 1)]
    [InlineData(8, 0)]
    public void Nine_months_with_hockey_are_one_too_many(int months, int findings) =>
        Assert.Equal(findings, Year.Of("U16").Phase(PhaseKind.InSeason, 50).Every(30, months, "practice 2026-08-05 18:00 60").Check(HockeyFreeRules.R08).Count);

    [Fact]
    public void Matches_in_nine_months_are_the_season_dates_doing() =>
        Assert.Equal(Cause.SeasonDates, Assert.Single(Year.Of("U12").Phase(PhaseKind.InSeason, 50).Every(30, 9, "match 2026-08-05 10:00 40").Check(HockeyFreeRules.R08)).ForcedBy);

    [Fact]
    public void From_fifteen_on_they_pass() =>
        Assert.Empty(Year.Of("U17").Phase(PhaseKind.InSeason, 50).Every(30, 12, "practice 2026-08-05 18:00 60").Check(HockeyFreeRules.R08));

    [Fact]
    public void The_same_month_at_both_ends_of_a_cycle_counts_once() =>
        Assert.Empty(Year.Of("U12").Phase(PhaseKind.InSeason, 52).Every(28, 8, "practice 2026-08-31 18:00 60").With("practice 2027-08-01 18:00 60").Check(HockeyFreeRules.R08));
}
