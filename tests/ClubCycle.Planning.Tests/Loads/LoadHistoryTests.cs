using ClubCycle.Planning.Loads;
using ClubCycle.Planning.Weeks;
using static ClubCycle.Planning.Weeks.WeekLoading;

namespace ClubCycle.Planning.Tests.Loads;

public class LoadHistoryTests
{
    [Fact]
    public void Without_a_past_there_is_nothing_to_compare_with() => Assert.Null(new LoadHistory().Reference);

    [Fact]
    public void A_week_is_compared_with_the_one_before() => Assert.Equal(1_800, Of((Loading, 1_500), (Loading, 1_800)).Reference);

    [Fact]
    public void After_an_unloading_week_the_loading_weeks_before_it_count() =>
        Assert.Equal(1_900, Of((Loading, 1_800), (Loading, 1_900), (Loading, 2_000), (Unloading, 1_100)).Reference);

    [Fact]
    public void Only_the_last_three_loading_weeks_count() =>
        Assert.Equal(2_000, Of((Loading, 100), (Loading, 1_900), (Loading, 2_000), (Match, 2_100), (Taper, 900)).Reference);

    [Fact]
    public void An_easier_week_that_was_harder_than_its_run_counts_itself() => Assert.Equal(1_200, Of((Loading, 1_000), (Unloading, 1_200)).Reference);

    [Fact]
    public void A_new_run_starts_after_an_easier_week() =>
        Assert.Equal(1_500, Of((Loading, 2_000), (Unloading, 1_000), (Loading, 1_500)).MeanOfRun);

    [Fact]
    public void A_week_without_load_is_an_easier_week() => Assert.Equal(1_000, Of((Loading, 1_000), (Loading, 0)).Reference);

    [Fact]
    public void The_mean_of_four_weeks_takes_the_last_four_easier_ones_too()
    {
        Assert.Null(Of((Loading, 1_000), (Loading, 1_000), (Loading, 1_000)).MeanOfFour);
        Assert.Equal(1_000, Of((Loading, 9_000), (Loading, 1_200), (Unloading, 600), (Loading, 1_400), (Taper, 800)).MeanOfFour);
    }

    [Fact]
    public void A_single_easier_week_is_compared_with_itself() => Assert.Equal(700, Of((Unloading, 700)).Reference);

    private static LoadHistory Of(params (WeekLoading Kind, int Load)[] weeks)
    {
        var history = new LoadHistory();
        foreach (var (kind, load) in weeks)
        {
            history.Add(kind, load);
        }

        return history;
    }
}
