using System.Globalization;

namespace ClubCycle.Planning.Squads;

/// <summary>
/// Who plays in a squad: under a given age (<c>U8</c>…<c>U18</c>), <c>Senior</c> or <c>Masters</c>. Decides which limits apply.
/// </summary>
public readonly record struct AgeGroup
{
    public const int YoungestUnder = 8;
    public const int OldestUnder = 18;

    private readonly bool _masters;

    private AgeGroup(int? under, bool masters) => (Under, _masters) = (under, masters);

    public static AgeGroup Senior => new(null, false);

    /// <summary>Players of about 35 and older: senior sessions, longer rest.</summary>
    public static AgeGroup Masters => new(null, true);

    /// <summary>Every player is younger than this on the club's cut-off day; null for adults.</summary>
    public int? Under { get; }

    public bool IsMasters => _masters;

    /// <summary>Some players are younger than 18, so the rules for minors hold.</summary>
    public bool IsYouth => Under is not null;

    /// <summary>Completed years of the youngest usual player: an under-14 squad holds 12- and 13-year-olds. 18 for adults.</summary>
    /// <remarks>Limits that protect children use this age (editorial: the youngest decides).</remarks>
    public int YoungestAge => Under is { } under ? under - 2 : 18;

    public string Name => Under is { } under ? "U" + under.ToString(CultureInfo.InvariantCulture) : _masters ? "Masters" : "Senior";

    /// <summary>All age groups, youngest first.</summary>
    public static IReadOnlyList<AgeGroup> All { get; } =
        [.. Enumerable.Range(YoungestUnder, OldestUnder - YoungestUnder + 1).Select(Youth), Senior, Masters];

    /// <param name="under">8 to 18.</param>
    public static AgeGroup Youth(int under) => under is >= YoungestUnder and <= OldestUnder
        ? new(under, false)
        : throw new ArgumentOutOfRangeException(nameof(under), under, "A youth age group is U8 to U18.");

    public static AgeGroup? Find(string? name)
    {
        foreach (var group in All)
        {
            if (string.Equals(group.Name, name, StringComparison.Ordinal))
            {
                return group;
            }
        }

        return null;
    }

    public override string ToString() => Name;
}
