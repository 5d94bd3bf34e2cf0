namespace ClubCycle.Planning.Workouts;

/// <summary>An exercise with the place it was read from.</summary>
/// <param name="Line">1-based line of the file where the entry starts.</param>
internal sealed record LibraryEntry(string File, int Line, Exercise Exercise)
{
    public InvalidDataException Refused(string wrong) => Refused(File, Line, Exercise.Name, wrong);

    public static InvalidDataException Refused(string file, int line, string name, string wrong, Exception? cause = null) =>
        new($"{file}, line {line}: exercise \"{name}\": {wrong}", cause);
}
