using ClubCycle.Data.Players;

namespace ClubCycle.Web.Features.Welfare;

/// <summary>Who did what with one player's data, in a sentence.</summary>
internal static class AccessText
{
    public static string Of(DataAccess access)
    {
        var who = access.By ?? Say("The program");
        var player = access.Player ?? Say("a player who is gone");
        var whom = access.Squad is { } squad ? $"{player} ({squad})" : player;
        return access.What switch
        {
            WelfareStore.HistoryRead => Say($"{who} looked at the tests of {whom}."),
            WelfareStore.Exported => Say($"{who} exported the data of {whom}: {access.Reason}"),
            WelfareStore.Protected => Say($"{who} protected {whom}."),
            WelfareStore.Unprotected => Say($"{who} ended the protection of {whom}."),
            WelfareStore.Erased => access.Squad is null ? Say($"{who} erased a player.") : Say($"{who} erased a player ({access.Squad})."),
            _ => throw new ArgumentOutOfRangeException(nameof(access), access.What, "Not told to the welfare officer"),
        };
    }
}
