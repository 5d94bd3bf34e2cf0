using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;

namespace ClubCycle.Data.Audit;

/// <summary>Who changed what, and when. Outlives what it speaks of, so it refers to nothing but the club.</summary>
public sealed class AuditRow : IClubRow
{
    public Guid ClubId { get; set; }
    public Guid Id { get; set; }
    public Instant At { get; set; }

    /// <summary>Null for the club's own set-up.</summary>
    public Guid? By { get; set; }

    /// <summary>Dotted, such as <c>plan.published</c>.</summary>
    public string What { get; set; } = "";
    public Guid? SquadId { get; set; }

    /// <summary>Names no player.</summary>
    public string Details { get; set; } = "";
}

internal sealed class AuditTable : IEntityTypeConfiguration<AuditRow>
{
    public void Configure(EntityTypeBuilder<AuditRow> builder)
    {
        builder.ToTable("audit", ClubCycleDb.ClubSchema);
        builder.HasKey(a => new { a.ClubId, a.Id });
        builder.Property(a => a.What).HasMaxLength(60);
        builder.Property(a => a.Details).HasMaxLength(AuditTrail.LongestDetails);
        builder.HasIndex(a => new { a.ClubId, a.At });
    }
}
