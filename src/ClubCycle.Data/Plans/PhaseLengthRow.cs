using ClubCycle.Data.Seasons;
using ClubCycle.Data.Squads;
using ClubCycle.Planning.Phases;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace ClubCycle.Data.Plans;

/// <summary>A length that a coach gave one phase of a squad's cycle. It ends with the season that it was made for.</summary>
public sealed class PhaseLengthRow : IUndoableRow
{
    public Guid ClubId { get; set; }
    public Guid SquadId { get; set; }

    /// <summary>The season whose cycle it is for, the squad's or the club's.</summary>
    public Guid SeasonId { get; set; }
    public int Gap { get; set; }
    public string Chain { get; set; } = "";
    public int Phase { get; set; }
    public int Weeks { get; set; }

    public PhaseLength ToLength() => new(Gap, Chain, Phase, Weeks);
}

internal sealed class PhaseLengthTable : IEntityTypeConfiguration<PhaseLengthRow>
{
    public void Configure(EntityTypeBuilder<PhaseLengthRow> builder)
    {
        builder.ToTable("phase_lengths", ClubCycleDb.ClubSchema, table => table.HasCheckConstraint("ck_phase_lengths_weeks", "weeks between 0 and 60"));
        builder.HasKey(l => new { l.ClubId, l.SquadId, l.SeasonId, l.Gap, l.Chain, l.Phase });
        builder.Property(l => l.Chain).HasMaxLength(100);
        builder.HasOne<SquadRow>().WithMany().HasForeignKey(l => new { l.ClubId, l.SquadId }).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<SeasonRow>().WithMany().HasForeignKey(l => new { l.ClubId, l.SeasonId }).OnDelete(DeleteBehavior.Cascade);
    }
}
