using ClubCycle.Planning.Measures;

namespace ClubCycle.Planning.Tests.Measures;

internal static class Answers
{
    public static double Value(this Result<Estimate> result) => result.OrThrow().Value;

    /// <summary>Refused for one reason, in a sentence that names the range and a second one that names the next step.</summary>
    public static void Refused<T>(this Result<T> result, string code, string range)
    {
        var problem = Assert.Single(Assert.IsType<Result<T>.Failed>(result).Problems);
        Assert.Equal(code, problem.Code);
        Assert.Contains($"must be {range}", problem.Message, StringComparison.Ordinal);
        Assert.Matches(@"^.+ must be .+\. \S.+\.$", problem.Message);
    }
}
