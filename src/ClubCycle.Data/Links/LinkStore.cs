using System.Globalization;
using ClubCycle.Data.Audit;
using ClubCycle.Data.Outbox;
using ClubCycle.Data.Players;
using ClubCycle.Data.Squads;
using ClubCycle.Planning;
using ClubCycle.Planning.Feeds;
using ClubCycle.Planning.Languages;
using ClubCycle.Planning.Squads;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Links;

/// <summary>A link as coaches see it: everything but the secret.</summary>
public sealed record StoredLink(Guid Id, Guid PlayerId, string Name, FeedOptions Options, Instant CreatedAt, Instant? RevokedAt, LocalDate? LastPollDay);

/// <summary>A new link with its secret, which is never shown again.</summary>
public sealed record NewLink(Guid Id, string Token);

/// <summary>New links of many players, made to be printed.</summary>
/// <param name="Name">Every link's name, which no other link of the squad has.</param>
public sealed record LinkSheet(string Name, IReadOnlyList<SheetLink> Links);

/// <param name="Player">As stored.</param>
public sealed record SheetLink(string Player, NewLink Link);

/// <summary>A sheet that was made before.</summary>
/// <param name="Live">Links not revoked.</param>
/// <param name="Unused">Live links that nobody has opened.</param>
public sealed record StoredSheet(string Name, int Live, int Unused);

/// <summary>Whom a secret address belongs to.</summary>
/// <param name="Live">False once revoked.</param>
public sealed record FoundLink(Guid ClubId, Guid LinkId, Guid PlayerId, Guid SquadId, bool Live, Language Language);

/// <summary>Secret addresses of players' pages and feeds.</summary>
public sealed class LinkStore(IDbContextFactory<ClubCycleDb> everywhere, IClubDbFactory contexts, IClock clock)
{
    public const int LongestName = 60;
    public const int MostLivePerPlayer = 10;

    private const string SheetName = "Sheet of ";

    public async Task<IReadOnlyList<StoredLink>> ListAsync(Guid squadId, Guid playerId, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await LinksOf(db, squadId, playerId).OrderBy(l => l.CreatedAt).ThenBy(l => l.Id)
            .Select(l => new StoredLink(l.Id, l.PlayerId, l.Name, OptionsOf(l.Options), l.CreatedAt, l.RevokedAt, l.LastPollDay)).ToListAsync(cancel);
    }

    /// <summary>A link whose calendar shows what is usual for the squad's age.</summary>
    /// <param name="name">Tells the player's links apart, such as "own phone".</param>
    public Task<Result<NewLink>> CreateAsync(Guid squadId, Guid playerId, string name, Guid by, CancellationToken cancel = default) =>
        CreateAsync(squadId, playerId, name, null, by, cancel);

    /// <param name="name">Tells the player's links apart, such as "own phone".</param>
    /// <param name="options">Null for what is usual for the squad's age.</param>
    public async Task<Result<NewLink>> CreateAsync(Guid squadId, Guid playerId, string name, FeedOptions? options, Guid by, CancellationToken cancel = default)
    {
        if ((NameProblem(name) ?? OptionsProblem(options)) is { } invalid)
        {
            return invalid;
        }

        await using var db = await contexts.OpenAsync(cancel);
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        await db.LockSquadsAsync([squadId], cancel);
        if (!await db.Players.AnyAsync(p => p.Id == playerId && p.SquadId == squadId, cancel))
        {
            return Refusal.NotFound("player");
        }

        if (await db.GuardianProblemAsync(squadId, playerId, clock, cancel) is { } missing)
        {
            return missing;
        }

        if (await db.Links.CountAsync(l => l.PlayerId == playerId && l.RevokedAt == null, cancel) >= MostLivePerPlayer)
        {
            return new Problem("link.too-many", $"This player has {MostLivePerPlayer} live links. Revoke one that is no longer used.", "link");
        }

        var now = clock.GetCurrentInstant();
        var (row, token) = NewRow(db, playerId, TypedText.Tidy(name), options ?? await UsualAsync(db, squadId, cancel), now);
        db.Note(now, by, "link.created", squadId, Details(row));
        await RenderAsync(db, squadId, now, cancel);
        await db.SaveChangesAsync(cancel);
        await transaction.CommitAsync(cancel);
        return new NewLink(row.Id, token);
    }

