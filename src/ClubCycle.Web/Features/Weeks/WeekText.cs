using ClubCycle.Planning.Weeks;

namespace ClubCycle.Web.Features.Weeks;

/// <summary>Weeks in words, on screens and on paper.</summary>
internal static class WeekText
{
    public static string Loading(WeekLoading loading) => loading switch
    {
        WeekLoading.Loading => "loading week",
        WeekLoading.Unloading => "unloading week",
        WeekLoading.Taper => "taper",
        WeekLoading.Match => "match week",
        _ => throw new ArgumentOutOfRangeException(nameof(loading), loading, "Unknown loading"),
    };
}
