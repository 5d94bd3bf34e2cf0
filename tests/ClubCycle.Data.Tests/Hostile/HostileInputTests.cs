using ClubCycle.Data.Clubs;
using ClubCycle.Data.Fixtures;
using ClubCycle.Data.Plans;
using ClubCycle.Data.Players;
using ClubCycle.Data.Seasons;
using ClubCycle.Data.Squads;
using ClubCycle.Data.Templates;
using ClubCycle.Planning;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Templates;
using NodaTime;

namespace ClubCycle.Data.Tests.Hostile;

/// <summary>What nobody should type: each is stored as it is, or refused with a place and a next step. Never an exception, never something else stored.</summary>
public sealed class HostileInputTests(ClubData data) : IClassFixture<ClubData>
{
    private const string Family = "\U0001F468\u200D\U0001F469\u200D\U0001F467\u200D\U0001F466";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>By name, because half a surrogate pair does not survive being written down as a test's argument.</summary>
    private static readonly IReadOnlyDictionary<string, string> Texts = new Dictionary<string, string>
    {
        ["nothing"] = "",
        ["spaces"] = " \u3000\t ",
        ["NUL"] = "a\0b",
        ["escape"] = "a\u001B[2Jb",
        ["next line"] = "a\u0085b",
        ["line separator"] = "a\u2028b",
        ["high surrogate"] = "a\uD83C",
        ["low surrogate"] = "\uDFD1a",
        ["surrogates swapped"] = "\uDFD1\uD83C",
        ["noncharacter"] = "a\uFFFE",
        ["replacement character"] = "a\uFFFD",
        ["override"] = "a\u202Egnp.exe",
        ["isolate"] = "a\u2066b",
        ["zero width only"] = "\u200B\u200D\uFEFF",
        ["filler only"] = "\u3164",
        ["mark only"] = "\u0301",
        ["ten thousand"] = new string('x', 10_000),
        ["a hundred"] = new string('x', 100),
        ["two hundred"] = new string('y', 200),
        ["a hundred sticks"] = string.Concat(Enumerable.Repeat("\U0001F3D1", 100)),
        ["families"] = string.Concat(Enumerable.Repeat(Family, 60)),
        ["stack"] = "Z" + string.Concat(Enumerable.Repeat("\u0335\u0322", 3_000)),
        ["family"] = Family,
        ["flag"] = "\U0001F1F5\U0001F1F9",
        ["right to left"] = "فريق محمد",
        ["mixed directions"] = "Squad אבג 1",
        ["apostrophe"] = "O'Neil's",
        ["quotes and SQL"] = "'; drop table club.squads; --",
        ["markup"] = "<script>alert(1)</script><b>&amp;",
        ["templates"] = "{{7*7}} ${jndi:ldap://x} %s%n",
        ["formula"] = "=HYPERLINK(\"x\")",
        ["calendar specials"] = "a;b,c:d\\n",
        ["null word"] = "Null",
        ["dotless"] = "İstanbul ıI ß ẞ",
        ["look-alike"] = "Wоmen",
        ["path"] = "../../etc/passwd",
        ["private use"] = "\uE000",
    };

