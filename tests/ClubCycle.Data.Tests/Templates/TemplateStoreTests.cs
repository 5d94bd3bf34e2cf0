using ClubCycle.Data.Squads;
using ClubCycle.Data.Templates;
using ClubCycle.Planning;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Templates;

namespace ClubCycle.Data.Tests.Templates;

public sealed class TemplateStoreTests(ClubData data) : IClassFixture<ClubData>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_new_clubs_library_holds_the_built_in_templates_as_they_are()
    {
        var club = await data.NewClubAsync();

        var library = await club.Store<TemplateStore>().ListAsync(Cancel);

        Assert.Equal(BuiltInTemplates.All.Select(t => t.Name).Order(), library.Select(t => t.Name).Order());
        foreach (var line in library)
        {
            var stored = (await club.Store<TemplateStore>().FindAsync(line.Id, cancel: Cancel)).OrThrow();
            Assert.True(stored.BuiltIn);
            Assert.Equal(TemplateFile.Write(BuiltInTemplates.Find(line.Name)!), TemplateFile.Write(stored.Template));
        }
    }

    [Fact]
    public async Task A_clone_knows_where_it_came_from_and_gets_a_name_of_its_own()
    {
        var club = await data.NewClubAsync();
        var senior = await SeniorAsync(club);

        var first = (await club.Store<TemplateStore>().CloneAsync(senior, null, "Our seniors, gentler!", ClubData.By, Cancel)).OrThrow();
        var second = (await club.Store<TemplateStore>().CloneAsync(senior, 1, "Our seniors gentler", ClubData.By, Cancel)).OrThrow();

        var library = (await club.Store<TemplateStore>().ListAsync(Cancel)).ToDictionary(t => t.Id);
        Assert.Equal(("our-seniors-gentler", senior, 1, false), (library[first].Name, library[first].ParentId, library[first].ParentVersion, library[first].BuiltIn));
        Assert.Equal("our-seniors-gentler-2", library[second].Name);
    }

    [Fact]
    public async Task A_saved_change_is_a_new_version_and_squads_keep_theirs()
    {
        var club = await data.NewClubAsync();
        var store = club.Store<TemplateStore>();
        var clone = (await store.CloneAsync(await SeniorAsync(club), null, "Ours", ClubData.By, Cancel)).OrThrow();
        var squad = await club.PlannedSquadAsync();
        (await store.UseForSquadAsync(squad, clone, 1, 1, ClubData.By, Cancel)).OrThrow();
        var template = (await store.FindAsync(clone, cancel: Cancel)).OrThrow().Template;

        Assert.Equal(2, (await store.SaveVersionAsync(clone, template with { Loading = template.Loading with { FirstWeekVolume = 0.6 } }, 1, ClubData.By, "Gentler start", Cancel)).OrThrow());

        Assert.Equal(template.Loading, (await club.DraftAsync(squad)).Request.Template.Loading);
        (await store.UseForSquadAsync(squad, clone, 2, 2, ClubData.By, Cancel)).OrThrow();
        Assert.Equal(0.6, (await club.DraftAsync(squad)).Request.Template.Loading.FirstWeekVolume);
        Assert.Equal([2, 1], (await store.VersionsAsync(clone, Cancel)).Select(v => v.Number));
        Problems.AssertProblem("template.changed-meanwhile", await store.SaveVersionAsync(clone, template, 1, ClubData.By, "", Cancel));
    }

    [Fact]
    public async Task A_built_in_template_is_not_changed()
    {
        var club = await data.NewClubAsync();
        var senior = await SeniorAsync(club);
        var template = (await club.Store<TemplateStore>().FindAsync(senior, cancel: Cancel)).OrThrow().Template;

        Problems.AssertProblem("template.built-in", await club.Store<TemplateStore>().SaveVersionAsync(senior, template, 1, ClubData.By, "", Cancel));
    }

    [Fact]
    public async Task A_template_with_workouts_that_are_not_for_children_is_refused_for_a_childrens_squad()
    {
        var club = await data.NewClubAsync();
        var children = (await club.Store<SquadStore>().AddAsync(ClubData.Squad("Under 10", AgeGroup.Youth(10)), null, ClubData.By, Cancel)).OrThrow();

        var result = await club.Store<TemplateStore>().UseForSquadAsync(children, await SeniorAsync(club), 1, 1, ClubData.By, Cancel);

        Assert.All(Assert.IsType<Result<int>.Failed>(result).Problems, p => Assert.Equal("template.workout-not-for-age", p.Code));
    }

    [Fact]
    public async Task A_version_is_used_for_many_squads_at_once_and_a_squad_changed_meanwhile_is_left_out()
    {
        var club = await data.NewClubAsync();
        var store = club.Store<TemplateStore>();
        var clone = (await store.CloneAsync(await SeniorAsync(club), null, "Ours", ClubData.By, Cancel)).OrThrow();
        Guid[] squads = [await club.SquadAsync("Women 1"), await club.SquadAsync("Women 2"), await club.SquadAsync("Women 3")];
        (await club.Store<SquadStore>().SaveAsync(ClubData.Squad("Women 2b") with { Key = squads[1] }, 1, ClubData.By, Cancel)).OrThrow();

        var outcomes = await store.UseForSquadsAsync([.. squads.Select(s => (s, 1))], clone, 1, ClubData.By, Cancel);

        Assert.Equal(squads, outcomes.Select(o => o.SquadId));
        Assert.Equal(2, outcomes[0].Result.OrThrow());
        Problems.AssertProblem("squad.changed-meanwhile", outcomes[1].Result);
        Assert.Equal(2, outcomes[2].Result.OrThrow());
        Assert.Equal([squads[0], squads[2]], (await club.Store<SquadStore>().ListAsync(Cancel)).Where(s => s.TemplateId == clone).Select(s => s.Squad.Key));
    }

    [Fact]
    public async Task A_version_that_is_not_there_is_used_for_no_squad()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();

        var outcomes = await club.Store<TemplateStore>().UseForSquadsAsync([(squad, 1)], await SeniorAsync(club), 9, ClubData.By, Cancel);

        Problems.AssertProblem("template.not-found", Assert.Single(outcomes).Result);
    }

    [Fact]
    public async Task An_imported_template_is_checked_before_it_is_stored()
    {
        var club = await data.NewClubAsync();

        Assert.IsType<Result<Guid>.Failed>(await club.Store<TemplateStore>().ImportAsync(BuiltInTemplates.For(AgeGroup.Senior) with { AgeGroups = [] }, ClubData.By, Cancel));
        (await club.Store<TemplateStore>().ImportAsync(BuiltInTemplates.For(AgeGroup.Senior), ClubData.By, Cancel)).OrThrow();

        Assert.Single(await club.Store<TemplateStore>().ListAsync(Cancel), t => !t.BuiltIn && t.Name == "senior-standard-2");
    }

    [Fact]
    public async Task A_retired_template_goes_on_where_it_is_used_and_starts_nowhere_until_it_is_brought_back()
    {
        var club = await data.NewClubAsync();
        var store = club.Store<TemplateStore>();
        var senior = await SeniorAsync(club);
        var squad = await club.PlannedSquadAsync();
        var clone = (await store.CloneAsync(senior, null, "Ours", ClubData.By, Cancel)).OrThrow();
        var other = await club.SquadAsync("Women 2");
        (await store.UseForSquadAsync(other, clone, 1, 1, ClubData.By, Cancel)).OrThrow();

        (await store.RetireAsync(senior, ClubData.By, Cancel)).OrThrow();

        Assert.NotNull((await store.ListAsync(Cancel)).Single(t => t.Id == senior).RetiredAt);
        Assert.NotEmpty((await club.DraftAsync(squad)).Plan.Sessions);
        (await store.UseForSquadAsync(squad, senior, 1, 1, ClubData.By, Cancel)).OrThrow();
        Problems.AssertProblem("template.retired", await store.UseForSquadAsync(other, senior, 1, 2, ClubData.By, Cancel));
        Problems.AssertProblem("template.retired", await club.Store<SquadStore>().AddAsync(ClubData.Squad("Women 3"), senior, ClubData.By, Cancel));
        (await store.BringBackAsync(senior, ClubData.By, Cancel)).OrThrow();
        (await store.UseForSquadAsync(other, senior, 1, 2, ClubData.By, Cancel)).OrThrow();
    }

    [Fact]
    public async Task A_new_squad_never_gets_a_retired_template()
    {
        var club = await data.NewClubAsync();
        var store = club.Store<TemplateStore>();
        var clone = (await store.CloneAsync(await SeniorAsync(club), null, "Ours", ClubData.By, Cancel)).OrThrow();
        (await store.RetireAsync(await SeniorAsync(club), ClubData.By, Cancel)).OrThrow();

        var squad = await club.SquadAsync();

        Assert.Equal(clone, (await club.Store<SquadStore>().FindAsync(squad, Cancel)).OrThrow().TemplateId);
        (await store.RetireAsync(clone, ClubData.By, Cancel)).OrThrow();
        Problems.AssertProblem("template.none-for-age", await club.Store<SquadStore>().AddAsync(ClubData.Squad("Women 2"), null, ClubData.By, Cancel));
    }

    private static async Task<Guid> SeniorAsync(TestClub club) => (await club.Store<TemplateStore>().ListAsync(Cancel)).Single(t => t.Name == "senior-standard").Id;
}
