using ClubCycle.Data.Squads;
using ClubCycle.Planning.Seasons;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;

namespace ClubCycle.Data.Seasons;

/// <summary>A cycle's competition dates: the club's default, or one squad's own.</summary>
public sealed class SeasonRow : IUndoableRow, IEditableRow
{
    public Guid ClubId { get; set; }
    public Guid Id { get; set; }

    /// <summary>Null for the club's default.</summary>
    public Guid? SquadId { get; set; }
    public LocalDate PreviousLastDay { get; set; }
    public List<StintRow> Stints { get; set; } = [];
    public int Version { get; set; }

    public Season ToSeason() => Season.Create(PreviousLastDay, [.. Stints.OrderBy(s => s.Number).Select(s => new Stint(s.Days.Start, s.Days.End))]).OrThrow();
}

/// <summary>One stint. The database refuses two of a season that share a day.</summary>
public sealed class StintRow : IUndoableRow
{
    public Guid ClubId { get; set; }
    public Guid SeasonId { get; set; }

    /// <summary>From 1, in date order.</summary>
    public int Number { get; set; }

    /// <summary>First and last match day, both inclusive.</summary>
    public DateInterval Days { get; set; } = null!;
}

internal sealed class SeasonTable : IEntityTypeConfiguration<SeasonRow>
{
    public void Configure(EntityTypeBuilder<SeasonRow> builder)
    {
        builder.ToTable("seasons", ClubCycleDb.ClubSchema);
        builder.HasKey(s => new { s.ClubId, s.Id });
        builder.HasOne<SquadRow>().WithMany().HasForeignKey(s => new { s.ClubId, s.SquadId }).OnDelete(DeleteBehavior.Cascade);
        builder.HasMany(s => s.Stints).WithOne().HasForeignKey(s => new { s.ClubId, s.SeasonId }).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class StintTable : IEntityTypeConfiguration<StintRow>
{
    public void Configure(EntityTypeBuilder<StintRow> builder)
    {
        builder.ToTable("stints", ClubCycleDb.ClubSchema);
        builder.HasKey(s => new { s.ClubId, s.SeasonId, s.Number });
    }
}
