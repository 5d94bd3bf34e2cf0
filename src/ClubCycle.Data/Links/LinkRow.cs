using ClubCycle.Data.Players;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;

namespace ClubCycle.Data.Links;

/// <summary>A secret address of one player's page and feed. The secret itself is stored nowhere.</summary>
public sealed class LinkRow : IClubRow
{
    public Guid ClubId { get; set; }

    /// <summary>Public: for support and revoking.</summary>
    public Guid Id { get; set; }
    public Guid PlayerId { get; set; }

    /// <summary>SHA-256 of the token.</summary>
    public byte[] TokenHash { get; set; } = [];

    /// <summary>Tells a player's links apart, such as "mother's phone".</summary>
    public string Name { get; set; } = "";

    /// <summary>What its calendar shows: a code of <see cref="Planning.Feeds.FeedOptions"/>.</summary>
    public string Options { get; set; } = "spm";
    public Instant CreatedAt { get; set; }
    public Instant? RevokedAt { get; set; }

    /// <summary>The day only, so that it tells whether the calendar is alive and not when a phone was used.</summary>
    public LocalDate? LastPollDay { get; set; }
}

internal sealed class LinkTable : IEntityTypeConfiguration<LinkRow>
{
    public void Configure(EntityTypeBuilder<LinkRow> builder)
    {
        builder.ToTable("links", ClubCycleDb.ClubSchema, table => table.HasCheckConstraint("ck_links_token_hash", "octet_length(token_hash) = 32"));
        builder.HasKey(l => new { l.ClubId, l.Id });
        builder.Property(l => l.Name).HasMaxLength(LinkStore.LongestName);
        builder.Property(l => l.Options).HasMaxLength(20);
        builder.HasIndex(l => new { l.ClubId, l.TokenHash }).IsUnique();

        // A phone knows its token but not its club; unique indexes begin with the club, so this one is plain.
        builder.HasIndex(l => l.TokenHash);
        builder.HasOne<PlayerRow>().WithMany().HasForeignKey(l => new { l.ClubId, l.PlayerId }).OnDelete(DeleteBehavior.Cascade);
    }
}
