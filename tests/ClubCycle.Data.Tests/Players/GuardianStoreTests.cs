using ClubCycle.Data.Clubs;
using ClubCycle.Data.Links;
using ClubCycle.Data.Players;
using ClubCycle.Data.Squads;
using ClubCycle.Planning.Languages;
using ClubCycle.Planning.Players;
using ClubCycle.Planning.Squads;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Tests.Players;

public sealed class GuardianStoreTests(ClubData data) : IClassFixture<ClubData>
{
    private static readonly LocalDate Today = new(2026, 3, 1);
    private static readonly FieldTestResult Shuttles = new(TestKind.ShuttleRun, new LocalDate(2026, 2, 20), 9);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_child_has_neither_link_nor_result_before_a_guardian_agrees()
    {
        var (club, squad, child) = await NewChildAsync();

        Problems.AssertProblem("guardian.missing", await club.Store<LinkStore>().CreateAsync(squad, child, "phone", ClubData.By, Cancel));
        Problems.AssertProblem("sheet.guardians-missing", await club.Store<LinkStore>().CreateSheetAsync(squad, true, null, Today, ClubData.By, Cancel));
        Problems.AssertProblem("guardian.missing", await club.Store<TestResultStore>().AddAsync(squad, child, Shuttles, ClubData.By, Cancel));
    }

    [Fact]
    public async Task A_guardian_who_confirms_opens_the_way()
    {
        var (club, squad, child) = await NewChildAsync();
        var question = await QuestionAsync(club, await AskAsync(club, squad, child));

        await club.Store<GuardianStore>().AnswerAsync(question, true, Cancel);

        (await club.Store<LinkStore>().CreateAsync(squad, child, "phone", ClubData.By, Cancel)).OrThrow();
        (await club.Store<TestResultStore>().AddAsync(squad, child, Shuttles, ClubData.By, Cancel)).OrThrow();
        Assert.Equal(new GuardianStanding(true, GuardianAnswer.Confirmed, Today, Today), await StandingAsync(club, squad, child));
    }

    [Fact]
    public async Task Taking_it_back_by_the_same_address_ends_the_players_links_at_once()
    {
        var (club, squad, child) = await NewChildAsync();
        var token = await AskAsync(club, squad, child);
        await club.Store<GuardianStore>().AnswerAsync(await QuestionAsync(club, token), true, Cancel);
        var link = (await club.Store<LinkStore>().CreateAsync(squad, child, "phone", ClubData.By, Cancel)).OrThrow();

        await club.Store<GuardianStore>().AnswerAsync(await QuestionAsync(club, token), false, Cancel);

        Assert.False((await club.Store<LinkStore>().FindAsync(link.Token, Cancel))!.Live);
        Assert.Equal(GuardianAnswer.TakenBack, (await StandingAsync(club, squad, child)).Answer);
        Problems.AssertProblem("guardian.missing", await club.Store<LinkStore>().CreateAsync(squad, child, "phone", ClubData.By, Cancel));
    }

    [Fact]
    public async Task An_address_that_nobody_answers_through_expires_after_seven_days()
    {
        var (club, squad, child) = await NewChildAsync();
        var token = await AskAsync(club, squad, child);
        data.Clock.Now += Duration.FromDays(7) - Duration.FromSeconds(1);
        Assert.NotNull(await club.Store<GuardianStore>().FindAsync(token, Cancel));

        data.Clock.Now += Duration.FromSeconds(1);

        Assert.Null(await club.Store<GuardianStore>().FindAsync(token, Cancel));
    }

    [Fact]
    public async Task An_address_that_was_answered_through_works_on_so_that_the_answer_can_be_taken_back()
    {
        var (club, squad, child) = await NewChildAsync();
        var token = await AskAsync(club, squad, child);
        await club.Store<GuardianStore>().AnswerAsync(await QuestionAsync(club, token), true, Cancel);

        data.Clock.Now += Duration.FromDays(300);

        Assert.NotNull(await club.Store<GuardianStore>().FindAsync(token, Cancel));
    }

    [Fact]
    public async Task A_new_address_ends_the_one_before_and_keeps_the_answer()
    {
        var (club, squad, child) = await NewChildAsync();
        var first = await AskAsync(club, squad, child);
        await club.Store<GuardianStore>().AnswerAsync(await QuestionAsync(club, first), true, Cancel);

        var second = await AskAsync(club, squad, child);

        Assert.Null(await club.Store<GuardianStore>().FindAsync(first, Cancel));
        Assert.True((await QuestionAsync(club, second)).Standing.IsAgreed);
    }

