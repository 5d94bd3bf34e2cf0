using ClubCycle.Data.Squads;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace ClubCycle.Data.Players;

/// <summary>A player, often a minor: a name to tell links apart, and nothing else.</summary>
public sealed class PlayerRow : IClubRow, IEditableRow
{
    public Guid ClubId { get; set; }
    public Guid Id { get; set; }
    public Guid SquadId { get; set; }
    public string Name { get; set; } = "";
    public int Version { get; set; }
}

internal sealed class PlayerTable : IEntityTypeConfiguration<PlayerRow>
{
    public void Configure(EntityTypeBuilder<PlayerRow> builder)
    {
        builder.ToTable("players", ClubCycleDb.ClubSchema);
        builder.HasKey(p => new { p.ClubId, p.Id });
        builder.Property(p => p.Name).HasMaxLength(PlayerStore.LongestName);
        builder.HasOne<SquadRow>().WithMany().HasForeignKey(p => new { p.ClubId, p.SquadId }).OnDelete(DeleteBehavior.Cascade);
    }
}
