using ClubCycle.Data.Plans;
using ClubCycle.Data.Seasons;
using ClubCycle.Planning.Seasons;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Tests.Seasons;

public sealed class ClosedDayStoreTests(ClubData data) : IClassFixture<ClubData>
{
    private static readonly IReadOnlyList<ClosedDays> Holidays = [new(new(2026, 12, 25), new(2026, 12, 25), " Christmas "), new(new(2027, 1, 1), new(2027, 1, 3), "New Year")];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Many_days_are_taken_at_once_in_order_and_with_their_reasons()
    {
        var club = await data.NewClubAsync();

        Assert.Equal(2, (await club.Store<ClosedDayStore>().TakeAsync(null, Holidays, ClubData.By, Cancel)).OrThrow());

        Assert.Equal([Holidays[0] with { Why = "Christmas" }, Holidays[1]], (await club.Store<ClosedDayStore>().ListAsync(Cancel)).Select(c => c.Days));
        await using var db = await club.OpenAsync();
        Assert.Equal("2 at once", (await db.Audit.SingleAsync(a => a.What == "closed-days.added", Cancel)).Details);
    }

    [Fact]
    public async Task The_same_days_again_add_nothing()
    {
        var club = await data.NewClubAsync();
        (await club.Store<ClosedDayStore>().TakeAsync(null, Holidays, ClubData.By, Cancel)).OrThrow();

        Assert.Equal(0, (await club.Store<ClosedDayStore>().TakeAsync(null, [.. Holidays.Select(h => h with { Why = "Other" })], ClubData.By, Cancel)).OrThrow());
        Assert.Equal(2, (await club.Store<ClosedDayStore>().ListAsync(Cancel)).Count);
    }

    [Fact]
    public async Task Days_that_the_whole_club_has_closed_are_not_taken_for_a_squad_but_the_other_way_round_they_are()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        (await club.Store<ClosedDayStore>().TakeAsync(squad, [Holidays[0]], ClubData.By, Cancel)).OrThrow();

        Assert.Equal(2, (await club.Store<ClosedDayStore>().TakeAsync(null, Holidays, ClubData.By, Cancel)).OrThrow());
        Assert.Equal(0, (await club.Store<ClosedDayStore>().TakeAsync(squad, Holidays, ClubData.By, Cancel)).OrThrow());
    }

    [Fact]
    public async Task One_day_that_cannot_be_leaves_all_of_them_out()
    {
        var club = await data.NewClubAsync();

        Problems.AssertProblem("closed.why-control-character", await club.Store<ClosedDayStore>().TakeAsync(null, [.. Holidays, Holidays[0] with { Why = "a\0b" }], ClubData.By, Cancel));
        Assert.Empty(await club.Store<ClosedDayStore>().ListAsync(Cancel));
    }

    [Fact]
    public async Task A_squad_of_another_club_is_not_there()
    {
        var other = await (await data.NewClubAsync("Other")).SquadAsync();
        var club = await data.NewClubAsync();

        Problems.AssertProblem("squad.not-found", await club.Store<ClosedDayStore>().TakeAsync(other, Holidays, ClubData.By, Cancel));
    }

    [Fact]
    public async Task More_than_a_club_needs_at_once_is_a_problem() =>
        Problems.AssertProblem("closed.too-many", await (await data.NewClubAsync()).Store<ClosedDayStore>()
            .TakeAsync(null, [.. Enumerable.Range(0, ClosedDayStore.MostAtOnce + 1).Select(i => Holidays[0] with { First = Holidays[0].First.PlusDays(-i) })], ClubData.By, Cancel));

    [Fact]
    public async Task Two_who_take_the_same_days_at_the_same_moment_add_them_once()
    {
        var club = await data.NewClubAsync();

        var taken = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => data.TestClub(club.Id).Store<ClosedDayStore>().TakeAsync(null, Holidays, ClubData.By, Cancel)));

        Assert.Equal(2, taken.Sum(t => t.OrThrow()));
        Assert.Equal(2, (await club.Store<ClosedDayStore>().ListAsync(Cancel)).Count);
    }

    [Theory]
    [InlineData(100, true)]
    [InlineData(101, false)]
    public async Task A_reason_that_is_stored_can_be_planned_with(int length, bool taken)
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();

        Assert.Equal(taken, (await club.Store<ClosedDayStore>().AddAsync(null, Holidays[0] with { Why = new string('x', length) }, ClubData.By, Cancel)).TryGet(out _, out _));
        Assert.NotNull(await club.DraftAsync(squad));
    }

    [Fact]
    public async Task The_preview_is_what_the_draft_becomes_usual_matches_included()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        ClosedDays saturday = new(new LocalDate(2026, 10, 10), new LocalDate(2026, 10, 10), "Fair");

        var preview = Assert.Single(await club.Store<PlanStore>().PreviewAllAsync([squad], new InputChange(Closed: [saturday]), cancel: Cancel));
        Assert.DoesNotContain(preview.After!.Sessions, s => s.Date == saturday.First);
        (await club.Store<ClosedDayStore>().TakeAsync(squad, [saturday], ClubData.By, Cancel)).OrThrow();

        Assert.Equal((await club.DraftAsync(squad)).Plan.Sessions.Select(s => (s.Uid, s.StartsAt)), preview.After.Sessions.Select(s => (s.Uid, s.StartsAt)));
    }
}
