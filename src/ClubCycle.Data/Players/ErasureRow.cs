using ClubCycle.Data.Audit;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;

namespace ClubCycle.Data.Players;

/// <summary>A player who was erased, by the id alone: so that they can be erased again after a backup was restored.</summary>
public sealed class ErasureRow : IClubRow
{
    public Guid ClubId { get; set; }

    /// <summary>The player's.</summary>
    public Guid Id { get; set; }
    public Instant At { get; set; }
}

internal sealed class ErasureTable : IEntityTypeConfiguration<ErasureRow>
{
    public void Configure(EntityTypeBuilder<ErasureRow> builder)
    {
        builder.ToTable("erasures", ClubCycleDb.ClubSchema);
        builder.HasKey(e => new { e.ClubId, e.Id });
    }
}

internal static class Erasing
{
    /// <summary>Takes a player away with all links and tests, and keeps that it happened.</summary>
    public static void Erase(this ClubCycleDb db, PlayerRow player, Instant now, Guid? by)
    {
        db.Players.Remove(player);
        db.Erasures.Add(new ErasureRow { ClubId = db.ClubId, Id = player.Id, At = now });
        db.Note(now, by, WelfareStore.Erased, player.SquadId);
    }
}
