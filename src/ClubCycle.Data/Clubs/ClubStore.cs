using ClubCycle.Data.Audit;
using ClubCycle.Data.Templates;
using ClubCycle.Planning;
using ClubCycle.Planning.Players;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Clubs;

/// <summary>The club itself: its name, zone and first weekday.</summary>
public sealed class ClubStore(IDbContextFactory<ClubCycleDb> everywhere, IClubDbFactory contexts, IClock clock)
{
    public const int LongestName = 100;

    /// <summary>Whether the instance has a club yet; without one it shows its set-up page.</summary>
    public async Task<bool> AnyAsync(CancellationToken cancel = default)
    {
        await using var db = await everywhere.OpenAsync(ClubScope.Everywhere, cancel);
        return await db.Clubs.AnyAsync(cancel);
    }

    /// <summary>Every club of the instance, for work that each of them is owed.</summary>
    public async Task<IReadOnlyList<Guid>> AllIdsAsync(CancellationToken cancel = default)
    {
        await using var db = await everywhere.OpenAsync(ClubScope.Everywhere, cancel);
        return await db.Clubs.Select(c => c.ClubId).ToListAsync(cancel);
    }

    /// <summary>A new club with the built-in templates in its library. Its first head coach comes next.</summary>
    public Task<Result<Guid>> CreateAsync(string name, string timeZone, IsoDayOfWeek firstWeekday, CancellationToken cancel = default) =>
        CreateAsync(name, timeZone, firstWeekday, asksSecondFactor: false, cancel);

    public Task<Result<Guid>> CreateAsync(string name, string timeZone, IsoDayOfWeek firstWeekday, bool asksSecondFactor, CancellationToken cancel = default) =>
        CreateAsync(NewId.Create(), name, timeZone, firstWeekday, asksSecondFactor, cancel);

    internal async Task<Result<Guid>> CreateAsync(Guid id, string name, string timeZone, IsoDayOfWeek firstWeekday, bool asksSecondFactor, CancellationToken cancel)
    {
        if (Check(name, timeZone, firstWeekday) is { Count: > 0 } problems)
        {
            return new Result<Guid>.Failed(problems);
        }

        var now = clock.GetCurrentInstant();
        await using var db = await everywhere.OpenAsync(ClubScope.Of(id), cancel);
        db.Clubs.Add(new ClubRow { ClubId = id, Name = TypedText.Tidy(name), TimeZone = timeZone, FirstWeekday = firstWeekday, AsksSecondFactor = asksSecondFactor, CreatedAt = now });
        TemplateLibrary.AddBuiltIns(db, now);
        db.Note(now, null, "club.created");
        await db.SaveChangesAsync(cancel);
        return id;
    }

    /// <summary>Takes back a set-up that could not be finished: removes a club that nobody can sign in to.</summary>
    public async Task RemoveUnusedAsync(Guid id, CancellationToken cancel = default)
    {
        await using var db = await everywhere.OpenAsync(ClubScope.Of(id), cancel);
        await db.Clubs.Where(c => c.ClubId == id && !db.Users.Any(u => u.ClubId == id)).ExecuteDeleteAsync(cancel);
    }

    /// <summary>A club's name, also for somebody who is not signed in to it; empty when there is none.</summary>
    public async Task<string> NameOfAsync(Guid id, CancellationToken cancel = default)
    {
        if (id == Guid.Empty)
        {
            return "";
        }

        await using var db = await everywhere.OpenAsync(ClubScope.Of(id), cancel);
        return await db.Clubs.Select(c => c.Name).SingleOrDefaultAsync(cancel) ?? "";
    }

    /// <summary>The current scope's club.</summary>
    public async Task<Result<ClubRow>> FindAsync(CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await db.Clubs.AsNoTracking().SingleOrDefaultAsync(cancel) is { } club ? club : Refusal.NotFound("club");
    }

    /// <summary>The day that it is where the club is.</summary>
    public async Task<LocalDate> TodayAsync(CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await TodayAsync(db, clock, cancel);
    }

