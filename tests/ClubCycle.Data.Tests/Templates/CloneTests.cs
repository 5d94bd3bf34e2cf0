using ClubCycle.Data.Templates;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Templates;
using CsCheck;

namespace ClubCycle.Data.Tests.Templates;

public sealed class CloneTests(ClubData data) : IClassFixture<ClubData>
{
    private static readonly Gen<(Template Template, int[] Edits)> Any =
        from index in Gen.Int[0, BuiltInTemplates.All.Count - 1]
        from first in Gen.Int[0, 9_999].Array[0, 6]
        from edits in Gen.Int[0, 9_999].Array[1, 6]
        select (first.Aggregate(BuiltInTemplates.All[index], Edited), edits);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_clone_is_the_same_template_and_whatever_is_edited_later_changes_only_one_of_them()
    {
        var club = await data.NewClubAsync();
        var store = club.Store<TemplateStore>();

        await Any.SampleAsync(async cell =>
        {
            var original = (await store.ImportAsync(cell.Template, ClubData.By, Cancel)).OrThrow();
            var one = (await store.CloneAsync(original, null, "One", ClubData.By, Cancel)).OrThrow();
            var two = (await store.CloneAsync(original, null, "Two", ClubData.By, Cancel)).OrThrow();
            Guid[] all = [original, one, two];
            Assert.Equal(3, (await store.ListAsync(Cancel)).Where(t => all.Contains(t.Id)).Select(t => t.Name).Distinct().Count());
            var same = Content(cell.Template);
            Assert.All(await ContentsAsync(store, all), c => Assert.Equal(same, c));

            var contents = all.ToDictionary(id => id, _ => same);
            foreach (var (i, edit) in cell.Edits.Index())
            {
                var id = all[edit % 3];
                var now = (await store.FindAsync(id, cancel: Cancel)).OrThrow();
                var changed = Edited(now.Template, edit + i);
                (await store.SaveVersionAsync(id, changed, now.LatestVersion, ClubData.By, "", Cancel)).OrThrow();
                contents[id] = Content(changed);

                Assert.Equal(contents.Values, await ContentsAsync(store, all));
            }

            Assert.All(all, id => Assert.Equal(same, Content(store.FindAsync(id, 1, Cancel).GetAwaiter().GetResult().OrThrow().Template)));
        }, iter: 40, threads: 1);
    }

    private static async Task<IReadOnlyList<string>> ContentsAsync(TemplateStore store, IReadOnlyList<Guid> ids)
    {
        List<string> contents = [];
        foreach (var id in ids)
        {
            contents.Add(Content((await store.FindAsync(id, cancel: Cancel)).OrThrow().Template));
        }

        return contents;
    }

    /// <summary>All but what each template has of its own.</summary>
    private static string Content(Template template) => TemplateFile.Write(template with { Name = "same", Title = "Same" });

    /// <summary>One edit; one that would make the template invalid is left out.</summary>
    private static Template Edited(Template template, int dice)
    {
        var (chain, mix) = (template.Chains[dice % template.Chains.Count], template.Mixes[dice % template.Mixes.Count]);
        var changed = (dice % 7) switch
        {
            0 => template with { Loading = template.Loading with { UnloadEvery = 2 + (dice % 3), FirstWeekVolume = 0.5 + (dice % 50 / 100.0) } },
            1 => template with { Chains = [.. template.Chains.Select(c => c == chain ? c with { Phases = [.. c.Phases.Select(p => p with { FixedWeeks = dice % 9 })] } : c)] },
            2 => template with { Chains = [.. template.Chains.Select(c => c == chain ? c with { Phases = [.. c.Phases.Select(p => p with { IdealShare = (1 + (dice % 97)) / 97.0 })] } : c)] },
            3 => template with { Mixes = [.. template.Mixes.Select(m => m == mix ? m with { Slots = [.. m.Slots.Skip(1)] } : m)] },
            4 => template with { Mixes = [.. template.Mixes.Select(m => m == mix ? m with { Slots = [.. m.Slots.Reverse()], ActiveDaysAtMost = dice % 7 } : m)] },
            5 => template with { Mixes = [.. template.Mixes.Select(m => m == mix ? m with { Slots = [.. m.Slots.Select(s => s with { Minutes = 10 + (dice % 111) })] } : m)] },
            _ => template with { Chains = [.. template.Chains.Reverse()] },
        };
        return TemplateCheck.Check(changed).Count == 0 ? changed : template;
    }
}
