namespace ClubCycle.Planning.Weeks;

/// <summary>What a week asks of the players: <c>loading</c>, <c>unloading</c>, <c>taper</c>, <c>match</c>.</summary>
public enum WeekLoading
{
    Loading,
    Unloading,
    Taper,
    Match,
}
