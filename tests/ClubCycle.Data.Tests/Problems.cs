using ClubCycle.Planning;

namespace ClubCycle.Data.Tests;

internal static class Problems
{
    /// <summary>The result's only problem has this code.</summary>
    public static void AssertProblem<T>(string code, Result<T> result) =>
        Assert.Equal([code], Assert.IsType<Result<T>.Failed>(result).Problems.Select(p => p.Code));
}
