namespace ClubCycle.Planning.Workouts;

/// <param name="Rest">Seconds between sets.</param>
/// <param name="SecondsPerRep">Used to keep the sheet inside the session.</param>
/// <param name="Percent">Of maximum, for exercises that take a load; null where no share applies.</param>
internal readonly record struct SetDose(int Sets, int Reps, int Rest, int SecondsPerRep, Effort Effort, int? Percent = null)
{
    /// <summary>Seconds that a short hold lasts (McGill 2010, from memory: repeated holds of at most 10 s).</summary>
    public const int Hold = 8;

    private const int BreathBetweenHolds = 2;

    public int Volume => Sets * Reps;

    public int Minutes(Exercise exercise)
    {
        var rep = exercise.Held ? Hold + BreathBetweenHolds : SecondsPerRep;
        var work = Sets * Reps * rep * (exercise.BothSides ? 2 : 1);
        return Clock.Minutes(work + ((Sets - 1) * Rest));
    }

    public Step Step(Exercise exercise) => new(
        exercise.Part,
        exercise.Name,
        exercise.Note(Effort),
        Sets,
        Reps,
        Seconds: exercise.Held ? Hold : null,
        Minutes: Minutes(exercise),
        RestSeconds: Sets > 1 ? Rest : null,
        PercentOfMaximum: exercise.Loaded ? Percent : null);
}
