using ClubCycle.Planning;
using Microsoft.EntityFrameworkCore;

namespace ClubCycle.Data.FirstSteps;

/// <summary>What a new club has done already; told by what is there, so a step is done however it came about.</summary>
/// <param name="Adjusted">A session was moved, swapped or left out by a person.</param>
/// <param name="Coaches">Somebody besides the asker can sign in.</param>
/// <param name="Links">A player has a calendar link.</param>
/// <param name="Closed">The asker put the guide away.</param>
public sealed record FirstSteps(bool Seasons, bool Squads, bool Adjusted, bool Published, bool Coaches, bool Links, bool Closed)
{
    public bool AllDone => Seasons && Squads && Adjusted && Published && Coaches && Links;
}

/// <summary>The guide through a new club's first hour.</summary>
public sealed class FirstStepsStore(IClubDbFactory contexts)
{
    public async Task<FirstSteps> LookAsync(Guid asker, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return new FirstSteps(
            await db.Seasons.AnyAsync(cancel),
            await db.Squads.AnyAsync(cancel),
            await db.Pins.AnyAsync(cancel),
            await db.Revisions.AnyAsync(cancel),
            await db.Users.AnyAsync(u => u.ClubId == db.ClubId && u.Id != asker, cancel),
            await db.Links.AnyAsync(cancel),
            await db.Users.AnyAsync(u => u.Id == asker && u.GuideClosed, cancel));
    }

    public async Task<Result<bool>> CloseAsync(Guid asker, bool closed, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        await db.Users.Where(u => u.ClubId == db.ClubId && u.Id == asker).ExecuteUpdateAsync(user => user.SetProperty(u => u.GuideClosed, closed), cancel);
        return closed;
    }
}
