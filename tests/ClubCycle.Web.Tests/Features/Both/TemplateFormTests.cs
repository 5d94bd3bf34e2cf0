using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Templates;
using ClubCycle.Web.Features.Templates;
using CsCheck;

namespace ClubCycle.Web.Tests.Features.Both;

public sealed class TemplateFormTests
{
    [Fact]
    public void A_template_that_was_opened_and_not_touched_is_the_same() => Any.Sample(
        cell => Assert.Equal(TemplateFile.Write(cell.Template), TemplateFile.Write(TemplateForm.Of(cell.Template).ToTemplate())), iter: 500, threads: 1);

    [Fact]
    public void Whatever_is_typed_into_one_form_changes_neither_the_template_nor_another_form_of_it() => Any.Sample(
        cell =>
        {
            var before = TemplateFile.Write(cell.Template);
            var (one, two) = (TemplateForm.Of(cell.Template), TemplateForm.Of(cell.Template));

            foreach (var dice in cell.Edits)
            {
                Type(one, dice);
            }

            Assert.Equal(before, TemplateFile.Write(cell.Template));
            Assert.Equal(before, TemplateFile.Write(two.ToTemplate()));
            Assert.NotEqual(before, TemplateFile.Write(one.ToTemplate()));
        }, iter: 500, threads: 1);

    private static Gen<(Template Template, int[] Edits)> Any =>
        from index in Gen.Int[0, BuiltInTemplates.All.Count - 1]
        from share in Gen.Double[0.01, 1]
        from edits in Gen.Int[0, 9_999].Array[1, 8]
        select (WithShare(BuiltInTemplates.All[index], share), edits);

    private static Template WithShare(Template template, double share) =>
        template with { Chains = [.. template.Chains.Select(c => c with { Phases = [.. c.Phases.Select(p => p with { IdealShare = share })] })] };

    private static void Type(TemplateForm form, int dice)
    {
        form.Title += "!";
        form.Chains[dice % form.Chains.Count].Phases[0].SharePercent = 1 + (dice % 99);
        var mix = form.Mixes[dice % form.Mixes.Count];
        switch (dice % 4)
        {
            case 0:
                mix.Slots.Clear();
                break;
            case 1:
                mix.Add("easy-run");
                break;
            case 2 when mix.Slots.Count > 0:
                mix.Slots[0].Workouts[0] = "core-and-easy-run";
                break;
            default:
                form.Chains[0].Phases.RemoveAt(form.Chains[0].Phases.Count > 1 ? 1 : 0);
                form.Chains[0].Phases.Add(new ChainPhaseForm { From = new ChainPhase(default, 1, 0.5, 2), MinWeeks = 1, SharePercent = 50, MaxWeeks = 2 });
                break;
        }
    }
}
