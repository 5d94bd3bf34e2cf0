namespace ClubCycle.Planning.Players;

/// <summary>What a player's own numbers can come from. Only tests that change what a session says are here.</summary>
public enum TestKind
{
    /// <summary>Highest rate seen at the end of a maximal field test, b/min.</summary>
    MaximumHeartRate,

    /// <summary>On waking, b/min.</summary>
    RestingHeartRate,

    /// <summary>20 m multistage shuttle run: last completed stage.</summary>
    ShuttleRun,

    /// <summary>Intermittent recovery run, level 1: metres.</summary>
    IntermittentRunOne,

    /// <summary>Intermittent recovery run, level 2: metres.</summary>
    IntermittentRunTwo,

    /// <summary>30-15 intermittent run: last completed speed, km/h.</summary>
    ThirtyFifteen,

    /// <summary>Twelve-minute run: metres.</summary>
    TwelveMinuteRun,

    /// <summary>As far as possible in five or six minutes, or a set distance: metres and seconds.</summary>
    TimeTrial,

    /// <summary>A load and the repetitions done with it: kilograms and repetitions.</summary>
    Lift,
}
