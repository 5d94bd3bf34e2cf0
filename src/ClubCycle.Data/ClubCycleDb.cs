using System.Reflection;
using ClubCycle.Data.Accounts;
using ClubCycle.Data.Audit;
using ClubCycle.Data.Clubs;
using ClubCycle.Data.Edits;
using ClubCycle.Data.Feeds;
using ClubCycle.Data.Fixtures;
using ClubCycle.Data.Links;
using ClubCycle.Data.Outbox;
using ClubCycle.Data.Plans;
using ClubCycle.Data.Players;
using ClubCycle.Data.Seasons;
using ClubCycle.Data.Squads;
using ClubCycle.Data.Templates;
using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;

namespace ClubCycle.Data;

/// <summary>
/// The database. Schema <c>accounts</c> holds who may sign in and the key ring; schema <c>club</c> holds club data, seen through <see cref="Scope"/> only.
/// </summary>
public sealed class ClubCycleDb(DbContextOptions<ClubCycleDb> options) : IdentityUserContext<ClubUser, Guid>(options), IDataProtectionKeyContext
{
    public const string ClubSchema = "club";
    public const string AccountsSchema = "accounts";

    /// <summary>Name of the query filter that binds every club row. Switching filters off takes this name away too, and row-level security remains.</summary>
    public const string ClubFilter = "club";

    /// <summary>Set once, before the first query.</summary>
    public ClubScope Scope { get; internal set; } = ClubScope.None;

    /// <summary>As in <see cref="CurrentClub.Origin"/>; null for work that nobody looks at.</summary>
    internal Guid? Origin { get; set; }

    /// <summary>The club of this context; empty when it has none.</summary>
    public Guid ClubId => Scope.Club;

    public DbSet<ClubRow> Clubs => Set<ClubRow>();
    public DbSet<SquadRow> Squads => Set<SquadRow>();
    public DbSet<SquadCoachRow> SquadCoaches => Set<SquadCoachRow>();
    public DbSet<SeasonRow> Seasons => Set<SeasonRow>();
    public DbSet<StintRow> Stints => Set<StintRow>();
    public DbSet<ClosedDaysRow> ClosedDays => Set<ClosedDaysRow>();
    public DbSet<FixtureRow> Fixtures => Set<FixtureRow>();
    public DbSet<TemplateRow> Templates => Set<TemplateRow>();
    public DbSet<TemplateVersionRow> TemplateVersions => Set<TemplateVersionRow>();
    public DbSet<PhaseLengthRow> PhaseLengths => Set<PhaseLengthRow>();
    public DbSet<EditRow> Edits => Set<EditRow>();
    public DbSet<PinRow> Pins => Set<PinRow>();
    public DbSet<AcceptedFindingRow> AcceptedFindings => Set<AcceptedFindingRow>();
    public DbSet<RevisionRow> Revisions => Set<RevisionRow>();
    public DbSet<SessionRow> Sessions => Set<SessionRow>();
    public DbSet<PlayerRow> Players => Set<PlayerRow>();
    public DbSet<GuardianConsentRow> GuardianConsents => Set<GuardianConsentRow>();
    public DbSet<ErasureRow> Erasures => Set<ErasureRow>();
    public DbSet<TestResultRow> TestResults => Set<TestResultRow>();
    public DbSet<LinkRow> Links => Set<LinkRow>();
    public DbSet<FeedBodyRow> FeedBodies => Set<FeedBodyRow>();
    public DbSet<OutboxRow> Outbox => Set<OutboxRow>();
    public DbSet<AuditRow> Audit => Set<AuditRow>();
    public DbSet<SignInRow> SignIns => Set<SignInRow>();
    public DbSet<DataProtectionKey> DataProtectionKeys => Set<DataProtectionKey>();

    private bool SeesEveryClub => Scope == ClubScope.Everywhere;

    public override int SaveChanges(bool acceptAllChangesOnSuccess)
    {
        CountSaves();
        return base.SaveChanges(acceptAllChangesOnSuccess);
    }

    public override Task<int> SaveChangesAsync(bool acceptAllChangesOnSuccess, CancellationToken cancellationToken = default)
    {
        CountSaves();
        return base.SaveChangesAsync(acceptAllChangesOnSuccess, cancellationToken);
    }

    protected override void OnModelCreating(ModelBuilder builder)
    {
        base.OnModelCreating(builder);
        AccountTables.Configure(builder);
        builder.ApplyConfigurationsFromAssembly(typeof(ClubCycleDb).Assembly);

        var bind = typeof(ClubCycleDb).GetMethod(nameof(BindToClub), BindingFlags.NonPublic | BindingFlags.Instance)!;
        foreach (var row in builder.Model.GetEntityTypes().Select(type => type.ClrType).Where(typeof(IClubRow).IsAssignableFrom).ToList())
        {
            bind.MakeGenericMethod(row).Invoke(this, [builder]);
        }
    }

    private void BindToClub<TRow>(ModelBuilder builder)
        where TRow : class, IClubRow
    {
        var row = builder.Entity<TRow>();
        row.HasQueryFilter(ClubFilter, r => SeesEveryClub || r.ClubId == ClubId);
        if (typeof(TRow) != typeof(ClubRow))
        {
            row.HasOne<ClubRow>().WithMany().HasForeignKey(nameof(IClubRow.ClubId)).OnDelete(DeleteBehavior.Cascade);
        }

        if (typeof(IEditableRow).IsAssignableFrom(typeof(TRow)))
        {
            row.Property(nameof(IEditableRow.Version)).IsConcurrencyToken();
        }
    }

    private void CountSaves()
    {
        foreach (var entry in ChangeTracker.Entries<IEditableRow>())
        {
            if (entry.State is EntityState.Added or EntityState.Modified)
            {
                entry.Entity.Version++;
            }
        }
    }
}
