using ClubCycle.Data.Squads;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;

namespace ClubCycle.Data.Plans;

/// <summary>A finding that a person took responsibility for, with the reason.</summary>
public sealed class AcceptedFindingRow : IClubRow
{
    public Guid ClubId { get; set; }
    public Guid Id { get; set; }
    public Guid SquadId { get; set; }
    public string Rule { get; set; } = "";

    /// <summary>First day of the finding's week; null when the finding means the whole cycle.</summary>
    public LocalDate? Week { get; set; }
    public string Reason { get; set; } = "";
    public Guid? AcceptedBy { get; set; }
    public Instant AcceptedAt { get; set; }
}

internal sealed class AcceptedFindingTable : IEntityTypeConfiguration<AcceptedFindingRow>
{
    public void Configure(EntityTypeBuilder<AcceptedFindingRow> builder)
    {
        builder.ToTable("accepted_findings", ClubCycleDb.ClubSchema);
        builder.HasKey(a => new { a.ClubId, a.Id });
        builder.Property(a => a.Rule).HasMaxLength(60);
        builder.Property(a => a.Reason).HasMaxLength(AcceptedFindingStore.LongestReason);
        builder.HasIndex(a => new { a.ClubId, a.SquadId, a.Rule, a.Week }).IsUnique().AreNullsDistinct(false);
        builder.HasOne<SquadRow>().WithMany().HasForeignKey(a => new { a.ClubId, a.SquadId }).OnDelete(DeleteBehavior.Cascade);
    }
}