    public static TheoryData<string> Names => [.. Texts.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public async Task A_hostile_text_is_stored_as_it_is_or_refused_wherever_it_is_typed(string name)
    {
        var text = Texts[name];
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        var templates = club.Store<TemplateStore>();
        var senior = (await templates.ListAsync(Cancel)).Single(t => t.Name == "senior-standard").Id;
        var clone = (await templates.CloneAsync(senior, null, "Ours", ClubData.By, Cancel)).OrThrow();
        var template = (await templates.FindAsync(clone, cancel: Cancel)).OrThrow().Template;

        await KeptOrRefusedAsync(text, club.Store<ClubStore>().SaveAsync(text, "Europe/Lisbon", IsoDayOfWeek.Monday, 1, ClubData.By, Cancel), async () => (await club.Store<ClubStore>().FindAsync(Cancel)).OrThrow().Name);
        Refused("club.unknown-time-zone", await club.Store<ClubStore>().SaveAsync("Test", text, IsoDayOfWeek.Monday, 2, ClubData.By, Cancel));
        await KeptOrRefusedAsync(text, club.Store<SquadStore>().SaveAsync(ClubData.Squad(text) with { Key = squad }, 1, ClubData.By, Cancel), async () => (await club.Store<SquadStore>().FindAsync(squad, Cancel)).OrThrow().Squad.Name);
        await KeptOrRefusedAsync(text, templates.CloneAsync(senior, null, text, ClubData.By, Cancel), async () => (await templates.ListAsync(Cancel)).Single(t => !t.BuiltIn && t.Id != clone).Title);
        await KeptOrRefusedAsync(text, templates.SaveVersionAsync(clone, template, 1, ClubData.By, text, Cancel), async () => (await templates.VersionsAsync(clone, Cancel))[0].Note);
        await KeptOrRefusedAsync(text, templates.ImportAsync(template with { Chains = [template.Chains[0] with { Name = text }, .. template.Chains.Skip(1)] }, ClubData.By, Cancel), async () =>
            (await templates.FindAsync((await templates.ListAsync(Cancel)).Single(t => !t.BuiltIn && t.ParentId is null).Id, cancel: Cancel)).OrThrow().Template.Chains[0].Name);
        await KeptOrRefusedAsync(text, club.Store<ClosedDayStore>().AddAsync(squad, new ClosedDays(new(2026, 6, 1), new(2026, 6, 2), text), ClubData.By, Cancel), async () => (await club.Store<ClosedDayStore>().ListAsync(Cancel))[0].Days.Why);
        await KeptOrRefusedAsync(text, club.Store<FixtureStore>().AddAsync(squad, new(2026, 10, 9), null, text, null, ClubData.By, Cancel), async () =>
            (await club.Store<FixtureStore>().ListAsync(squad, Cancel)).OrThrow().Single(f => f.Fixture.Date == new LocalDate(2026, 10, 9)).Fixture.Opponent ?? "");
        await KeptOrRefusedAsync(text, club.Store<PinStore>().PinAsync(squad, new Pin(new(2026, 5, 4), text, null, null, true), ClubData.By, Cancel), async () => (await club.Store<PinStore>().ListAsync(squad, Cancel))[0].Slot);
        await KeptOrRefusedAsync(text, club.Store<PlayerStore>().AddAsync(squad, [text], ClubData.By, Cancel), async () => (await club.Store<PlayerStore>().ListAsync(squad, Cancel))[0].Name);
        await KeptOrRefusedAsync(text, club.Store<AcceptedFindingStore>().AcceptAsync(squad, "R36", null, text, ClubData.By, Cancel), async () => (await club.Store<AcceptedFindingStore>().ListAsync(squad, Cancel))[0].Reason);
        Refused("finding.not-found", await club.Store<AcceptedFindingStore>().AcceptAsync(squad, text, null, "agreed", ClubData.By, Cancel));
        await KeptOrRefusedAsync(text, PublishAsync(club, squad, text), async () => (await club.Store<RevisionStore>().ListAsync(squad, Cancel))[0].Note);
        Assert.NotEmpty(await club.Store<Audit.AuditStore>().LatestAsync(100, Cancel));
    }

    [Theory]
    [InlineData("0001-01-01", "0001-01-02")]
    [InlineData("9999-12-30", "9999-12-31")]
    [InlineData("1899-12-31", "1900-01-01")]
    [InlineData("2200-12-31", "2201-01-01")]
    [InlineData("-9998-01-01", "2026-01-01")]
    public async Task A_year_far_from_any_plan_is_refused_wherever_a_day_is_typed(string first, string last)
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        var (from, to) = (Day(first), Day(last));

        Refused("season.date-out-of-range", await club.Store<SeasonStore>().AddAsync(null, null, [new Stint(from, to)], ClubData.By, Cancel));
        Refused("closed.date-out-of-range", await club.Store<ClosedDayStore>().AddAsync(null, new ClosedDays(from, to, "closed"), ClubData.By, Cancel));
        var outside = PlanDates.Problem(from, "x", "") is null ? to : from;
        Refused("fixture.date-out-of-range", await club.Store<FixtureStore>().AddAsync(squad, outside, null, null, null, ClubData.By, Cancel));
        Refused("pin.date-out-of-range", await club.Store<PinStore>().PinAsync(squad, new Pin(outside, "mixed.speed.1", outside, null), ClubData.By, Cancel));
        Refused("pin.date-out-of-range", await club.Store<PinStore>().UnpinAsync(squad, outside, "mixed.speed.1", ClubData.By, Cancel));
    }

