using ClubCycle.Data.Squads;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;

namespace ClubCycle.Data.Seasons;

/// <summary>Days on which nothing is planned, for the club or for one squad.</summary>
public sealed class ClosedDaysRow : IUndoableRow
{
    public Guid ClubId { get; set; }
    public Guid Id { get; set; }

    /// <summary>Null for the whole club.</summary>
    public Guid? SquadId { get; set; }

    /// <summary>Both ends inclusive.</summary>
    public DateInterval Days { get; set; } = null!;
    public string Why { get; set; } = "";
}

internal sealed class ClosedDaysTable : IEntityTypeConfiguration<ClosedDaysRow>
{
    public void Configure(EntityTypeBuilder<ClosedDaysRow> builder)
    {
        builder.ToTable("closed_days", ClubCycleDb.ClubSchema);
        builder.HasKey(c => new { c.ClubId, c.Id });
        // Wider than what is taken today: reasons of earlier versions may be longer.
        builder.Property(c => c.Why).HasMaxLength(200);
        builder.HasOne<SquadRow>().WithMany().HasForeignKey(c => new { c.ClubId, c.SquadId }).OnDelete(DeleteBehavior.Cascade);
    }
}
