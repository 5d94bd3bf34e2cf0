using ClubCycle.Planning;

namespace ClubCycle.Data.Embedded;

/// <summary>There is no database to work with. The message is one line for a person: what happened and the next step.</summary>
public sealed class DatabaseUnavailableException(Problem problem, Exception? inner = null) : Exception(problem.Message, inner)
{
    public Problem Problem { get; } = problem;

    internal static DatabaseUnavailableException Because(string code, string message, Exception? inner = null) =>
        new(new Problem(code, OneLine(message)), inner);

    internal static DatabaseUnavailableException TablesHeld(TimeSpan waited, Exception inner) => Because(
        "database.busy",
        $"The schema could not be brought up to date, because other work held its tables for {waited.TotalMinutes:0} minutes. Wait until a backup that runs has ended, then run: ClubCycle.Web migrate.",
        inner);

    internal static string OneLine(string text) => string.Join(' ', text.Split(['\r', '\n', '\t', ' '], StringSplitOptions.RemoveEmptyEntries));
}
