namespace ClubCycle.Planning.Players;

/// <summary>A figure about a group tells about its members when they are few. Nothing that counts or averages people is shown without asking here.</summary>
public static class SmallGroup
{
    /// <summary>Fewer show nothing (editorial).</summary>
    public const int Fewest = 5;

    public static bool MayTell(int people) => people >= Fewest;
}
