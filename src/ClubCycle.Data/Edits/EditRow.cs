using ClubCycle.Data.Squads;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;

namespace ClubCycle.Data.Edits;

/// <summary>One act of a person on the inputs of a plan, with what it changed, so that it can be undone and redone.</summary>
public sealed class EditRow : IClubRow
{
    public Guid ClubId { get; set; }

    public Guid Id { get; set; }

    /// <summary>Null for the whole club.</summary>
    public Guid? SquadId { get; set; }
    public Guid By { get; set; }

    /// <summary>Rises with each edit that the person makes of the squad, or of the club.</summary>
    public int Number { get; set; }
    public Instant At { get; set; }

    /// <summary>What was done, as its undo button says it.</summary>
    public string Words { get; set; } = "";

    /// <summary>Each row that it changed, before and after.</summary>
    public string Changes { get; set; } = "";

    /// <summary>Null while it counts.</summary>
    public Instant? UndoneAt { get; set; }
}

internal sealed class EditTable : IEntityTypeConfiguration<EditRow>
{
    public void Configure(EntityTypeBuilder<EditRow> builder)
    {
        builder.ToTable("edits", ClubCycleDb.ClubSchema);
        builder.HasKey(e => new { e.ClubId, e.Id });
        builder.Property(e => e.Words).HasMaxLength(EditStore.LongestWords);
        builder.Property(e => e.Changes).HasColumnType("jsonb");
        builder.HasIndex(e => new { e.ClubId, e.SquadId, e.By, e.Number });
        builder.HasOne<SquadRow>().WithMany().HasForeignKey(e => new { e.ClubId, e.SquadId }).OnDelete(DeleteBehavior.Cascade);
    }
}