    [Theory]
    [InlineData("season.stint-reversed", "2026-11-30/2026-10-01")]
    [InlineData("season.stints-overlap", "2026-10-01/2026-11-30", "2026-11-30/2026-12-20")]
    [InlineData("season.stints-overlap", "2026-11-01/2026-11-30", "2026-10-01/2026-10-20")]
    [InlineData("season.no-stints")]
    [InlineData("season.starts-before-cycle", "2026-01-01/2028-12-31")]
    public async Task Stints_that_make_no_season_are_refused(string code, params string[] stints)
    {
        var club = await data.NewClubAsync();

        var result = await club.Store<SeasonStore>().AddAsync(null, null, [.. stints.Select(Stint)], ClubData.By, Cancel);

        Assert.Contains(Assert.IsType<Result<Guid>.Failed>(result).Problems, p => p.Code == code && p.At.Length > 0);
        Assert.Empty(await club.Store<SeasonStore>().ListAsync(Cancel));
    }

    [Theory]
    [InlineData("2028-02-29/2028-02-29")]
    [InlineData("2026-12-28/2027-01-03")]
    [InlineData("2026-10-01/2026-11-30", "2026-12-01/2026-12-20")]
    public async Task Stints_on_a_leap_day_in_week_53_or_back_to_back_are_stored_as_they_are(params string[] stints)
    {
        var club = await data.NewClubAsync();
        List<Stint> typed = [.. stints.Select(Stint)];

        (await club.Store<SeasonStore>().AddAsync(null, null, typed, ClubData.By, Cancel)).OrThrow();

        Assert.Equal(typed, Assert.Single(await club.Store<SeasonStore>().ListAsync(Cancel)).Season.Stints);
        Assert.NotEmpty((await club.DraftAsync(await club.SquadAsync())).Plan.Weeks);
    }

    [Theory]
    [InlineData("squad.practice-minutes", -5)]
    [InlineData("squad.practice-minutes", int.MaxValue)]
    [InlineData("squad.practice-minutes", int.MinValue)]
    public async Task Minutes_beyond_reason_are_refused(string code, int minutes)
    {
        var club = await data.NewClubAsync();
        var squad = ClubData.Squad() with { Practices = [new Practice(IsoDayOfWeek.Tuesday, new LocalTime(19, 0), minutes, Practice.UsualPhases)] };

        var result = await club.Store<SquadStore>().AddAsync(squad, null, ClubData.By, Cancel);

        Assert.Contains(Assert.IsType<Result<Guid>.Failed>(result).Problems, p => p.Code == code);
    }

    [Fact]
    public async Task Choices_that_no_list_offers_are_refused()
    {
        var club = await data.NewClubAsync();
        var (squads, usual) = (club.Store<SquadStore>(), ClubData.Squad());

        Refused("squad.match-day", await squads.AddAsync(usual with { MatchDay = (IsoDayOfWeek)99 }, null, ClubData.By, Cancel));
        Refused("squad.match-day", await squads.AddAsync(usual with { MatchDay = IsoDayOfWeek.None }, null, ClubData.By, Cancel));
        Refused("squad.training-age", await squads.AddAsync(usual with { TrainingAge = (TrainingAge)7 }, null, ClubData.By, Cancel));
        Refused("squad.practice-day", await squads.AddAsync(usual with { Practices = [new Practice((IsoDayOfWeek)(-1), new LocalTime(19, 0), 90, Practice.UsualPhases)] }, null, ClubData.By, Cancel));
        Refused("squad.window-without-days", await squads.AddAsync(usual with { Windows = [new TimeWindow([(IsoDayOfWeek)8], new LocalTime(18, 0), new LocalTime(20, 0))] }, null, ClubData.By, Cancel));
        Refused("club.first-weekday", await club.Store<ClubStore>().SaveAsync("Test", "Europe/Lisbon", (IsoDayOfWeek)8, 1, ClubData.By, Cancel));
    }

    [Theory]
    [InlineData("Europe/Nowhere")]
    [InlineData("W. Europe Standard Time")]
    [InlineData("/../../etc/localtime")]
    [InlineData("europe/lisbon ")]
    public async Task A_zone_that_nobody_knows_is_refused(string zone)
    {
        var club = await data.NewClubAsync();

        Refused("club.unknown-time-zone", await club.Store<ClubStore>().SaveAsync("Test", zone, IsoDayOfWeek.Monday, 1, ClubData.By, Cancel));
    }

