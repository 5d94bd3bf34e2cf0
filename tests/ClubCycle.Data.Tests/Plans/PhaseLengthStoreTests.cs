using ClubCycle.Data.Plans;
using ClubCycle.Planning;
using ClubCycle.Planning.Phases;

namespace ClubCycle.Data.Tests.Plans;

public sealed class PhaseLengthStoreTests(ClubData data) : IClassFixture<ClubData>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Lengths_show_in_the_draft_until_they_are_cleared()
    {
        var (club, squad) = await NewAsync();
        var before = (await club.DraftAsync(squad)).Plan.Phases;

        (await SetAsync(club, squad, new PhaseLength(0, "long", 1, 9))).OrThrow();
        Assert.Equal(9, (await club.DraftAsync(squad)).Plan.Phases[1].Weeks);

        (await SetAsync(club, squad)).OrThrow();
        Assert.Equal(before, (await club.DraftAsync(squad)).Plan.Phases);
    }

    [Fact]
    public async Task Setting_a_gaps_lengths_replaces_all_that_it_had_and_leaves_other_gaps_alone()
    {
        var (club, squad) = await NewAsync();
        var lengths = club.Store<PhaseLengthStore>();
        (await lengths.SetAsync(squad, 1, [new PhaseLength(1, "break", 0, 4)], ClubData.By, Cancel)).OrThrow();
        (await SetAsync(club, squad, new PhaseLength(0, "long", 0, 4), new PhaseLength(0, "long", 1, 9))).OrThrow();

        (await SetAsync(club, squad, new PhaseLength(0, "long", 1, 10), new PhaseLength(0, "long", 2, 5))).OrThrow();

        Assert.Equal([new(0, "long", 1, 10), new(0, "long", 2, 5), new(1, "break", 0, 4)], await lengths.ListAsync(squad, Cancel));
    }

    [Fact]
    public async Task They_belong_to_the_season_that_they_were_set_for()
    {
        var (club, squad) = await NewAsync();
        (await SetAsync(club, squad, new PhaseLength(0, "long", 1, 9))).OrThrow();

        await club.SeasonAsync(squad);

        Assert.Empty(await club.Store<PhaseLengthStore>().ListAsync(squad, Cancel));
    }

    [Fact]
    public async Task What_the_planner_would_refuse_is_never_stored()
    {
        var (club, squad) = await NewAsync();

        Problems.AssertProblem("length.range", await SetAsync(club, squad, new PhaseLength(0, "long", 1, 61)));
        Problems.AssertProblem("length.range", await SetAsync(club, squad, new PhaseLength(0, "long", 1, 4), new PhaseLength(0, "long", 1, 5)));
        Problems.AssertProblem("length.range", await SetAsync(club, squad, new PhaseLength(1, "break", 0, 4)));
    }

    [Fact]
    public async Task A_squad_without_a_season_is_told_to_set_its_dates()
    {
        var club = await data.NewClubAsync();

        Problems.AssertProblem("season.missing", await SetAsync(club, await club.SquadAsync(), new PhaseLength(0, "long", 1, 9)));
    }

    [Fact]
    public async Task Another_clubs_squad_is_not_there()
    {
        var (_, squad) = await NewAsync();

        Problems.AssertProblem("squad.not-found", await SetAsync(await data.NewClubAsync(), squad, new PhaseLength(0, "long", 1, 9)));
    }

    private async Task<(TestClub Club, Guid Squad)> NewAsync()
    {
        var club = await data.NewClubAsync();
        return (club, await club.PlannedSquadAsync());
    }

    private static Task<Result<Guid>> SetAsync(TestClub club, Guid squad, params PhaseLength[] lengths) =>
        club.Store<PhaseLengthStore>().SetAsync(squad, 0, lengths, ClubData.By, Cancel);
}
