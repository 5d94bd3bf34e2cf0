using ClubCycle.Planning.Weeks;

namespace ClubCycle.Web.Features.Weeks;

/// <summary>Weeks in words, on screens and on paper.</summary>
internal static class WeekText
{
    public static string Loading(WeekLoading loading) => loading switch
    {
        WeekLoading.Loading => Say("loading week"),
        WeekLoading.Unloading => Say("unloading week"),
        WeekLoading.Taper => Say("taper"),
        WeekLoading.Match => Say("match week"),
        _ => throw new ArgumentOutOfRangeException(nameof(loading), loading, "Unknown loading"),
    };
}
