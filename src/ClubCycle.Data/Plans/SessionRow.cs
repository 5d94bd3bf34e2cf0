using ClubCycle.Data.Squads;
using ClubCycle.Planning;
using ClubCycle.Planning.Seasons;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;

namespace ClubCycle.Data.Plans;

/// <summary>What phones were told about a session: the stamp its calendar event carries. The content is in the revision.</summary>
public sealed class SessionRow : IClubRow
{
    public Guid ClubId { get; set; }
    public Guid SquadId { get; set; }
    public Guid Uid { get; set; }
    public LocalDate Date { get; set; }
    public LocalTime Start { get; set; }
    public int Minutes { get; set; }
    public string Title { get; set; } = "";

    /// <summary>Where it takes place; null when nobody said.</summary>
    public string? Place { get; set; }
    public SessionKind Kind { get; set; }

    /// <summary>Rises when time, length, place, title or cancellation change, and never falls.</summary>
    public int Sequence { get; set; }
    public Instant ChangedAt { get; set; }

    /// <summary>Null while it takes place.</summary>
    public Instant? CancelledAt { get; set; }
}

internal sealed class SessionTable : IEntityTypeConfiguration<SessionRow>
{
    public void Configure(EntityTypeBuilder<SessionRow> builder)
    {
        builder.ToTable("sessions", ClubCycleDb.ClubSchema, table => table.HasCheckConstraint("ck_sessions_minutes", "minutes between 1 and 1440"));
        builder.HasKey(s => new { s.ClubId, s.SquadId, s.Uid });
        builder.Property(s => s.Title).HasMaxLength(300);
        builder.Property(s => s.Place).HasMaxLength(Fixture.LongestPlace);
        builder.Property(s => s.Kind).HasConversion<string>().HasMaxLength(20);
        builder.HasIndex(s => new { s.ClubId, s.SquadId, s.Date });
        builder.HasOne<SquadRow>().WithMany().HasForeignKey(s => new { s.ClubId, s.SquadId }).OnDelete(DeleteBehavior.Cascade);
    }
}
