using ClubCycle.Data.Audit;
using ClubCycle.Data.Edits;
using ClubCycle.Data.Templates;
using ClubCycle.Planning;
using ClubCycle.Planning.Squads;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Squads;

/// <summary>A squad as stored.</summary>
/// <param name="NoticeAddress">Where notices of changes go; null for nowhere.</param>
public sealed record StoredSquad(Squad Squad, Guid TemplateId, int TemplateVersion, int Version, string? NoticeAddress = null);

/// <summary>The club's squads and who coaches them.</summary>
public sealed class SquadStore(IClubDbFactory contexts, IClock clock)
{
    /// <summary>Youngest first, then by name.</summary>
    public async Task<IReadOnlyList<StoredSquad>> ListAsync(CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        var rows = await db.Squads.AsNoTracking().ToListAsync(cancel);
        return [.. rows.Select(Stored).OrderBy(s => AgeGroup.All.ToList().IndexOf(s.Squad.AgeGroup)).ThenBy(s => s.Squad.Name, StringComparer.OrdinalIgnoreCase)];
    }

    public async Task<Result<StoredSquad>> FindAsync(Guid id, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await db.Squads.AsNoTracking().SingleOrDefaultAsync(s => s.Id == id, cancel) is { } row ? Stored(row) : Refusal.NotFound("squad");
    }

    /// <summary>Adds a squad; its key is made here unless it has one. Without a template it gets the built-in one for its age group while that is offered.</summary>
    public async Task<Result<Guid>> AddAsync(Squad squad, Guid? templateId, Guid by, CancellationToken cancel = default)
    {
        if (SquadCheck.Check(squad) is { Count: > 0 } problems)
        {
            return new Result<Guid>.Failed(problems);
        }

        await using var db = await contexts.OpenAsync(cancel);
        var found = templateId is null ? await TemplateLibrary.UsualAsync(db, squad.AgeGroup, cancel)
            : await db.Templates.AsNoTracking().SingleOrDefaultAsync(t => t.Id == templateId, cancel) is not { } chosen ? Refusal.NotFound("template")
            : chosen.RetiredAt is null ? chosen
            : TemplateLibrary.Retired;
        if (!found.TryGet(out var template, out problems))
        {
            return new Result<Guid>.Failed(problems);
        }

        var row = new SquadRow
        {
            ClubId = db.ClubId,
            Id = squad.Key == Guid.Empty ? NewId.Create() : squad.Key,
            TemplateId = template.Id,
            TemplateVersion = template.LatestVersion,
        };
        row.Take(squad);
        db.Squads.Add(row);
        db.Note(clock.GetCurrentInstant(), by, "squad.added", row.Id, row.Name);
        await db.SaveChangesAsync(cancel);
        return row.Id;
    }

    public async Task<Result<int>> SaveAsync(Squad squad, int expectedVersion, Guid by, CancellationToken cancel = default)
    {
        if (SquadCheck.Check(squad) is { Count: > 0 } problems)
        {
            return new Result<int>.Failed(problems);
        }

        await using var db = await contexts.OpenAsync(cancel);
        if (await db.Squads.SingleOrDefaultAsync(s => s.Id == squad.Key, cancel) is not { } row)
        {
            return Refusal.NotFound("squad");
        }

        if (row.Version != expectedVersion)
        {
            return Refusal.Meanwhile("squad");
        }

        row.Take(squad);
        var now = clock.GetCurrentInstant();
        db.Note(now, by, "squad.changed", row.Id, row.Name);
        await db.RememberAsync(now, by, row.Id, "Squad settings", cancel);
        return await db.TrySaveAsync(Refusal.Meanwhile("squad"), cancel) is { } problem ? problem : row.Version;
    }

    /// <summary>Sets where notices of changes go; empty for nowhere.</summary>
    public async Task<Result<int>> SetNoticeAddressAsync(Guid id, string address, int expectedVersion, Guid by, CancellationToken cancel = default)
    {
        if (!NoticeAddress.Create(address).TryGet(out var plausible, out var problems))
        {
            return new Result<int>.Failed(problems);
        }

        await using var db = await contexts.OpenAsync(cancel);
        if (await db.Squads.SingleOrDefaultAsync(s => s.Id == id, cancel) is not { } row)
        {
            return Refusal.NotFound("squad");
        }

        if (row.Version != expectedVersion)
        {
            return Refusal.Meanwhile("squad");
        }

        row.NoticeAddress = plausible;
        db.Note(clock.GetCurrentInstant(), by, "squad.notice-address-set", id);
        return await db.TrySaveAsync(Refusal.Meanwhile("squad"), cancel) is { } problem ? problem : row.Version;
    }

    /// <summary>Removes a squad with all that belongs to it: matches, pins, plans, players and their links.</summary>
    public async Task<Result<Guid>> RemoveAsync(Guid id, Guid by, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        if (await db.Squads.SingleOrDefaultAsync(s => s.Id == id, cancel) is not { } row)
        {
            return Refusal.NotFound("squad");
        }

        db.Squads.Remove(row);
        db.Note(clock.GetCurrentInstant(), by, "squad.removed", id, row.Name);
        return await db.TrySaveAsync(Refusal.Meanwhile("squad"), cancel) is { } problem ? problem : id;
    }

    /// <summary>Ids of the people who may change the squad besides head coaches.</summary>
    public async Task<IReadOnlyList<Guid>> CoachesAsync(Guid squadId, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await db.SquadCoaches.Where(c => c.SquadId == squadId).Select(c => c.UserId).ToListAsync(cancel);
    }

    /// <summary>Ids of the squads a person coaches.</summary>
    public async Task<IReadOnlyList<Guid>> CoachedByAsync(Guid userId, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await db.SquadCoaches.Where(c => c.UserId == userId).Select(c => c.SquadId).ToListAsync(cancel);
    }

    /// <summary>Sets the people who may change the squad. They must belong to the club.</summary>
    public async Task<Result<Guid>> SetCoachesAsync(Guid squadId, IReadOnlyCollection<Guid> userIds, Guid by, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        if (!await db.Squads.AnyAsync(s => s.Id == squadId, cancel))
        {
            return Refusal.NotFound("squad");
        }

        if (await db.Users.CountAsync(u => u.ClubId == db.ClubId && userIds.Contains(u.Id), cancel) != userIds.Distinct().Count())
        {
            return Refusal.NotFound("person");
        }

        var now = await db.SquadCoaches.Where(c => c.SquadId == squadId).ToListAsync(cancel);
        db.SquadCoaches.RemoveRange(now.Where(c => !userIds.Contains(c.UserId)));
        db.SquadCoaches.AddRange(userIds.Distinct().Except(now.Select(c => c.UserId)).Select(id => new SquadCoachRow { ClubId = db.ClubId, SquadId = squadId, UserId = id }));
        db.Note(clock.GetCurrentInstant(), by, "squad.coaches-set", squadId);
        await db.SaveChangesAsync(cancel);
        return squadId;
    }

    private static StoredSquad Stored(SquadRow row) => new(row.ToSquad(), row.TemplateId, row.TemplateVersion, row.Version, row.NoticeAddress);
}
