using ClubCycle.Data.Fixtures;
using ClubCycle.Planning;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Squads;

namespace ClubCycle.Data.Plans;

/// <summary>What a squad's year would be if it were published now. Computed, never stored.</summary>
/// <param name="Revision">Latest published revision; 0 before the first. Hand it back when publishing.</param>
public sealed record SquadDraft(PlanRequest Request, SquadPlan Plan, int Revision, IReadOnlyList<AcceptedFinding> Accepted)
{
    /// <summary>The squad's own rows that it was planned from.</summary>
    internal IReadOnlyList<IUndoableRow> Own { get; init; } = [];

    /// <summary>Its matches as stored: those entered, else the usual ones.</summary>
    public IReadOnlyList<StoredFixture> Matches => StoredFixture.ListOf(Request, Own);

    public bool HasUnpublishedChanges => Request.Published is null || Plan.Changes.Any;

    /// <summary>Findings that stand in the way of publishing: binding, and accepted by nobody.</summary>
    public IEnumerable<Finding> InTheWay => Plan.Findings.Where(f => f.Strength == Strength.Must && !Accepted.Any(a => a.Covers(f)));
}

/// <summary>A squad's row on the year board.</summary>
public sealed record BoardDraft(Guid SquadId, string Name, AgeGroup AgeGroup, Result<SquadDraft> Draft);
