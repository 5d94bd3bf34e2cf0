using System.Globalization;
using System.Text.RegularExpressions;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Weeks;

namespace ClubCycle.Planning.Tests.Rules;

public partial class DoseReasonsTests
{
    private static readonly PlanRequest Request = A.Request();
    private static readonly SquadPlan Plan = A.Plan(Request);

    [Fact]
    public void A_full_session_is_what_the_mix_asks_for()
    {
        var slot = Request.Template.Mixes.Single(m => m.Phase == PhaseKind.AerobicBuild).Slots[0];

        var session = Plan.Sessions.First(s => s.Slot == $"aerobic-build.{slot.Name}" && s.Minutes == slot.Minutes);

        Assert.Equal($"{slot.Minutes} minutes, as the weekly mix asks for.", Of(session)[0].Text);
    }

    [Fact]
    public void An_unloading_week_says_so()
    {
        var week = Plan.Weeks.First(w => w.Loading == WeekLoading.Unloading);

        var reasons = Of(Plan.Sessions.First(s => s.Kind == SessionKind.Session && s.Date >= week.First));

        Assert.Contains(reasons, r => r.Text.Contains("an unloading week holds about 60 %", StringComparison.Ordinal));
        Assert.Contains(reasons, r => r.Text.StartsWith("Sets, runs and jumps step back", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("jumps", "R31")]
    [InlineData("sprint-intervals", "R35")]
    [InlineData("reactive-agility", "R43")]
    [InlineData("heavy-lift", "R26")]
    [InlineData("easy-run", "R41")]
    [InlineData("easy-run", "R44")]
    public void Each_kind_of_work_names_the_rule_that_bounds_it(string workout, string rule) =>
        Assert.Contains(Of(Plan.Sessions.First(s => s.Workout == workout)), r => r.Rule == rule);

    /// <summary>The figures are those of the sheet, counted here by hand.</summary>
    [Fact]
    public void The_contacts_told_are_those_of_the_sheet_and_keep_to_the_limit() => Assert.All(Plan.Sessions.Where(s => s.Workout == "jumps"), session =>
    {
        var numbers = Number().Matches(Of(session).Single(r => r.Rule == "R31").Text).Select(m => int.Parse(m.Value, CultureInfo.InvariantCulture)).ToList();

        Assert.Equal([session.Steps.Sum(s => s.FootContacts ?? 0), 140], numbers);
    });

    [Fact]
    public void Children_are_told_of_minutes_only()
    {
        var request = A.Request(squad: A.Squad(AgeGroup.Youth(10)));
        var plan = A.Plan(request);

        var reasons = DoseReasons.Of(request, plan, plan.Sessions.First(s => s.Kind == SessionKind.Session));

        Assert.Equal(2, reasons.Count);
        Assert.Contains("minutes are all that is counted", reasons[1].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Minors_who_lift_are_told_the_ceiling_of_their_age()
    {
        var request = A.Request(squad: A.Squad(AgeGroup.Youth(16)));
        var plan = A.Plan(request);

        Assert.Contains(DoseReasons.Of(request, plan, plan.Sessions.First(s => s.Workout == "technique-lifting")), r => r is { Rule: "R29", Text: "At this age 70 % is the heaviest load, and a qualified adult watches." });
    }

    [Fact]
    public void Every_session_of_every_age_group_has_a_reason_and_a_match_has_none() => Assert.All(AgeGroup.All, ages =>
    {
        var request = A.Request(squad: A.Squad(ages));
        var plan = A.Plan(request);

        Assert.All(plan.Sessions, s => Assert.Equal(s.Kind == SessionKind.Session, DoseReasons.Of(request, plan, s).Count > 0));
    });

    private static IReadOnlyList<DoseReason> Of(PlannedSession session) => DoseReasons.Of(Request, Plan, session);

    [GeneratedRegex(@"\d+")]
    private static partial Regex Number();
}
