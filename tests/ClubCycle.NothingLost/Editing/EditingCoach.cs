using System.Globalization;
using ClubCycle.Data;
using ClubCycle.Data.Edits;
using ClubCycle.Data.Fixtures;
using ClubCycle.Data.Plans;
using ClubCycle.Data.Seasons;
using ClubCycle.Planning;
using ClubCycle.Planning.Replanning;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace ClubCycle.NothingLost.Editing;

/// <summary>Looks at something, changes it, and notes what was acknowledged. One coach does one thing at a time; several do so at once.</summary>
internal sealed class EditingCoach(IServiceProvider stores, Guid me, Random random, Ledger ledger, IReadOnlyList<EditedSquad> squads)
{
    public static readonly LocalDate Week = new(2026, 4, 6);
    public static readonly IReadOnlyList<string> Slots = ["aerobic-build.easy-run.1", "aerobic-build.easy-run.2"];

    /// <summary>Nothing was lost: somebody else was first, it is gone, or it does not go so.</summary>
    private static readonly HashSet<string> Refusals =
        ["session.changed-meanwhile", "fixture.changed-meanwhile", "season.changed-meanwhile", "plan.changed-meanwhile", "plan.must-findings", "edit.changed-meanwhile", "edit.not-next", "pin.not-found"];

    private readonly Dictionary<Guid, (string Thing, string Before, string After)> _edits = [];
    private int _written;

    public int Refused { get; private set; }

    public async Task ActAsync(int acts)
    {
        for (var i = 0; i < acts; i++)
        {
            var squad = squads[random.Next(squads.Count)];
            await (random.Next(10) switch
            {
                < 4 => DecideAsync(squad),
                < 6 => ChangeMatchAsync(squad),
                6 => MoveSeasonAsync(squad.Club),
                7 => UndoOrRedoAsync(random.Next(3) == 0 ? null : squad.Id),
                8 => CloseAsync(squad),
                _ => PublishAsync(squad),
            });
        }
    }

    public static string Said(Pin? pin) => pin is null or { Date: null, Start: null, Skipped: false, Workout: null, Minutes: null, Note: null }
        ? "nothing"
        : $"{pin.Date} {pin.Start} {pin.Skipped} {pin.Workout} {pin.Minutes} {pin.Note}";

    public static string Said(StoredFixture? match) => match is null ? "nothing" : $"{match.Fixture.Date} {match.Fixture.Start} {match.Fixture.Opponent}";

