using ClubCycle.Data.Plans;
using ClubCycle.Planning;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Weeks;
using ClubCycle.Web.Features.Board;
using ClubCycle.Web.Features.Print;
using CsCheck;
using NodaTime;

namespace ClubCycle.Web.Tests.Features.Print;

/// <summary>Clubs to print.</summary>
internal static class PrintedClub
{
    public const int MostSquads = 24;
    public const int LongestName = 100;

    private static readonly LocalDate First = new(2026, 3, 2);

    // Wide and narrow letters, accents, and what the font has not: right-to-left letters, ideographs and emoji of several code points.
    private static readonly string[] Letters = ["W", "M", "i", "l", "e", "a", "o", "n", "r", "Ł", "é", "ß", "Ж", "9", "&", "'", " ", " ", "ש", "ع", "海", "🏑", "👩‍👧", "🇵🇹"];

    private static readonly Gen<string> Letter = Gen.Int[0, Letters.Length - 1].Select(i => Letters[i]);

    public static PrintHead Head { get; } = new("Sandhaven", Instant.FromUtc(2026, 10, 7, 12, 0), DateTimeZone.Utc);

    /// <summary>A name that a squad may have: at most a hundred characters as the database counts them, and one that can be seen.</summary>
    public static Gen<string> Name { get; } = Letter.Array[1, LongestName].Select(letters => TypedText.Start("U" + string.Concat(letters).Trim(), LongestName));

    /// <summary>A year of any phases, with matches, sessions and loads of any size.</summary>
    public static Gen<SquadPlan> Year { get; } = Gen.Select(
        Gen.Select(Gen.Enum<PhaseKind>(), Gen.Int[1, 14]).Array[1, 20],
        Gen.Int[1, BoardView.MostWeeks],
        Gen.Int[0, 3].Array[BoardView.MostWeeks],
        Gen.Int[0, 2500].Array[BoardView.MostWeeks],
        (phases, weeks, matches, loads) =>
        {
            var all = phases.SelectMany(p => Enumerable.Range(1, p.Item2).Select(n => (Phase: p.Item1, Week: n))).Take(weeks).ToList();
            return A.Plan(
                [.. all.Select((w, i) => A.Week(First.PlusWeeks(i), w.Phase, w.Week, loads[i]))],
                [.. all.SelectMany((_, i) => Enumerable.Range(0, matches[i]).Select(m => A.Session(First.PlusWeeks(i).PlusDays(m), m == 0 ? SessionKind.Session : SessionKind.Match)))]);
        });

    public static Gen<BoardSquad> AnySquad { get; } = Gen.Select(Name, Year, Gen.Bool, Gen.Int[0, 12], (name, year, changed, revision) => Squad(name, year) with { HasUnpublishedChanges = changed, PublishedRevision = revision });

    public static BoardSquad Squad(string name, SquadPlan? plan) => new(NamedId.From("squad", name), name, "Masters", plan, plan is null ? "There are no season dates yet." : null, 1, false);

    public static SquadDraft Draft(string name = "Women 1")
    {
        var request = PlanFile.ReadRequest(A.PlanRequest()).OrThrow();
        return new SquadDraft(request with { Squad = request.Squad with { Name = name } }, A.Year(), 0, []);
    }

    /// <summary>The week with the most to read.</summary>
    public static PlanWeek FullestWeek => A.Year().Weeks.MaxBy(w => A.Year().Sessions.Where(s => s.Date >= w.First && s.Date <= w.Last && s.Kind == SessionKind.Session).Sum(s => s.Steps.Count))!;
}
