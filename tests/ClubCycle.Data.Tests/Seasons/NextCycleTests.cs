using ClubCycle.Data.Plans;
using ClubCycle.Data.Seasons;
using ClubCycle.Data.Squads;
using ClubCycle.Data.Templates;
using ClubCycle.Planning;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Tests.Seasons;

public sealed class NextCycleTests(ClubData data) : IClassFixture<ClubData>
{
    private static readonly LocalDate LastDay = ClubData.Stints[^1].Last;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static Season Next => NextSeason.Propose(Season.Create(null, ClubData.Stints).OrThrow()).OrThrow();

    [Fact]
    public async Task The_preview_is_what_the_draft_is_on_the_day_after_the_last_match()
    {
        var (club, squad) = await PublishedYearAsync();
        data.Clock.Now = At(LastDay.PlusDays(-30));

        var preview = Assert.Single(await club.Store<SeasonPreviews>().WithSeasonAsync(squad, Next, cancel: Cancel));
        (await SaveAsync(club, null)).OrThrow();
        data.Clock.Now = At(LastDay.PlusDays(1));

        Assert.Equal(PlanFile.WritePlan((await club.DraftAsync(squad)).Plan), PlanFile.WritePlan(preview.Plan!));
    }

    [Fact]
    public async Task The_old_cycle_counts_until_its_last_match_and_the_new_one_from_the_day_after()
    {
        var (club, squad) = await PublishedYearAsync();
        (await SaveAsync(club, null)).OrThrow();

        data.Clock.Now = At(LastDay);
        Assert.Equal(LastDay, (await club.DraftAsync(squad)).Plan.Cycle.End);
        data.Clock.Now = At(LastDay.PlusDays(1));
        Assert.Equal(LastDay.PlusDays(1), (await club.DraftAsync(squad)).Plan.Cycle.Start);
    }

    [Fact]
    public async Task The_new_cycle_is_planned_from_the_last_weeks_of_the_old_one_before_and_after_it_is_published()
    {
        var (club, squad) = await NewCycleAsync();
        var first = await club.DraftAsync(squad);
        await club.PublishAsync(squad, 1);

        var second = await club.DraftAsync(squad);

        Assert.All(first.Request.Before!, s => Assert.InRange(s.Date, LastDay.PlusDays(-33), LastDay));
        Assert.Contains(first.Request.Before!, s => s.Kind == SessionKind.Match);
        Assert.Equal(first.Request.Before!.Select(s => s.Uid), data.TestClub(club.Id) is var again ? (await again.DraftAsync(squad)).Request.Before!.Select(s => s.Uid) : []);
        Assert.False(second.HasUnpublishedChanges);
    }

    [Fact]
    public async Task A_cycle_with_a_gap_before_it_knows_nothing_of_the_old_one()
    {
        var (club, squad) = await PublishedYearAsync();
        (await club.Store<SeasonStore>().AddAsync(null, LastDay.PlusDays(20), [new(new(2027, 10, 1), new(2027, 11, 30))], ClubData.By, Cancel)).OrThrow();
        data.Clock.Now = At(LastDay.PlusDays(21));

        Assert.Null((await club.DraftAsync(squad)).Request.Before);
    }

    [Fact]
    public async Task Publishing_the_new_cycle_cancels_nothing_of_the_old_one()
    {
        var (club, squad) = await NewCycleAsync();
        await club.PublishAsync(squad, 1);

        Assert.Empty((await club.Store<PlanStore>().PublishedAsync(squad, Cancel)).OrThrow().Cancelled);
        await using var db = await club.OpenAsync();
        Assert.Equal(0, await db.Sessions.CountAsync(s => s.CancelledAt != null, Cancel));
    }

    [Fact]
    public async Task The_last_thirty_days_stay_on_phones_with_the_stamps_they_had()
    {
        var (club, squad) = await NewCycleAsync();
        var old = (await club.Store<PlanStore>().PublishedAsync(squad, Cancel)).OrThrow();
        await club.PublishAsync(squad, 1);

        var now = (await club.Store<PlanStore>().PublishedAsync(squad, Cancel)).OrThrow();

        var kept = old.Plan.Sessions.Where(s => s.Date >= LastDay.PlusDays(1 - 30)).Select(s => s.Uid).ToList();
        Assert.NotEmpty(kept);
        Assert.Equal(kept, now.Earlier.Select(s => s.Uid));
        Assert.All(kept, uid => Assert.Equal(old.Stamps[uid], now.Stamps[uid]));
        Assert.Equal(now.Sessions.OrderBy(s => s.StartsAt).Select(s => s.StartsAt), now.Sessions.Select(s => s.StartsAt));
    }

