using ClubCycle.Data.Accounts;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace ClubCycle.Data.Squads;

/// <summary>A person who may change a squad.</summary>
public sealed class SquadCoachRow : IClubRow
{
    public Guid ClubId { get; set; }
    public Guid SquadId { get; set; }
    public Guid UserId { get; set; }
}

internal sealed class SquadCoachTable : IEntityTypeConfiguration<SquadCoachRow>
{
    public void Configure(EntityTypeBuilder<SquadCoachRow> builder)
    {
        builder.ToTable("squad_coaches", ClubCycleDb.ClubSchema);
        builder.HasKey(c => new { c.ClubId, c.SquadId, c.UserId });
        builder.HasOne<SquadRow>().WithMany().HasForeignKey(c => new { c.ClubId, c.SquadId }).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<ClubUser>().WithMany().HasForeignKey(c => new { c.ClubId, c.UserId }).HasPrincipalKey(u => new { u.ClubId, u.Id }).OnDelete(DeleteBehavior.Cascade);
    }
}