    [Theory]
    [InlineData("\"unloadEvery\": 4", "\"unloadEvery\": 1e400", "request.wrong-type")]
    [InlineData("\"unloadEvery\": 4", "\"unloadEvery\": -99999999999", "request.wrong-type")]
    [InlineData("\"unloadEvery\": 4", "\"unloadEvery\": \"Infinity\"", "request.wrong-type")]
    [InlineData("\"unloadEvery\": 4", "\"unloadEvery\": NaN", "request.not-json")]
    [InlineData("\"unloadEvery\": 4", "\"unloadEvery\": 4, \"unloadEvery\": 3", "request.duplicate-property")]
    [InlineData("\"Senior standard\"", "\"a\\ud800\"", "request.bad-text")]
    [InlineData("\"Senior standard\"", "\"a\\u0000b\"", "request.bad-text")]
    [InlineData("\"Senior standard\"", "\"a\\u202eb\"", "template.title")]
    [InlineData("\"Senior standard\"", "\"\\u200b\"", "template.title")]
    [InlineData("\"easy-run\"", "\"moon-walk\"", "template.workout-unknown")]
    [InlineData("\"easy-run\"", "\"__proto__\"", "template.workout-unknown")]
    public async Task A_hostile_template_file_is_refused_with_its_place(string part, string hostile, string code)
    {
        var club = await data.NewClubAsync();
        var file = TemplateFile.Write(BuiltInTemplates.For(AgeGroup.Senior));
        Assert.Contains(part, file, StringComparison.Ordinal);

        var result = TemplateFile.Read(file.Replace(part, hostile, StringComparison.Ordinal));

        Assert.All(Assert.IsType<Result<Template>.Failed>(result).Problems, p => Assert.Equal(code, p.Code));
        Assert.DoesNotContain(await club.Store<TemplateStore>().ListAsync(Cancel), t => !t.BuiltIn);
    }

    [Fact]
    public void A_file_nested_without_end_or_holding_half_a_character_is_refused()
    {
        Refused("request.not-json", TemplateFile.Read(string.Concat(Enumerable.Repeat("{\"a\":[", 50_000))));
        Refused("request.bad-text", TemplateFile.Read(TemplateFile.Write(BuiltInTemplates.For(AgeGroup.Senior)).Replace("Senior standard", "a\uD800", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task A_title_of_a_hundred_sticks_goes_out_as_a_file_and_comes_back()
    {
        var club = await data.NewClubAsync();
        var template = BuiltInTemplates.For(AgeGroup.Senior) with { Title = Texts["a hundred sticks"] };

        var read = TemplateFile.Read(TemplateFile.Write(template)).OrThrow();
        (await club.Store<TemplateStore>().ImportAsync(read, ClubData.By, Cancel)).OrThrow();

        Assert.Equal(template.Title, (await club.Store<TemplateStore>().ListAsync(Cancel)).Single(t => !t.BuiltIn).Title);
    }

    private static async Task KeptOrRefusedAsync<T>(string typed, Task<Result<T>> act, Func<Task<string>> stored)
    {
        if ((await act).TryGet(out _, out var problems))
        {
            Assert.Equal(TypedText.Tidy(typed), await stored());
            return;
        }

        Assert.All(problems, p => Assert.True(p.At.Length > 0 && p.Message.EndsWith('.'), $"{p.Code} says no place or no next step: {p.Message}"));
    }

    private static void Refused<T>(string code, Result<T> result) => Problems.AssertProblem(code, result);

    private static async Task<Result<Revision>> PublishAsync(TestClub club, Guid squad, string note)
    {
        var draft = await club.DraftAsync(squad);
        foreach (var finding in draft.InTheWay.ToList())
        {
            (await club.Store<AcceptedFindingStore>().AcceptAsync(squad, finding.Rule, finding.Week, "for the test", ClubData.By, Cancel)).OrThrow();
        }

        return await club.Store<PlanStore>().PublishAsync(squad, 0, NewId.Create(), ClubData.By, note, Cancel);
    }

    private static LocalDate Day(string iso) => NodaTime.Text.LocalDatePattern.Iso.Parse(iso).Value;

    private static Stint Stint(string days) => new(Day(days.Split('/')[0]), Day(days.Split('/')[1]));
}
