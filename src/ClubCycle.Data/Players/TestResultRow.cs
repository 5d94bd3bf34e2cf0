using ClubCycle.Planning.Players;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;

namespace ClubCycle.Data.Players;

/// <summary>A player's result of a field test.</summary>
public sealed class TestResultRow : IClubRow
{
    public Guid ClubId { get; set; }
    public Guid Id { get; set; }
    public Guid PlayerId { get; set; }
    public TestKind Kind { get; set; }
    public LocalDate TakenOn { get; set; }
    public double Value { get; set; }
    public int? Second { get; set; }
    public string? Exercise { get; set; }
    public Guid? EnteredBy { get; set; }

    public FieldTestResult ToResult() => new(Kind, TakenOn, Value, Second, Exercise);
}

internal sealed class TestResultTable : IEntityTypeConfiguration<TestResultRow>
{
    public void Configure(EntityTypeBuilder<TestResultRow> builder)
    {
        builder.ToTable("test_results", ClubCycleDb.ClubSchema);
        builder.HasKey(r => new { r.ClubId, r.Id });
        builder.Property(r => r.Kind).HasConversion<string>().HasMaxLength(30);
        builder.Property(r => r.Exercise).HasMaxLength(60);
        builder.HasIndex(r => new { r.ClubId, r.PlayerId, r.TakenOn });
        builder.HasOne<PlayerRow>().WithMany().HasForeignKey(r => new { r.ClubId, r.PlayerId }).OnDelete(DeleteBehavior.Cascade);
    }
}