    internal static async Task<LocalDate> TodayAsync(ClubCycleDb db, IClock clock, CancellationToken cancel) =>
        clock.GetCurrentInstant().InZone(DateTimeZoneProviders.Tzdb[await db.Clubs.Select(c => c.TimeZone).SingleAsync(cancel)]).Date;

    public async Task<Result<int>> SaveAsync(string name, string timeZone, IsoDayOfWeek firstWeekday, int expectedVersion, Guid by, CancellationToken cancel = default)
    {
        if (Check(name, timeZone, firstWeekday) is { Count: > 0 } problems)
        {
            return new Result<int>.Failed(problems);
        }

        await using var db = await contexts.OpenAsync(cancel);
        if (await db.Clubs.SingleOrDefaultAsync(cancel) is not { } club)
        {
            return Refusal.NotFound("club");
        }

        if (club.Version != expectedVersion)
        {
            return Refusal.Meanwhile("club");
        }

        (club.Name, club.TimeZone, club.FirstWeekday) = (TypedText.Tidy(name), timeZone, firstWeekday);
        db.Note(clock.GetCurrentInstant(), by, "club.changed", details: $"{club.Name}, {timeZone}, weeks from {firstWeekday}");
        return await db.TrySaveAsync(Refusal.Meanwhile("club"), cancel) is { } problem ? problem : club.Version;
    }

    /// <summary>Below which age a guardian is asked. Links and results that are there stay.</summary>
    public async Task<Result<int>> SetGuardianAgeAsync(int age, int expectedVersion, Guid by, CancellationToken cancel = default)
    {
        if (age is < GuardianAge.Youngest or > GuardianAge.Oldest)
        {
            return new Problem("club.guardian-age", $"Guardians are asked for players below an age from {GuardianAge.Youngest} to {GuardianAge.Oldest}. Choose one of these.", "club.guardianAge");
        }

        await using var db = await contexts.OpenAsync(cancel);
        if (await db.Clubs.SingleOrDefaultAsync(cancel) is not { } club)
        {
            return Refusal.NotFound("club");
        }

        if (club.Version != expectedVersion)
        {
            return Refusal.Meanwhile("club");
        }

        club.GuardianAge = age;
        db.Note(clock.GetCurrentInstant(), by, "club.guardian-age", details: $"below {age}");
        return await db.TrySaveAsync(Refusal.Meanwhile("club"), cancel) is { } problem ? problem : club.Version;
    }

    /// <summary>Whether head coaches and welfare officers must have a second factor.</summary>
    public async Task<Result<bool>> AskSecondFactorAsync(bool asks, Guid by, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        if (await db.Clubs.SingleOrDefaultAsync(cancel) is not { } club)
        {
            return Refusal.NotFound("club");
        }

        club.AsksSecondFactor = asks;
        db.Note(clock.GetCurrentInstant(), by, asks ? "club.second-factor-asked" : "club.second-factor-not-asked");
        return await db.TrySaveAsync(Refusal.Meanwhile("club"), cancel) is { } problem ? problem : asks;
    }

    private static List<Problem> Check(string name, string timeZone, IsoDayOfWeek firstWeekday)
    {
        List<Problem> problems = [];
        if (TypedText.NameProblem(name, LongestName, "club.name", "club's name", "club.name") is { } unreadable)
        {
            problems.Add(unreadable);
        }

        if (DateTimeZoneProviders.Tzdb.GetZoneOrNull(timeZone) is null)
        {
            problems.Add(new Problem("club.unknown-time-zone", $"'{TypedText.Start(timeZone, 60)}' is no time zone. Choose one from the list, such as Europe/Lisbon.", "club.timeZone"));
        }

        if (firstWeekday is < IsoDayOfWeek.Monday or > IsoDayOfWeek.Sunday)
        {
            problems.Add(new Problem("club.first-weekday", "Say on which day the club's weeks start.", "club.firstWeekday"));
        }

        return problems;
    }
}
