using ClubCycle.Planning.Languages;
using ClubCycle.Planning.Players;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;

namespace ClubCycle.Data.Players;

/// <summary>What a guardian of one player was asked and answered. Who the guardian is stays with the club: neither name nor address is stored.</summary>
public sealed class GuardianConsentRow : IClubRow
{
    public Guid ClubId { get; set; }
    public Guid PlayerId { get; set; }

    /// <summary>SHA-256 of the secret in the guardian's address; null when there is no address that works.</summary>
    public byte[]? TokenHash { get; set; }

    /// <summary>Of the guardian's page.</summary>
    public Language Language { get; set; }

    /// <summary>When the address was made.</summary>
    public Instant? AskedAt { get; set; }

    /// <summary>An answer came through the address: it no longer expires by itself.</summary>
    public bool LinkUsed { get; set; }
    public GuardianAnswer? Answer { get; set; }

    /// <summary>At the club.</summary>
    public LocalDate? AnsweredOn { get; set; }

    /// <summary>When the player turned out to be old enough, and the guardian's rights ended.</summary>
    public LocalDate? EndedOn { get; set; }
}

internal sealed class GuardianConsentTable : IEntityTypeConfiguration<GuardianConsentRow>
{
    public void Configure(EntityTypeBuilder<GuardianConsentRow> builder)
    {
        builder.ToTable("guardian_consents", ClubCycleDb.ClubSchema, table =>
        {
            table.HasCheckConstraint("ck_guardian_consents_token_hash", "octet_length(token_hash) = 32");
            table.HasCheckConstraint("ck_guardian_consents_answered_on", "(answer is null) = (answered_on is null)");
        });
        builder.HasKey(c => new { c.ClubId, c.PlayerId });
        builder.Property(c => c.Language).HasConversion<string>().HasMaxLength(20);
        builder.Property(c => c.Answer).HasConversion<string>().HasMaxLength(20);
        builder.HasIndex(c => new { c.ClubId, c.TokenHash }).IsUnique();

        // A guardian's phone knows the secret but not the club; unique indexes begin with the club, so this one is plain.
        builder.HasIndex(c => c.TokenHash);
        builder.HasOne<PlayerRow>().WithMany().HasForeignKey(c => new { c.ClubId, c.PlayerId }).OnDelete(DeleteBehavior.Cascade);
    }
}
