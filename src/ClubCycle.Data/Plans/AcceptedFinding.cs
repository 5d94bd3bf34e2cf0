using ClubCycle.Planning.Rules;
using NodaTime;

namespace ClubCycle.Data.Plans;

/// <summary>A finding somebody took responsibility for.</summary>
/// <param name="Week">First day of its week; null when the whole cycle is meant.</param>
public sealed record AcceptedFinding(string Rule, LocalDate? Week, string Reason, Guid? By, Instant At)
{
    public bool Covers(Finding finding) => finding.Rule == Rule && finding.Week == Week;

    internal static AcceptedFinding Of(AcceptedFindingRow row) => new(row.Rule, row.Week, row.Reason, row.AcceptedBy, row.AcceptedAt);
}