    [Fact]
    public async Task An_address_that_a_coach_ended_opens_nothing()
    {
        var (club, squad, child) = await NewChildAsync();
        var token = await AskAsync(club, squad, child);

        (await club.Store<GuardianStore>().EndLinkAsync(squad, child, ClubData.By, Cancel)).OrThrow();

        Assert.Null(await club.Store<GuardianStore>().FindAsync(token, Cancel));
    }

    [Fact]
    public async Task Only_a_hash_of_the_secret_is_stored()
    {
        var (club, squad, child) = await NewChildAsync();
        var token = await AskAsync(club, squad, child);

        await using var db = await club.OpenAsync();
        var row = await db.Database.SqlQuery<string>($"select c::text as \"Value\" from club.guardian_consents c where player_id = {child}").SingleAsync(Cancel);

        Assert.DoesNotContain(token, row, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Consent_on_paper_counts_and_its_day_is_noted_without_a_name()
    {
        var (club, squad, child) = await NewChildAsync();

        await club.AgreeAsync(squad, child);

        (await club.Store<LinkStore>().CreateAsync(squad, child, "phone", ClubData.By, Cancel)).OrThrow();
        await using var db = await club.OpenAsync();
        Assert.Equal($"{child:D} 2026-02-01", (await db.Audit.SingleAsync(a => a.What == "guardian.agreed-on-paper", Cancel)).Details);
    }

    [Fact]
    public async Task No_coach_overrules_a_guardians_no_with_a_paper()
    {
        var (club, squad, child) = await NewChildAsync();
        await club.Store<GuardianStore>().AnswerAsync(await QuestionAsync(club, await AskAsync(club, squad, child)), false, Cancel);

        Problems.AssertProblem("guardian.refused", await club.Store<GuardianStore>().AgreedOnPaperAsync(squad, [child], Today, ClubData.By, Cancel));
    }

    [Fact]
    public async Task A_paper_of_tomorrow_is_refused()
    {
        var (club, squad, child) = await NewChildAsync();

        Problems.AssertProblem("guardian.paper-day", await club.Store<GuardianStore>().AgreedOnPaperAsync(squad, [child], Today.PlusDays(1), ClubData.By, Cancel));
    }

    [Fact]
    public async Task Of_who_is_old_enough_no_guardian_is_asked()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();

        Problems.AssertProblem("guardian.not-needed", await club.Store<GuardianStore>().AskAsync(squad, await club.PlayerAsync(squad), Language.English, ClubData.By, Cancel));
    }

    [Fact]
    public async Task A_sheet_leaves_out_whose_guardian_has_not_agreed()
    {
        var (club, squad, child) = await NewChildAsync();
        await club.PlayerAsync(squad, "Bo L.");
        await club.AgreeAsync(squad, child);

        Assert.Equal(["Ana P."], (await club.Store<LinkStore>().CreateSheetAsync(squad, true, null, Today, ClubData.By, Cancel)).OrThrow().Links.Select(l => l.Player));
    }

    [Fact]
    public async Task Links_that_are_there_stay_when_the_club_raises_its_age()
    {
        var club = await data.NewClubAsync();
        var squad = (await club.Store<SquadStore>().AddAsync(ClubData.Squad("U18", AgeGroup.Youth(18)), null, ClubData.By, Cancel)).OrThrow();
        var player = await club.PlayerAsync(squad);
        var link = (await club.Store<LinkStore>().CreateAsync(squad, player, "phone", ClubData.By, Cancel)).OrThrow();

        (await club.Store<ClubStore>().SetGuardianAgeAsync(18, 1, ClubData.By, Cancel)).OrThrow();

        Assert.True((await StandingAsync(club, squad, player)).IsMissing);
        Assert.True((await club.Store<LinkStore>().FindAsync(link.Token, Cancel))!.Live);
    }

    [Theory]
    [InlineData(12)]
    [InlineData(19)]
    public async Task A_clubs_age_lies_between_13_and_18(int age)
    {
        var club = await data.NewClubAsync();

        Problems.AssertProblem("club.guardian-age", await club.Store<ClubStore>().SetGuardianAgeAsync(age, 1, ClubData.By, Cancel));
    }

    [Fact]
    public async Task Who_is_old_enough_is_told_and_the_guardians_address_ends()
    {
        var (club, squad, child) = await NewChildAsync();
        var player = (await club.Store<PlayerStore>().ListAsync(squad, Cancel)).Single();
        (await club.Store<PlayerStore>().LimitAsync(squad, child, player.Limits with { BirthYear = 2010 }, player.Version, ClubData.By, Cancel)).OrThrow();
        var token = await AskAsync(club, squad, child);
        await club.Store<GuardianStore>().AnswerAsync(await QuestionAsync(club, token), true, Cancel);
        Assert.False(await club.Store<GuardianStore>().IsToldAsync(squad, child, Cancel));

        data.Clock.Now = Instant.FromUtc(2027, 1, 1, 12, 0);
        Assert.False((await StandingAsync(club, squad, child)).IsNeeded);
        Assert.True(await club.Store<GuardianStore>().IsToldAsync(squad, child, Cancel));
        await club.Store<RetentionStore>().SweepAsync(Cancel);

        Assert.Null(await club.Store<GuardianStore>().FindAsync(token, Cancel));
        data.Clock.Now += Duration.FromDays(GuardianStore.NoticeDays + 1);
        Assert.False(await club.Store<GuardianStore>().IsToldAsync(squad, child, Cancel));
    }

    [Fact]
    public async Task A_guardian_can_no_longer_take_back_what_the_young_person_decides()
    {
        var (club, squad, child) = await NewChildAsync();
        var question = await QuestionAsync(club, await AskAsync(club, squad, child));
        await club.Store<GuardianStore>().AnswerAsync(question, true, Cancel);
        var link = (await club.Store<LinkStore>().CreateAsync(squad, child, "phone", ClubData.By, Cancel)).OrThrow();
        var player = (await club.Store<PlayerStore>().ListAsync(squad, Cancel)).Single();
        (await club.Store<PlayerStore>().LimitAsync(squad, child, player.Limits with { BirthYear = 2009 }, player.Version, ClubData.By, Cancel)).OrThrow();

        await club.Store<GuardianStore>().AnswerAsync(question, false, Cancel);

        Assert.True((await club.Store<LinkStore>().FindAsync(link.Token, Cancel))!.Live);
    }

    [Fact]
    public async Task Erasing_the_player_takes_the_guardians_answer_along()
    {
        var (club, squad, child) = await NewChildAsync();
        var token = await AskAsync(club, squad, child);

        (await club.Store<PlayerStore>().RemoveAsync(squad, child, ClubData.By, Cancel)).OrThrow();

        Assert.Null(await club.Store<GuardianStore>().FindAsync(token, Cancel));
        await using var db = await club.OpenAsync();
        Assert.False(await db.GuardianConsents.AnyAsync(c => c.PlayerId == child, Cancel));
    }

    [Fact]
    public async Task A_protected_players_guardian_address_opens_nothing()
    {
        var (club, squad, child) = await NewChildAsync();
        var token = await AskAsync(club, squad, child);

        (await club.Store<WelfareStore>().ProtectAsync(child, true, ClubData.By, Cancel)).OrThrow();

        Assert.Null(await club.Store<GuardianStore>().FindAsync(token, Cancel));
    }

    [Fact]
    public async Task Another_clubs_player_is_not_there()
    {
        var (_, squad, child) = await NewChildAsync();
        var other = (await data.NewClubAsync("Elsewhere")).Store<GuardianStore>();

        Problems.AssertProblem("player.not-found", await other.AskAsync(squad, child, Language.English, ClubData.By, Cancel));
        Problems.AssertProblem("player.not-found", await other.EndLinkAsync(squad, child, ClubData.By, Cancel));
        Problems.AssertProblem("player.not-found", await other.AgreedOnPaperAsync(squad, [child], Today, ClubData.By, Cancel));
    }

    [Fact]
    public async Task What_a_guardian_answered_is_in_the_players_file()
    {
        var (club, squad, child) = await NewChildAsync();
        await club.AgreeAsync(squad, child);

        Assert.Equal(
            new PersonGuardian(null, "English", "OnPaper", new LocalDate(2026, 2, 1), null),
            Assert.Single((await club.Store<PersonFileStore>().GatherAsync(squad, child, "The mother asked for it", ClubData.By, Cancel)).OrThrow().Guardian));
    }

    private async Task<(TestClub Club, Guid Squad, Guid Child)> NewChildAsync()
    {
        var club = await data.NewClubAsync();
        var squad = (await club.Store<SquadStore>().AddAsync(ClubData.Squad("U14", AgeGroup.Youth(14)), null, ClubData.By, Cancel)).OrThrow();
        return (club, squad, await club.PlayerAsync(squad));
    }

    private static async Task<string> AskAsync(TestClub club, Guid squad, Guid child) => (await club.Store<GuardianStore>().AskAsync(squad, child, Language.Dutch, ClubData.By, Cancel)).OrThrow();

    private static async Task<GuardianQuestion> QuestionAsync(TestClub club, string token) => (await club.Store<GuardianStore>().FindAsync(token, Cancel))!;

    private static async Task<GuardianStanding> StandingAsync(TestClub club, Guid squad, Guid player) => (await club.Store<PlayerStore>().ListAsync(squad, Cancel)).Single(p => p.Id == player).Guardian;
}
