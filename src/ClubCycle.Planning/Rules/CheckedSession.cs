using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Rules;

/// <summary>A session with its sheet read once, the way rules ask. Steps that the library does not know count with the numbers they carry.</summary>
internal sealed record CheckedSession
{
    /// <summary>More of anything on one step is a slip of the pen, and as much is far beyond every rule.</summary>
    private const int Most = 100_000;

    private const int StartOfSheet = 0;
    private const int FastPlace = 1;
    private const int StrengthPlace = 2;
    private const int EndurancePlace = 3;
    private const int SteadyPlace = 4;

    /// <param name="phase">Null when the session lies outside all phases.</param>
    /// <param name="week">Null when the session lies outside all weeks.</param>
    public CheckedSession(PlannedSession session, Phase? phase, CheckedWeek? week)
    {
        (Session, Phase, Week) = (session, phase, week);
        var kinds = session.Steps.Count == 0 ? [] : new StepKind[session.Steps.Count];
        var (warmUp, controlled, place) = (0, false, StartOfSheet);
        for (var i = 0; i < kinds.Length; i++)
        {
            var step = session.Steps[i];
            var known = KnownExercise.Find(step.Name);
            var kind = known?.Kind ?? StepKind.Other;
            kinds[i] = kind;
            if (step.Part == "warm-up")
            {
                warmUp += Product(step.Minutes ?? 0);
                controlled |= kind == StepKind.Control;
                continue;
            }

            ShockJumps |= known is null && ShockJump.IsNamedBy(step.Name);
            Add(step, kind, known?.Exercise);
            var own = PlaceOf(kind, place);
            if (own != StartOfSheet && own < place)
            {
                OutOfPlace ??= i;
            }

            place = Math.Max(place, own);
        }

        Kinds = kinds;
        ControlMinutes = controlled ? warmUp : 0;
    }

    public PlannedSession Session { get; private init; }

    public Phase? Phase { get; private init; }

    public CheckedWeek? Week { get; private init; }

    public IReadOnlyList<Step> Steps => Session.Steps;

    /// <summary>One for each step.</summary>
    public StepKind[] Kinds { get; }

    public int FootContacts { get; private set; }

    /// <summary>Class of the hardest jump on the sheet.</summary>
    public JumpClass Jumps { get; private set; }

    public bool ShockJumps { get; private set; }

    public bool HasJumps => FootContacts > 0 || Jumps != JumpClass.None || ShockJumps;

    /// <summary>Heaviest load on hips and legs, % of maximum; 0 when there is none.</summary>
    public int HeaviestOnLegs { get; private set; }

    /// <summary>Lifting, circuits or body weight; trunk work alone does not count.</summary>
    public bool HasResistance { get; private set; }

    public bool HasSteadyRun { get; private set; }

    /// <summary>A step carries a load or takes one.</summary>
    public bool HasLoads { get; private set; }

    public int AccelerationMetres { get; private set; }

    public int TopSpeedMetres { get; private set; }

    /// <summary>Steps without minutes count as one.</summary>
    public int AgilityMinutes { get; private set; }

    /// <summary>Agility that answers an unpredictable stimulus.</summary>
    public int CuedMinutes { get; private set; }

    /// <summary>Minutes of the warm-up when it trains balance, landing or trunk control; 0 when it does not.</summary>
    public int ControlMinutes { get; }

    /// <summary>First step that belongs before an earlier one; null when the order is right.</summary>
    public int? OutOfPlace { get; }

    /// <summary>Another session with the same sheet.</summary>
    public CheckedSession Again(PlannedSession session, Phase? phase, CheckedWeek? week) => this with { Session = session, Phase = phase, Week = week };

    private void Add(Step step, StepKind kind, Exercise? exercise)
    {
        var metres = Product(step.Sets ?? 1, step.Reps ?? 1, step.Metres ?? 0);
        HasLoads |= step.PercentOfMaximum is not null || exercise is { Loaded: true };
        if (exercise is { LowerBody: true } && step.PercentOfMaximum > HeaviestOnLegs)
        {
            HeaviestOnLegs = step.PercentOfMaximum.Value;
        }

        FootContacts += Product(step.FootContacts ?? Product(exercise?.ContactsPerRep ?? 0, step.Sets ?? 1, step.Reps ?? 0));
        if (exercise?.Jumps > Jumps)
        {
            Jumps = exercise.Jumps;
        }

        switch (kind)
        {
            case StepKind.Acceleration:
                AccelerationMetres += metres;
                break;
            case StepKind.TopSpeed:
                TopSpeedMetres += metres;
                break;
            case StepKind.Agility:
                var minutes = Product(step.Minutes ?? 1);
                AgilityMinutes += minutes;
                CuedMinutes += exercise is { Cued: true } ? minutes : 0;
                break;
            case StepKind.Explosive or StepKind.Strength or StepKind.StrengthOrEndurance or StepKind.MuscularEndurance:
                HasResistance = true;
                break;
            case StepKind.SteadyRun:
                HasSteadyRun = true;
                break;
        }
    }

    private static int Product(long one, long two = 1, long three = 1) =>
        (int)Math.Clamp(Math.Clamp(one, 0, Most) * Math.Clamp(two, 0, Most) * Math.Clamp(three, 0, Most), 0, Most);

    /// <param name="soFar">The latest place that earlier steps took: what serves strength and circuits alike fits either.</param>
    private static int PlaceOf(StepKind kind, int soFar) => kind switch
    {
        StepKind.Acceleration or StepKind.TopSpeed or StepKind.Stride or StepKind.Jump or StepKind.Agility or StepKind.Explosive => FastPlace,
        StepKind.Strength => StrengthPlace,
        StepKind.StrengthOrEndurance => Math.Clamp(soFar, StrengthPlace, EndurancePlace),
        StepKind.MuscularEndurance or StepKind.Core => EndurancePlace,
        StepKind.SteadyRun => SteadyPlace,
        _ => StartOfSheet,
    };
}