    /// <summary>A new link for each player of the squad, or for none of them when one cannot have another. Whose guardian has not confirmed is left out.</summary>
    /// <param name="everyone">False leaves out whoever has a live link.</param>
    /// <param name="options">Null for what is usual for the squad's age.</param>
    /// <param name="day">Today at the club; names the sheet.</param>
    public async Task<Result<LinkSheet>> CreateSheetAsync(Guid squadId, bool everyone, FeedOptions? options, LocalDate day, Guid by, CancellationToken cancel = default)
    {
        if (OptionsProblem(options) is { } invalid)
        {
            return invalid;
        }

        await using var db = await contexts.OpenAsync(cancel);
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        if ((await db.LockSquadsAsync([squadId], cancel)).Count == 0)
        {
            return Refusal.NotFound("squad");
        }

        var players = await db.Players.Where(p => p.SquadId == squadId).OrderBy(p => p.Name).ThenBy(p => p.Id)
            .Select(p => new { p.Id, p.Name, Live = db.Links.Count(l => l.PlayerId == p.Id && l.RevokedAt == null) }).ToListAsync(cancel);
        var guardians = await db.GuardiansAsync(squadId, clock, cancel);
        var asked = players.Where(p => everyone || p.Live == 0).ToList();
        var wanted = asked.Where(p => !guardians[p.Id].IsMissing).ToList();
        if (wanted.Count == 0 && asked.Count > 0)
        {
            return new Problem("sheet.guardians-missing", "A guardian's confirmation is missing for everyone who would get a link. Ask the guardians, or note that they agreed on paper.", "sheet");
        }

        if (wanted.Count == 0)
        {
            return players.Count == 0
                ? new Problem("sheet.no-players", "The squad has no players yet. Add them first.", "sheet")
                : new Problem("sheet.nobody-without", "Everyone has a live link already. Choose everyone to give each a further one.", "sheet");
        }

        if (wanted.Where(p => p.Live >= MostLivePerPlayer).Select(p => p.Name).ToList() is { Count: > 0 } full)
        {
            return new Problem("link.too-many", $"{MostLivePerPlayer} live links are the most for one player. Revoke one that is no longer used of {string.Join(", ", full)}.", "sheet");
        }

        var now = clock.GetCurrentInstant();
        var name = await FreeSheetNameAsync(db, squadId, day, cancel);
        var shown = options ?? await UsualAsync(db, squadId, cancel);
        List<SheetLink> made = [];
        foreach (var player in wanted)
        {
            var (row, token) = NewRow(db, player.Id, name, shown, now);
            db.Note(now, by, "link.created", squadId, Details(row));
            made.Add(new SheetLink(player.Name, new NewLink(row.Id, token)));
        }

        await RenderAsync(db, squadId, now, cancel);
        await db.SaveChangesAsync(cancel);
        await transaction.CommitAsync(cancel);
        return new LinkSheet(name, made);
    }

    /// <summary>Sheets with live links, newest first.</summary>
    public async Task<IReadOnlyList<StoredSheet>> SheetsAsync(Guid squadId, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        var sheets = await LiveOfSquad(db, squadId).Where(l => l.Name.StartsWith(SheetName)).GroupBy(l => l.Name)
            .Select(g => new { Name = g.Key, Live = g.Count(), Unused = g.Count(l => l.LastPollDay == null), MadeAt = g.Max(l => l.CreatedAt) }).ToListAsync(cancel);
        return [.. sheets.OrderByDescending(s => s.MadeAt).ThenByDescending(s => s.Name, StringComparer.Ordinal).Select(s => new StoredSheet(s.Name, s.Live, s.Unused))];
    }

