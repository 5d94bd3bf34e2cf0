using ClubCycle.Data.Squads;
using ClubCycle.Planning.Seasons;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;

namespace ClubCycle.Data.Fixtures;

public sealed class FixtureRow : IUndoableRow, IEditableRow
{
    public Guid ClubId { get; set; }
    public Guid Id { get; set; }
    public Guid SquadId { get; set; }
    public LocalDate Date { get; set; }

    /// <summary>The squad's usual match start when null.</summary>
    public LocalTime? Start { get; set; }
    public string? Opponent { get; set; }

    /// <summary>Where it is played; null when nobody said.</summary>
    public string? Place { get; set; }

    /// <summary>What the file that it was read from calls it, so that the file's next version updates it.</summary>
    public string? SourceKey { get; set; }
    public int Version { get; set; }

    public Fixture ToFixture() => new(Date, Start, Opponent, Id, Place);
}

internal sealed class FixtureTable : IEntityTypeConfiguration<FixtureRow>
{
    public void Configure(EntityTypeBuilder<FixtureRow> builder)
    {
        builder.ToTable("fixtures", ClubCycleDb.ClubSchema);
        builder.HasKey(f => new { f.ClubId, f.Id });
        builder.Property(f => f.Opponent).HasMaxLength(FixtureStore.LongestOpponent);
        builder.Property(f => f.Place).HasMaxLength(Fixture.LongestPlace);
        builder.Property(f => f.SourceKey).HasMaxLength(FixtureStore.LongestSourceKey);
        builder.HasIndex(f => new { f.ClubId, f.SquadId, f.Date });
        builder.HasOne<SquadRow>().WithMany().HasForeignKey(f => new { f.ClubId, f.SquadId }).OnDelete(DeleteBehavior.Cascade);
    }
}
