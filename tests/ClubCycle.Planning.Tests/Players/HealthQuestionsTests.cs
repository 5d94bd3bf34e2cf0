using ClubCycle.Planning.Players;
using ClubCycle.Planning.Squads;

namespace ClubCycle.Planning.Tests.Players;

public class HealthQuestionsTests
{
    [Fact]
    public void There_are_ten_questions() => Assert.Equal(10, HealthQuestions.All.Count(q => q.EndsWith('?')));

    [Fact]
    public void Masters_are_asked_and_whoever_a_coach_flags()
    {
        Assert.True(HealthQuestions.AreAsked(AgeGroup.Masters, false));
        Assert.True(HealthQuestions.AreAsked(AgeGroup.Youth(14), true));
        Assert.False(HealthQuestions.AreAsked(AgeGroup.Senior, false));
    }

    [Theory]
    [InlineData(null, true)]
    [InlineData("2025-03-01", true)]
    [InlineData("2025-03-02", false)]
    [InlineData("2026-03-01", false)]
    public void They_are_due_until_settled_and_again_after_twelve_months(string? settled, bool due) =>
        Assert.Equal(due, HealthQuestions.AreDue(AgeGroup.Masters, false, settled is null ? null : A.Date(settled), A.Date("2026-03-01")));

    [Fact]
    public void Who_is_not_asked_never_owes_them() => Assert.False(HealthQuestions.AreDue(AgeGroup.Senior, false, null, A.Date("2026-03-01")));
}