    /// <summary>Changes a live link's name and what its calendar shows. The address stays.</summary>
    public async Task<Result<Guid>> ChangeAsync(Guid squadId, Guid playerId, Guid linkId, string name, FeedOptions options, Guid by, CancellationToken cancel = default)
    {
        if ((NameProblem(name) ?? OptionsProblem(options)) is { } invalid)
        {
            return invalid;
        }

        await using var db = await contexts.OpenAsync(cancel);
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        await db.LockSquadsAsync([squadId], cancel);
        if (await LinksOf(db, squadId, playerId).SingleOrDefaultAsync(l => l.Id == linkId, cancel) is not { } row)
        {
            return Refusal.NotFound("link");
        }

        if (row.RevokedAt is not null)
        {
            return new Problem("link.revoked", "This link was revoked and stays so. Make a new one.", "link");
        }

        if (row.Name == TypedText.Tidy(name) && row.Options == options.Code)
        {
            return linkId;
        }

        var now = clock.GetCurrentInstant();
        if (row.Options != options.Code)
        {
            await RenderAsync(db, squadId, now, cancel);
        }

        (row.Name, row.Options) = (TypedText.Tidy(name), options.Code);
        db.Note(now, by, "link.changed", squadId, Details(row));
        await db.SaveChangesAsync(cancel);
        await transaction.CommitAsync(cancel);
        return linkId;
    }

    /// <summary>The address stops working at once and for good.</summary>
    public async Task<Result<Guid>> RevokeAsync(Guid squadId, Guid playerId, Guid linkId, Guid by, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        if (await LinksOf(db, squadId, playerId).SingleOrDefaultAsync(l => l.Id == linkId, cancel) is not { } row)
        {
            return Refusal.NotFound("link");
        }

        await RevokeAsync(db, squadId, row.RevokedAt is null ? [row] : [], by, cancel);
        return linkId;
    }

    /// <summary>All live links of a player at once; says how many there were.</summary>
    public async Task<Result<int>> RevokeAllAsync(Guid squadId, Guid playerId, Guid by, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await db.Players.AnyAsync(p => p.Id == playerId && p.SquadId == squadId, cancel)
            ? await RevokeAsync(db, squadId, await LinksOf(db, squadId, playerId).Where(l => l.RevokedAt == null).ToListAsync(cancel), by, cancel)
            : Refusal.NotFound("player");
    }

    /// <summary>The links of a sheet that nobody has opened; says how many there were.</summary>
    public async Task<Result<int>> RevokeUnusedAsync(Guid squadId, string sheet, Guid by, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await RevokeAsync(db, squadId, await LiveOfSquad(db, squadId).Where(l => l.Name == sheet && l.LastPollDay == null).ToListAsync(cancel), by, cancel);
    }

    /// <summary>Looks a secret up among all clubs. Null when nobody has it.</summary>
    public async Task<FoundLink?> FindAsync(string token, CancellationToken cancel = default)
    {
        if (LinkToken.HashOf(token) is not { } hash)
        {
            return null;
        }

        await using var db = await everywhere.OpenAsync(ClubScope.Everywhere, cancel);
        return await (
            from link in db.Links
            join player in db.Players on new { link.ClubId, Id = link.PlayerId } equals new { player.ClubId, player.Id }
            where link.TokenHash == hash
            select new FoundLink(link.ClubId, link.Id, player.Id, player.SquadId, link.RevokedAt == null, OptionsOf(link.Options).Language)).SingleOrDefaultAsync(cancel);
    }

    /// <summary>Notes that a link is in use, at most once a day.</summary>
    /// <param name="day">Today in the club's zone or in UTC; only the day is kept.</param>
    public async Task TouchAsync(FoundLink link, LocalDate day, CancellationToken cancel = default)
    {
        await using var db = await everywhere.OpenAsync(ClubScope.Of(link.ClubId), cancel);
        await db.Links.Where(l => l.Id == link.LinkId && (l.LastPollDay == null || l.LastPollDay < day))
            .ExecuteUpdateAsync(set => set.SetProperty(l => l.LastPollDay, day), cancel);
    }

    private static Problem? NameProblem(string name) =>
        TypedText.LineProblem(name, LongestName, "link.name", "link's name", "link.name");

