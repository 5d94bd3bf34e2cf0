using ClubCycle.Data.Squads;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;

namespace ClubCycle.Data.Plans;

/// <summary>One published state of a squad's year. Never changed afterwards.</summary>
public sealed class RevisionRow : IClubRow
{
    public Guid ClubId { get; set; }
    public Guid SquadId { get; set; }

    /// <summary>From 1.</summary>
    public int Number { get; set; }

    /// <summary>Made by whoever asked, so that asking twice publishes once.</summary>
    public Guid CommandId { get; set; }

    /// <summary>The plan file's text.</summary>
    public string Plan { get; set; } = "";

    /// <summary>The squad's own inputs that it was planned from; null in revisions from before they were kept.</summary>
    public string? Inputs { get; set; }
    public Instant PublishedAt { get; set; }
    public Guid? PublishedBy { get; set; }
    public string Note { get; set; } = "";
}

internal sealed class RevisionTable : IEntityTypeConfiguration<RevisionRow>
{
    public void Configure(EntityTypeBuilder<RevisionRow> builder)
    {
        builder.ToTable("revisions", ClubCycleDb.ClubSchema);
        builder.HasKey(r => new { r.ClubId, r.SquadId, r.Number });
        builder.Property(r => r.Inputs).HasColumnType("jsonb");
        builder.Property(r => r.Note).HasMaxLength(PlanStore.LongestNote);
        builder.HasIndex(r => new { r.ClubId, r.SquadId, r.CommandId }).IsUnique();
        builder.HasOne<SquadRow>().WithMany().HasForeignKey(r => new { r.ClubId, r.SquadId }).OnDelete(DeleteBehavior.Cascade);
    }
}
