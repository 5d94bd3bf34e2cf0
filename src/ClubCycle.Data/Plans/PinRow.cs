using ClubCycle.Data.Squads;
using ClubCycle.Planning.Replanning;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;

namespace ClubCycle.Data.Plans;

/// <summary>A person's decision about one slot of one week.</summary>
public sealed class PinRow : IUndoableRow
{
    public Guid ClubId { get; set; }
    public Guid SquadId { get; set; }
    public LocalDate WeekFirst { get; set; }
    public string Slot { get; set; } = "";
    public LocalDate? Date { get; set; }
    public LocalTime? Start { get; set; }
    public bool Skipped { get; set; }

    /// <summary>What the session is instead of the template's workout.</summary>
    public string? Workout { get; set; }

    /// <summary>How long it lasts instead of what the planner gives it.</summary>
    public int? Minutes { get; set; }

    /// <summary>What the coach tells the players about it.</summary>
    public string? Note { get; set; }
    public Guid? DecidedBy { get; set; }
    public Instant DecidedAt { get; set; }

    public Pin ToPin() => new(WeekFirst, Slot, Date, Start, Skipped, Workout, Minutes, Note);
}

internal sealed class PinTable : IEntityTypeConfiguration<PinRow>
{
    public void Configure(EntityTypeBuilder<PinRow> builder)
    {
        builder.ToTable("pins", ClubCycleDb.ClubSchema, table => table.HasCheckConstraint("ck_pins_minutes", "minutes between 1 and 1440"));
        builder.HasKey(p => new { p.ClubId, p.SquadId, p.WeekFirst, p.Slot });
        builder.Property(p => p.Slot).HasMaxLength(PinStore.LongestSlot);
        builder.Property(p => p.Workout).HasMaxLength(60);
        builder.Property(p => p.Note).HasMaxLength(Pin.LongestNote);
        builder.HasOne<SquadRow>().WithMany().HasForeignKey(p => new { p.ClubId, p.SquadId }).OnDelete(DeleteBehavior.Cascade);
    }
}