    public static string Said(StoredSeason season) => season.Season.Stints[0].First.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture);

    public static string Session(EditedSquad squad, string slot) => $"session {squad.Id} {slot}";

    public static string Match(Guid id) => $"match {id}";

    public static string Season(EditedClub club) => $"season {club.Id}";

    public static string Revision(EditedSquad squad) => $"revision {squad.Id}";

    private async Task DecideAsync(EditedSquad squad)
    {
        var slot = Slots[random.Next(Slots.Count)];
        var pins = stores.GetRequiredService<PinStore>();
        var seen = (await pins.ListAsync(squad.Id)).FirstOrDefault(p => p.WeekFirst == Week && p.Slot == slot);
        await ThinkAsync();
        var mine = pins.WhoSaw(seen);
        var saved = random.Next(5) switch
        {
            0 => await mine.PinAsync(squad.Id, new Pin(Week, slot, Week.PlusDays(random.Next(7)), null), me),
            1 => await mine.SwapAsync(squad.Id, Week, slot, random.Next(2) == 0 ? null : "strength-circuit", me),
            2 => await mine.UnpinAsync(squad.Id, Week, slot, me),
            _ => await mine.EditAsync(squad.Id, new Pin(Week, slot, Week.PlusDays(random.Next(7)), new LocalTime(18, random.Next(60)), Note: Text(squad)), me),
        };
        if (Acknowledged(saved) is { } pin)
        {
            await NoteAsync(squad.Id, Session(squad, slot), Said(seen), Said(pin));
        }
    }

    private async Task ChangeMatchAsync(EditedSquad squad)
    {
        var fixtures = stores.GetRequiredService<FixtureStore>();
        var id = squad.Matches[random.Next(squad.Matches.Count)];
        if ((await fixtures.EnteredAsync(squad.Id)).Select(e => e.Match).FirstOrDefault(m => m.Id == id) is not { } seen)
        {
            return;
        }

        await ThinkAsync();
        var changed = seen with { Fixture = seen.Fixture with { Date = seen.Fixture.Date.PlusDays(random.Next(3) - 1), Start = new LocalTime(14, random.Next(60)), Opponent = Text(squad) } };
        if (Acknowledged(await fixtures.SaveAsync(squad.Id, id, changed.Fixture.Date, changed.Fixture.Start, changed.Fixture.Opponent, null, seen.Version, me)) is not null)
        {
            await NoteAsync(squad.Id, Match(id), Said(seen), Said(changed));
        }
    }

    private async Task MoveSeasonAsync(EditedClub club)
    {
        var seasons = stores.GetRequiredService<SeasonStore>();
        var seen = (await seasons.ListAsync()).Single(s => s.Id == club.Season);
        await ThinkAsync();
        var stints = APlan.Stints(random.Next(28));
        if (Acknowledged(await seasons.SaveAsync(club.Season, APlan.Before, stints, seen.Version, me)) is not null)
        {
            await NoteAsync(null, Season(club), Said(seen), stints[0].First.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture));
        }
    }

    private async Task CloseAsync(EditedSquad squad)
    {
        var day = new LocalDate(2026, 4, 20).PlusDays(random.Next(5));
        _ = Acknowledged(await stores.GetRequiredService<ClosedDayStore>().TakeAsync(squad.Id, [new Planning.Seasons.ClosedDays(day, day, $"{squad.Mark}closed")], me));
    }

    private async Task PublishAsync(EditedSquad squad)
    {
        var plans = stores.GetRequiredService<PlanStore>();
        var seen = (await plans.DraftAsync(squad.Id)).OrThrow();
        await ThinkAsync();
        var command = NewId.Create();
        if (Acknowledged(await plans.PublishAsync(squad.Id, seen.Revision, command, me, Text(squad))) is not { } revision)
        {
            return;
        }

        ledger.Acknowledge(Revision(squad), $"{seen.Revision}", $"{revision.Number}");
        if (random.Next(4) == 0 && (await plans.PublishAsync(squad.Id, seen.Revision, command, me, "")).OrThrow().Number != revision.Number)
        {
            throw new InvalidOperationException("Asking twice published twice.");
        }
    }

    private async Task UndoOrRedoAsync(Guid? squad)
    {
        var edits = stores.GetRequiredService<EditStore>();
        var state = await edits.StateAsync(squad, me);
        var redo = state.Redo is not null && random.Next(2) == 0;
        if ((redo ? state.Redo : state.Undo) is not { } next || !_edits.TryGetValue(next.Id, out var edit))
        {
            return;
        }

        await ThinkAsync();
        if (Acknowledged(redo ? await edits.RedoAsync(squad, next.Id, me) : await edits.UndoAsync(squad, next.Id, me)) is not null)
        {
            ledger.Acknowledge(edit.Thing, redo ? edit.Before : edit.After, redo ? edit.After : edit.Before);
        }
    }

    private async Task NoteAsync(Guid? squad, string thing, string seen, string written)
    {
        ledger.Acknowledge(thing, seen, written);
        if (seen != written && (await stores.GetRequiredService<EditStore>().StateAsync(squad, me)).Undo is { } edit)
        {
            _edits[edit.Id] = (thing, seen, written);
        }
    }

    private object? Acknowledged<T>(Result<T>.Failed failed)
    {
        Refused++;
        return Refusals.Contains(failed.First.Code) ? null : throw new InvalidOperationException($"{failed.First.Code}: {failed.First.Message}");
    }

    private T? Acknowledged<T>(Result<T> result)
        where T : class => result is Result<T>.Ok ok ? ok.Value : (T?)Acknowledged((Result<T>.Failed)result);

    private int? Acknowledged(Result<int> result) => result is Result<int>.Ok ok ? ok.Value : (int?)Acknowledged((Result<int>.Failed)result);

    /// <summary>Time for others to come between.</summary>
    private Task ThinkAsync() => random.Next(2) == 0 ? Task.CompletedTask : Task.Delay(random.Next(4));

    private string Text(EditedSquad squad) => $"{squad.Mark}{me.ToString("N")[^6..]}{++_written}";
}
