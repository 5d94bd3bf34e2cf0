namespace ClubCycle.Planning.Workouts;

/// <summary>What an exercise needs beyond a body, a floor and a partner. In the library files: <c>dumb-bell</c>.</summary>
public enum Equipment
{
    Marks,
    Bibs,
    Hoops,
    Goals,
    Stick,
    Ball,

    /// <summary>A medicine ball.</summary>
    HeavyBall,
    Rope,
    Band,
    Mat,
    Towel,
    Wall,

    /// <summary>A stair, kerb or low step that does not tip.</summary>
    Step,
    Bench,
    Box,

    /// <summary>Low and soft: they give way when hit.</summary>
    Barriers,
    DumbBell,
    Kettlebell,
    Barbell,

    /// <summary>A fixed bar to hang from.</summary>
    HangingBar,
    Bicycle,
    Pool,
    Hill,
}
