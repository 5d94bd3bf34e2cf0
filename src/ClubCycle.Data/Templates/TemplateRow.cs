using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;

namespace ClubCycle.Data.Templates;

/// <summary>A template of the club's library; its content is in its versions.</summary>
public sealed class TemplateRow : IClubRow, IEditableRow
{
    public Guid ClubId { get; set; }
    public Guid Id { get; set; }

    /// <summary>Unique in the club: lower-case words and hyphens.</summary>
    public string Name { get; set; } = "";
    public string Title { get; set; } = "";

    /// <summary>Came with ClubCycle; such a template is cloned, not changed.</summary>
    public bool BuiltIn { get; set; }

    /// <summary>What it was cloned from.</summary>
    public Guid? ParentId { get; set; }
    public int? ParentVersion { get; set; }
    public int LatestVersion { get; set; }

    /// <summary>Since when it is no longer offered; squads that use it go on.</summary>
    public Instant? RetiredAt { get; set; }
    public int Version { get; set; }
}

/// <summary>A template as it was saved once. Never changed afterwards.</summary>
public sealed class TemplateVersionRow : IClubRow
{
    public Guid ClubId { get; set; }
    public Guid TemplateId { get; set; }

    /// <summary>From 1.</summary>
    public int Number { get; set; }

    /// <summary>The template file's text.</summary>
    public string Body { get; set; } = "";
    public Instant SavedAt { get; set; }
    public Guid? SavedBy { get; set; }
    public string Note { get; set; } = "";
}

internal sealed class TemplateTable : IEntityTypeConfiguration<TemplateRow>
{
    public void Configure(EntityTypeBuilder<TemplateRow> builder)
    {
        builder.ToTable("templates", ClubCycleDb.ClubSchema);
        builder.HasKey(t => new { t.ClubId, t.Id });
        builder.Property(t => t.Name).HasMaxLength(100);
        builder.Property(t => t.Title).HasMaxLength(Planning.Templates.TemplateCheck.LongestTitle);
        builder.HasIndex(t => new { t.ClubId, t.Name }).IsUnique();
        builder.HasOne<TemplateVersionRow>().WithMany().HasForeignKey(t => new { t.ClubId, t.ParentId, t.ParentVersion }).OnDelete(DeleteBehavior.NoAction);
    }
}

internal sealed class TemplateVersionTable : IEntityTypeConfiguration<TemplateVersionRow>
{
    public void Configure(EntityTypeBuilder<TemplateVersionRow> builder)
    {
        builder.ToTable("template_versions", ClubCycleDb.ClubSchema);
        builder.HasKey(v => new { v.ClubId, v.TemplateId, v.Number });
        builder.Property(v => v.Note).HasMaxLength(TemplateStore.LongestNote);
        builder.HasOne<TemplateRow>().WithMany().HasForeignKey(v => new { v.ClubId, v.TemplateId }).OnDelete(DeleteBehavior.Cascade);
    }
}
