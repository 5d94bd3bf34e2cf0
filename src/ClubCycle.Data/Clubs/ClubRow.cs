using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;

namespace ClubCycle.Data.Clubs;

public sealed class ClubRow : IClubRow, IEditableRow
{
    public Guid ClubId { get; set; }
    public string Name { get; set; } = "";

    /// <summary>TZDB id such as <c>Europe/Lisbon</c>.</summary>
    public string TimeZone { get; set; } = "";
    public IsoDayOfWeek FirstWeekday { get; set; }
    /// <summary>As in <see cref="Planning.Players.GuardianAge"/>.</summary>
    public int GuardianAge { get; set; } = Planning.Players.GuardianAge.Usual;
    public Instant CreatedAt { get; set; }

    /// <summary>Head coaches and welfare officers reach nothing before they have a second factor.</summary>
    public bool AsksSecondFactor { get; set; }
    public int Version { get; set; }
}

internal sealed class ClubTable : IEntityTypeConfiguration<ClubRow>
{
    public void Configure(EntityTypeBuilder<ClubRow> builder)
    {
        builder.ToTable("clubs", ClubCycleDb.ClubSchema, table =>
        {
            table.HasCheckConstraint("ck_clubs_first_weekday", "first_weekday between 1 and 7");
            table.HasCheckConstraint("ck_clubs_guardian_age", "guardian_age between 13 and 18");
        });
        builder.HasKey(c => c.ClubId);
        builder.Property(c => c.ClubId).ValueGeneratedNever();
        builder.Property(c => c.Name).HasMaxLength(ClubStore.LongestName);
        builder.Property(c => c.GuardianAge).HasDefaultValue(Planning.Players.GuardianAge.Usual);
        builder.Property(c => c.TimeZone).HasMaxLength(60);
    }
}