    private static Problem? OptionsProblem(FeedOptions? options) => options switch
    {
        { Sessions: false, Practices: false, Matches: false } => new Problem("link.shows-nothing", "Tick at least one of sessions, practices and matches: the calendar would stay empty.", "link.options"),
        { ReminderMinutes: { } minutes } when !FeedOptions.Reminders.Contains(minutes) => new Problem("link.reminder", "Choose one of the reminders in the list.", "link.options"),
        { Language: var language } when !Enum.IsDefined(language) => new Problem("link.language", "Choose one of the languages in the list.", "link.options"),
        _ => null,
    };

    internal static FeedOptions OptionsOf(string code) => FeedOptions.Of(code) ?? throw new InvalidOperationException($"A link has the options '{code}', which mean nothing.");

    private static async Task<FeedOptions> UsualAsync(ClubCycleDb db, Guid squadId, CancellationToken cancel)
    {
        var ages = await db.Squads.Where(s => s.Id == squadId).Select(s => s.AgeGroup).SingleAsync(cancel);
        return FeedOptions.UsualFor(AgeGroup.Find(ages) ?? throw new InvalidOperationException($"Squad {squadId} has the age group '{ages}', which there is not."));
    }

    private static (LinkRow Row, string Token) NewRow(ClubCycleDb db, Guid playerId, string name, FeedOptions options, Instant now)
    {
        var token = LinkToken.Create();
        var row = new LinkRow
        {
            ClubId = db.ClubId, Id = NewId.Create(), PlayerId = playerId, TokenHash = LinkToken.HashOf(token)!, Name = name, Options = options.Code, CreatedAt = now,
        };
        db.Links.Add(row);
        return (row, token);
    }

    private static string Details(LinkRow row) => $"{row.Id:D} {row.Options}";

    /// <summary>Has the squad's feeds rendered, if there is a plan to render. The squad is locked: a plan published meanwhile comes before or after.</summary>
    private static async Task RenderAsync(ClubCycleDb db, Guid squadId, Instant now, CancellationToken cancel)
    {
        if (await db.Revisions.AnyAsync(r => r.SquadId == squadId, cancel))
        {
            db.Outbox.Add(new OutboxRow { ClubId = db.ClubId, Id = NewId.Create(), Kind = OutboxKinds.RenderFeeds, SquadId = squadId, CreatedAt = now, NotBefore = now });
        }
    }

    private static async Task<string> FreeSheetNameAsync(ClubCycleDb db, Guid squadId, LocalDate day, CancellationToken cancel)
    {
        var name = SheetName + day.ToString("d MMM yyyy", CultureInfo.InvariantCulture);
        var taken = await db.Links.Where(l => l.Name.StartsWith(name) && db.Players.Any(p => p.Id == l.PlayerId && p.SquadId == squadId)).Select(l => l.Name).Distinct().ToListAsync(cancel);
        return taken.Count == 0 ? name : Enumerable.Range(2, taken.Count).Select(number => $"{name}, {number}").First(further => !taken.Contains(further));
    }

    private async Task<int> RevokeAsync(ClubCycleDb db, Guid squadId, List<LinkRow> live, Guid by, CancellationToken cancel)
    {
        var now = clock.GetCurrentInstant();
        foreach (var row in live)
        {
            row.RevokedAt = now;
            db.Note(now, by, "link.revoked", squadId, row.Id.ToString("D"));
        }

        await db.SaveChangesAsync(cancel);
        return live.Count;
    }

    private static IQueryable<LinkRow> LinksOf(ClubCycleDb db, Guid squadId, Guid playerId) =>
        db.Links.Where(l => l.PlayerId == playerId && db.Players.Any(p => p.Id == playerId && p.SquadId == squadId));

    private static IQueryable<LinkRow> LiveOfSquad(ClubCycleDb db, Guid squadId) =>
        db.Links.Where(l => l.RevokedAt == null && db.Players.Any(p => p.Id == l.PlayerId && p.SquadId == squadId));
}
