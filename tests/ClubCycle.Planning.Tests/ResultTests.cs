namespace ClubCycle.Planning.Tests;

public class ResultTests
{
    private static readonly Problem Late = new("late", "Start earlier.", "start");

    private static readonly Problem Long = new("long", "Take fewer.", "minutes");

    [Fact]
    public void Taking_the_value_of_a_failed_result_throws_every_problem() =>
        Assert.Equal(
            "late at 'start': Start earlier.; long at 'minutes': Take fewer.",
            Assert.Throws<InvalidOperationException>(() => new Result<int>.Failed([Late, Long]).OrThrow()).Message);

    [Fact]
    public void A_good_result_gives_its_value_and_no_problem()
    {
        Result<int> result = 7;

        Assert.True(result.TryGet(out var value, out var problems));
        Assert.Equal((7, 0), (value, problems.Count));
    }

    [Fact]
    public void A_failed_result_gives_its_problems_and_no_value()
    {
        Result<string> result = Late;

        Assert.False(result.TryGet(out var value, out var problems));
        Assert.Equal((null, Late), (value, Assert.Single(problems)));
    }
}
