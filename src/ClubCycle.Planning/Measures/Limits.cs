using System.Globalization;

namespace ClubCycle.Planning.Measures;

/// <summary>The values a formula takes, both ends in, and what to do about others.</summary>
internal sealed record Limits(string Code, string What, double Least, double Most, string Unit, string NextStep)
{
    /// <summary>Null when the value is inside. Not-a-number and infinity never are.</summary>
    public Problem? Check(double value) => value >= Least && value <= Most ? null : new Problem(Code, Sentence);

    /// <summary>As <see cref="Check"/>, for values that come in steps from zero.</summary>
    public Problem? CheckStep(double value, double step) =>
        Check(value) ?? (value % step == 0 ? null : new Problem(Code, string.Create(CultureInfo.InvariantCulture, $"{Range} in steps of {step}. {NextStep}")));

    private string Range => string.Create(CultureInfo.InvariantCulture, $"{What} must be {Least} to {Most} {Unit}").TrimEnd();

    private string Sentence => $"{Range}. {NextStep}";

    /// <summary>The answer, or every problem at once.</summary>
    public static Result<T> Answer<T>(IEnumerable<Problem?> checks, Func<T> answer) => Answer(checks, () => (Result<T>)new Result<T>.Ok(answer()));

    /// <inheritdoc cref="Answer{T}(IEnumerable{Problem}, Func{T})"/>
    public static Result<T> Answer<T>(IEnumerable<Problem?> checks, Func<Result<T>> answer)
    {
        Problem[] problems = [.. checks.OfType<Problem>()];
        return problems.Length == 0 ? answer() : new Result<T>.Failed(problems);
    }
}
