namespace ClubCycle.PlacementModel;

/// <summary>The numbers of <c>docs/placement.md</c>, written down a second time; a test changes one to see the comparison fail.</summary>
internal sealed record Paper
{
    public int SessionsADay { get; init; } = 1;
    public int ActiveDaysBeyondLimit { get; init; }
    public int HardSessionsBeyondLimit { get; init; }
    public int HoursToMatch { get; init; } = 48;
    public int HoursAfterSecondMatch { get; init; } = 72;
    public int HoursThatMakeASecondMatch { get; init; } = 48;
    public int HoursBetweenHardBeyondLimit { get; init; }
    public int HoursBetweenLifts { get; init; } = 48;
    public int HoursBetweenJumps { get; init; } = 48;
    public int HoursBetweenHighJumps { get; init; } = 72;

    public int LaterStarts { get; init; } = 4;
    public int MinutesIntoPractice { get; init; } = 15;

    public int Dropped { get; init; } = 1_000_000;
    public int DroppedStep { get; init; } = 50_000;
    public int KeptDropped { get; init; } = 500_000;
    public int KeptOnAnotherDay { get; init; } = 2_000;
    public int KeptAtAnotherTime { get; init; } = 500;
    public int NotOnBaseDay { get; init; } = 300;
    public int InsidePractice { get; init; } = 10;
    public int Weekend { get; init; } = 4;
    public int HalfHourLater { get; init; } = 3;
    public int DayAfterDay { get; init; } = 8;
    public int FourthInARow { get; init; } = 15;
    public int SixthActiveDay { get; init; } = 12;
    public int NotEasyAfterHard { get; init; } = 12;
    public int NotEasyBeforeMatch { get; init; } = 25;
    public int EasyBeforeMatch { get; init; } = 6;
    public int StrengthOfMinorsNextDay { get; init; } = 40;
}
