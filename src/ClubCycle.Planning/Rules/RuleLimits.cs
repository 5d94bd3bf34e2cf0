using ClubCycle.Planning.Squads;

namespace ClubCycle.Planning.Rules;

/// <summary>The numbers of the rule book that depend on who plays. Limits for children look at the youngest usual player of the age group (editorial).</summary>
public static class RuleLimits
{
    public const int YouthHockeyDays = 5;
    public const double YouthHours = 16;
    public const int HockeyFreeBlockDays = 28;
    public const int HockeyFreeDaysMust = 56;
    public const int HockeyFreeDaysShould = 84;
    public const double RiseWarned = 1.10;
    public const double RiseFlagged = 1.15;
    public const double UnloadingLeast = 0.4;
    public const double UnloadingMost = 0.8;
    public const int IntervalSessionsForAWeek = 6;
    public const int MonthsWithHockey = 8;
    public const int MonthsWithHockeyUpToAge = 14;
    public const double Monotony = 2.0;
    public const int SessionsForMonotony = 3;
    public const int StrainWeeks = 12;
    public const int StrainWeeksLeast = 8;
    public const double StrainDeviations = 1.5;
    public const int StrengthFromAge = 15;
    public const int StrengthWeeks = 6;
    public const int StrengthWhileBuilding = 2;
    public const int DaysOff = 14;
    public const int ReturnDays = 28;
    public const int QualitiesFromAge = 11;
    public const int AerobicStimuli = 2;
    public const int AerobicMinutes = 13;
    public const int AerobicMatchMinutes = 40;
    /// <summary>A week with less holds too little to taper, AU (editorial).</summary>
    public const double TaperTooLittleAu = 600;
    public const double TaperLeast = 0.40;
    public const double TaperMost = 0.59;
    public const double TaperSessionsLeast = 0.8;
    public const int HoursBetweenHard = 48;
    public const int HoursBetweenHardMasters = 72;
    public const int HoursAfterTwoMatches = 72;

    /// <summary>Share of maximum from which lifting for the legs is heavy.</summary>
    public const int HeavyPercent = 80;
    public const int HoursBetweenHeavyAtMost = 96;
    public const int YouthResistanceSessions = 3;
    public const int FirstLiftingWeeks = 8;
    public const int JumpsLikeAdultsAge = 15;
    public const int ChildFirstContacts = 60;
    public const double ChildContactsRise = 1.10;
    public const int ChildContacts = 100;
    public const int ChildContactsMemoryWeeks = 6;
    public const int ChildJumpSessions = 2;

    /// <summary>Before this age nobody is taken to have had the growth spurt (editorial).</summary>
    public const int GrowthSpurtAge = 12;
    public const int HoursBetweenHighJumps = 72;
    public const int JumpSessions = 3;
    public const int JumpSessionsInSeason = 2;
    public const int ShockJumpAge = 16;
    public const int AccelerationMetres = 300;
    public const int TopSpeedMetres = 150;

    /// <summary>A slow average from a standing start (editorial): 50 m and less count as 10 s or less.</summary>
    public const double SprintMetresPerSecond = 5;
    public const int PairedSessionsAge = 15;
    public const int HoursBetweenPaired = 3;
    public const int HoursBetweenPairedPreferred = 6;
    public const int EasyEffort = 4;
    public const int FixedBeatsAge = 12;
    public const int AgilityMinutesAWeek = 15;
    public const int AgilitySessionsAWeek = 2;
    public const int ControlFromAge = 9;
    public const int ShortestControl = 10;
    public const int LongestControl = 15;
    public const int ControlMinutesAWeek = 30;

    /// <summary>R19: share of the full week's minutes in the weeks after time off.</summary>
    public static readonly IReadOnlyList<double> ReturnShares = [0.5, 0.7, 0.8, 0.9];

    public static int LoadingWeeksInARow(Squad squad) => squad.AgeGroup.YoungestAge < 16 || squad.TrainingAge == TrainingAge.New ? 2 : 3;

    /// <summary>High-intensity sessions a week, matches included.</summary>
    public static int HardSessions(AgeGroup ages) => ages.YoungestAge switch
    {
        < 14 => 2,
        < 18 => 3,
        _ => 4,
    };

    public static int RestDays(AgeGroup ages) => ages is { IsYouth: true, YoungestAge: <= 12 } ? 2 : 1;

    public static int MatchesInFourDays(AgeGroup ages) => ages.YoungestAge < 16 ? 2 : 3;
}
