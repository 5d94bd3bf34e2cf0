using ClubCycle.Data.Squads;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;

namespace ClubCycle.Data.Players;

/// <summary>A player, often a minor: a name to tell links apart, and only what limits or doses training. Never height, weight or an illness.</summary>
public sealed class PlayerRow : IClubRow, IEditableRow
{
    public Guid ClubId { get; set; }
    public Guid Id { get; set; }
    public Guid SquadId { get; set; }
    public string Name { get; set; } = "";

    /// <summary>Optional, for estimates that depend on age.</summary>
    public short? BirthYear { get; set; }

    /// <summary>The coach wants the health questions answered before the plan starts.</summary>
    public bool AsksHealthQuestions { get; set; }

    /// <summary>All answered with no, or cleared by a licensed professional, on this day. The answers are not kept.</summary>
    public LocalDate? HealthSettledOn { get; set; }

    /// <summary>In a growth spurt since; jumps and sprints are fewer meanwhile.</summary>
    public LocalDate? GrowingFastSince { get; set; }

    /// <summary>Whose whereabouts may put them in danger: no calendar, no page, and on no list but the welfare officer's.</summary>
    public bool Protected { get; set; }
    public LocalDate AddedOn { get; set; }
    public int Version { get; set; }
}

internal sealed class PlayerTable : IEntityTypeConfiguration<PlayerRow>
{
    /// <summary>Name of the query filter that hides protected players.</summary>
    public const string ProtectedFilter = "protected";

    public void Configure(EntityTypeBuilder<PlayerRow> builder)
    {
        builder.ToTable("players", ClubCycleDb.ClubSchema, table => table.HasCheckConstraint("ck_players_birth_year", "birth_year between 1900 and 2100"));
        builder.HasKey(p => new { p.ClubId, p.Id });
        builder.HasQueryFilter(ProtectedFilter, p => !p.Protected);
        builder.Property(p => p.AddedOn).HasDefaultValueSql("current_date");
        builder.Property(p => p.Name).HasMaxLength(PlayerStore.LongestName);
        builder.HasOne<SquadRow>().WithMany().HasForeignKey(p => new { p.ClubId, p.SquadId }).OnDelete(DeleteBehavior.Cascade);
    }
}

internal static class EveryPlayers
{
    /// <summary>Protected ones too: for what serves the welfare officer or the law, and nothing else.</summary>
    public static IQueryable<PlayerRow> EveryPlayer(this ClubCycleDb db) => db.Players.IgnoreQueryFilters([PlayerTable.ProtectedFilter]);
}