    [Fact]
    public async Task Inside_a_cycle_nothing_earlier_is_added()
    {
        var (club, squad) = await PublishedYearAsync();
        await club.PublishAsync(squad, 1);

        Assert.Empty((await club.Store<PlanStore>().PublishedAsync(squad, Cancel)).OrThrow().Earlier);
    }

    [Fact]
    public async Task Season_training_age_and_newest_template_are_saved_in_one_act()
    {
        var (club, squad, template) = await WithNewerTemplateAsync();
        var standing = Assert.Single(await club.Store<NextSeasonStore>().StandingAsync(null, Cancel));
        Assert.Equal((squad, 1, 2, true), (standing.SquadId, standing.TemplateVersion, standing.NewestVersion, standing.Published));

        (await SaveAsync(club, null, new SquadStep(squad, standing.Version, TrainingAge.Some, true))).OrThrow();

        var stored = (await club.Store<SquadStore>().FindAsync(squad, Cancel)).OrThrow();
        Assert.Equal((TrainingAge.Some, template, 2), (stored.Squad.TrainingAge, stored.TemplateId, stored.TemplateVersion));
        Assert.Equal(2, (await club.Store<SeasonStore>().ListAsync(Cancel)).Count);
        Assert.Null(Assert.Single(await club.Store<NextSeasonStore>().StandingAsync(null, Cancel)).Newest);
    }

    [Fact]
    public async Task When_somebody_changed_a_squad_meanwhile_nothing_is_saved()
    {
        var (club, squad, _) = await WithNewerTemplateAsync();

        Problems.AssertProblem("squad.changed-meanwhile", await SaveAsync(club, null, new SquadStep(squad, 99, TrainingAge.Some, false)));

        Assert.Single(await club.Store<SeasonStore>().ListAsync(Cancel));
    }

    [Fact]
    public async Task The_same_season_is_not_saved_twice()
    {
        var (club, _) = await PublishedYearAsync();
        (await SaveAsync(club, null)).OrThrow();

        Problems.AssertProblem("season.there-already", await SaveAsync(club, null));
    }

    [Fact]
    public async Task A_squad_that_follows_the_club_gets_no_next_season_of_its_own()
    {
        var (club, squad) = await PublishedYearAsync();

        Problems.AssertProblem("season.follows-club", await SaveAsync(club, squad));
        Assert.Single(await club.Store<SeasonStore>().ListAsync(Cancel));
    }

    [Fact]
    public async Task A_squad_with_dates_of_its_own_does_not_follow_the_clubs()
    {
        var (club, squad) = await PublishedYearAsync();
        var own = await club.SquadAsync("Women 2");
        await club.SeasonAsync(own);

        Assert.Equal(squad, Assert.Single(await club.Store<NextSeasonStore>().StandingAsync(null, Cancel)).SquadId);
        Assert.Equal(own, Assert.Single(await club.Store<NextSeasonStore>().StandingAsync(own, Cancel)).SquadId);
    }

    private async Task<(TestClub Club, Guid Squad)> PublishedYearAsync()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        await club.PublishAsync(squad);
        return (club, squad);
    }

    /// <summary>The day after the last match, with the next season saved.</summary>
    private async Task<(TestClub Club, Guid Squad)> NewCycleAsync()
    {
        var (club, squad) = await PublishedYearAsync();
        (await SaveAsync(club, null)).OrThrow();
        data.Clock.Now = At(LastDay.PlusDays(1));
        return (club, squad);
    }

    private async Task<(TestClub Club, Guid Squad, Guid Template)> WithNewerTemplateAsync()
    {
        var (club, squad) = await PublishedYearAsync();
        var templates = club.Store<TemplateStore>();
        var stored = (await club.Store<SquadStore>().FindAsync(squad, Cancel)).OrThrow();
        var clone = (await templates.CloneAsync(stored.TemplateId, null, "House plan", ClubData.By, Cancel)).OrThrow();
        (await templates.UseForSquadAsync(squad, clone, 1, stored.Version, ClubData.By, Cancel)).OrThrow();
        (await templates.SaveVersionAsync(clone, (await templates.FindAsync(clone, null, Cancel)).OrThrow().Template, 1, ClubData.By, "", Cancel)).OrThrow();
        return (club, squad, clone);
    }

    private static Task<Result<Guid>> SaveAsync(TestClub club, Guid? squad, params SquadStep[] steps) =>
        club.Store<NextSeasonStore>().SaveAsync(squad, Next.PreviousLastDay, Next.Stints, steps, ClubData.By, Cancel);

    private static Instant At(LocalDate day) => day.At(new LocalTime(12, 0)).InUtc().ToInstant();
}
