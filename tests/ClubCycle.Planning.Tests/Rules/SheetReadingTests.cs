using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Workouts;
using CsCheck;

namespace ClubCycle.Planning.Tests.Rules;

/// <summary>The rules that read sheets, over generated plans and over plans that nobody would write.</summary>
public class SheetReadingTests
{
    private static readonly string[] Must = ["R26", "R29", "R32", "R34"];

    private static readonly Gen<int?> Number = Gen.Int[-200, 400].Select(n => n < -50 ? (int?)null : n);

    private static readonly Gen<string> Name = Gen.Frequency(
        (4, Gen.Int[0, ExerciseLibrary.All.Count - 1].Select(i => ExerciseLibrary.All[i].Name)),
        (1, Gen.String.Select(text => text + "drop jump")),
        (1, Gen.String));

    private static readonly Gen<Step> Step =
        from part in OneOf("warm-up", "main", "core", "cool-down", "")
        from name in Name
        from note in OneOf("", "talk", "140")
        from numbers in Number.Array[8]
        select new Step(part, name, note, numbers[0], numbers[1], numbers[2], numbers[3], numbers[4], numbers[5], numbers[6], numbers[7]);

    /// <summary>Seven shares no factor with the ages, training ages and patterns, so each of them comes up.</summary>
    [Fact]
    public void Sheets_of_generated_plans_keep_the_rules_that_bind()
    {
        var broken = PlanGrid.All().Where((_, i) => i % 7 == 0)
            .SelectMany(g => A.Plan(g.Request).Findings.Where(f => Must.Contains(f.Rule)).Select(f => $"{g.Name}: {f.Rule} {f.Week} {f.Message}"));

        Assert.Empty(broken);
    }

    [Fact]
    public void No_rule_throws_on_odd_sheets() => Gen.Select(Any.Planned, Step.Array[0, 6].Array[1, 5]).Sample((planned, sheets) =>
    {
        var (request, plan) = planned;
        var odd = plan with { Sessions = [.. plan.Sessions.Select((s, i) => s with { Steps = sheets[i % sheets.Length] })] };

        Assert.All(PlanRules.Check(request, odd), f => Assert.True(double.IsFinite(f.Facts?.Measured ?? 0) && f.Message.Length > 0));
    }, iter: 50, threads: 1);

    [Fact]
    public void No_rule_throws_on_a_plan_without_sessions_or_phases()
    {
        var plan = A.Plan(A.Request());

        Assert.NotNull(PlanRules.Check(A.Request(), plan with { Sessions = [] }));
        Assert.NotNull(PlanRules.Check(A.Request(), plan with { Phases = [], Weeks = [] }));
    }

    [Fact]
    public void Every_exercise_of_a_main_part_or_trunk_has_a_kind() =>
        Assert.All(
            ExerciseLibrary.All.Where(e => e.Part is "main" or "core" && !e.Uses.Any(u => u is ExerciseUse.Practice or ExerciseUse.Match or ExerciseUse.ActiveRecovery or ExerciseUse.MovementGame)),
            e => Assert.NotEqual(StepKind.Other, KnownExercise.Find(e.Name)!.Kind));

    private static Gen<string> OneOf(params string[] texts) => Gen.Int[0, texts.Length - 1].Select(i => texts[i]);
}
