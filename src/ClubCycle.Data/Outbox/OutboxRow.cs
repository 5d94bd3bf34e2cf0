using ClubCycle.Data.Squads;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;

namespace ClubCycle.Data.Outbox;

/// <summary>Work that a committed change asks for, written in the change's own transaction.</summary>
public sealed class OutboxRow : IClubRow
{
    public Guid ClubId { get; set; }
    public Guid Id { get; set; }

    /// <summary>What to do: one of <see cref="OutboxKinds"/>.</summary>
    public string Kind { get; set; } = "";
    public Guid SquadId { get; set; }

    /// <summary>What the kind needs besides the squad; null when nothing.</summary>
    public string? Body { get; set; }
    public Instant CreatedAt { get; set; }

    /// <summary>Nobody takes it before: now for new work, later after a failure or while someone is at it.</summary>
    public Instant NotBefore { get; set; }
    public int Attempts { get; set; }
}

public static class OutboxKinds
{
    /// <summary>Render the squad's feeds from its latest revision.</summary>
    public const string RenderFeeds = "render-feeds";

    /// <summary>Send a notice of changes by e-mail; the body is a <see cref="Notices.NoticeToSend"/>.</summary>
    public const string SendNotice = "send-notice";
}

internal sealed class OutboxTable : IEntityTypeConfiguration<OutboxRow>
{
    public void Configure(EntityTypeBuilder<OutboxRow> builder)
    {
        builder.ToTable("outbox", ClubCycleDb.ClubSchema);
        builder.HasKey(o => new { o.ClubId, o.Id });
        builder.Property(o => o.Kind).HasMaxLength(40);
        builder.HasIndex(o => o.NotBefore);
        builder.HasOne<SquadRow>().WithMany().HasForeignKey(o => new { o.ClubId, o.SquadId }).OnDelete(DeleteBehavior.Cascade);
    }
}
