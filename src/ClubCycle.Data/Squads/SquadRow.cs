using ClubCycle.Data.Templates;
using ClubCycle.Planning.Squads;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;

namespace ClubCycle.Data.Squads;

public sealed class SquadRow : IUndoableRow, IEditableRow
{
    public Guid ClubId { get; set; }
    public Guid Id { get; set; }
    public string Name { get; set; } = "";

    /// <summary>As in <see cref="AgeGroup.Name"/>.</summary>
    public string AgeGroup { get; set; } = "";
    public TrainingAge TrainingAge { get; set; }
    public IReadOnlyList<Practice> Practices { get; set; } = [];
    public IReadOnlyList<TimeWindow> Windows { get; set; } = [];
    public IsoDayOfWeek MatchDay { get; set; }
    public LocalTime? MatchStart { get; set; }

    /// <summary>Where notices of changes go, such as a mailing list; null for nowhere.</summary>
    public string? NoticeAddress { get; set; }
    public Guid TemplateId { get; set; }
    public int TemplateVersion { get; set; }

    /// <summary>The revision whose sessions the draft stays close to, while <see cref="RestoredOver"/> is the latest one; null for the latest.</summary>
    public int? RestoredFrom { get; set; }
    public int? RestoredOver { get; set; }
    public int Version { get; set; }

    /// <summary>The squad as planning knows it.</summary>
    public Squad ToSquad() => new(
        Id, Name,
        Planning.Squads.AgeGroup.Find(AgeGroup) ?? throw new InvalidOperationException($"Squad {Id} is stored with the unknown age group '{AgeGroup}'."),
        TrainingAge, Practices, MatchDay, MatchStart, Windows);

    public void Take(Squad squad) =>
        (Name, AgeGroup, TrainingAge, Practices, MatchDay, MatchStart, Windows) =
        (Planning.TypedText.Tidy(squad.Name), squad.AgeGroup.Name, squad.TrainingAge, squad.Practices, squad.MatchDay, squad.MatchStart, squad.Windows);
}

internal sealed class SquadTable : IEntityTypeConfiguration<SquadRow>
{
    public void Configure(EntityTypeBuilder<SquadRow> builder)
    {
        builder.ToTable("squads", ClubCycleDb.ClubSchema, table => table.HasCheckConstraint("ck_squads_match_day", "match_day between 1 and 7"));
        builder.HasKey(s => new { s.ClubId, s.Id });
        builder.Property(s => s.Name).HasMaxLength(SquadCheck.LongestName);
        builder.Property(s => s.AgeGroup).HasMaxLength(10);
        builder.Property(s => s.NoticeAddress).HasMaxLength(254);
        builder.Property(s => s.TrainingAge).HasConversion<string>().HasMaxLength(10);
        builder.Property(s => s.Practices).HasColumnType("jsonb").HasConversion(JsonList.Converter<Practice>(), JsonList.Comparer<Practice>());
        builder.Property(s => s.Windows).HasColumnType("jsonb").HasConversion(JsonList.Converter<TimeWindow>(), JsonList.Comparer<TimeWindow>());
        builder.HasOne<TemplateVersionRow>().WithMany().HasForeignKey(s => new { s.ClubId, s.TemplateId, s.TemplateVersion }).OnDelete(DeleteBehavior.NoAction);
    }
}
