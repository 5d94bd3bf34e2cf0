namespace ClubCycle.Data.Accounts;

public enum ClubRole
{
    /// <summary>May do everything in the club but what is the welfare officer's.</summary>
    HeadCoach,

    /// <summary>May change the squads they coach.</summary>
    SquadCoach,

    /// <summary>May look at the squads they help with.</summary>
    Assistant,

    /// <summary>May look at every squad, sees who read children's data, and can protect a player.</summary>
    WelfareOfficer,
}
