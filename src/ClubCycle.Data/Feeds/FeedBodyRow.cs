using ClubCycle.Data.Squads;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;

namespace ClubCycle.Data.Feeds;

/// <summary>A feed as phones get it, made when a plan is published so that a poll only reads bytes.</summary>
public sealed class FeedBodyRow : IClubRow
{
    public Guid ClubId { get; set; }
    public Guid SquadId { get; set; }

    /// <summary>Which text of the squad's plan; one name a variant.</summary>
    public string Variant { get; set; } = "";

    /// <summary>Of the uncompressed text, without quotes.</summary>
    public string Etag { get; set; } = "";
    public byte[] Gzip { get; set; } = [];
    public byte[] Brotli { get; set; } = [];

    /// <summary>Bytes of the uncompressed text.</summary>
    public int Length { get; set; }
    public Instant LastModified { get; set; }
}

internal sealed class FeedBodyTable : IEntityTypeConfiguration<FeedBodyRow>
{
    public void Configure(EntityTypeBuilder<FeedBodyRow> builder)
    {
        builder.ToTable("feed_bodies", ClubCycleDb.ClubSchema);
        builder.HasKey(f => new { f.ClubId, f.SquadId, f.Variant });
        builder.Property(f => f.Variant).HasMaxLength(40);
        builder.Property(f => f.Etag).HasMaxLength(100);
        builder.HasOne<SquadRow>().WithMany().HasForeignKey(f => new { f.ClubId, f.SquadId }).OnDelete(DeleteBehavior.Cascade);
    }
}
