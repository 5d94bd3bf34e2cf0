using ClubCycle.Planning.Squads;
using NodaTime;

namespace ClubCycle.Web.Features.Squads;

/// <summary>A squad while it is being typed.</summary>
public sealed class SquadForm
{
    public Guid Key { get; init; }
    public string Name { get; set; } = "";
    public string AgeGroup { get; set; } = Planning.Squads.AgeGroup.Senior.Name;
    public TrainingAge TrainingAge { get; set; } = TrainingAge.Some;
    public IsoDayOfWeek MatchDay { get; set; } = IsoDayOfWeek.Saturday;
    public LocalTime? MatchStart { get; set; } = Squad.UsualMatchStart;
    public List<PracticeForm> Practices { get; init; } = [];
    public List<WindowForm> Windows { get; init; } = [];

    public static SquadForm Of(Squad squad) => new()
    {
        Key = squad.Key,
        Name = squad.Name,
        AgeGroup = squad.AgeGroup.Name,
        TrainingAge = squad.TrainingAge,
        MatchDay = squad.MatchDay,
        MatchStart = squad.MatchStart,
        Practices = [.. squad.Practices.Select(p => new PracticeForm { Day = p.Day, Start = p.Start, Minutes = p.Minutes, Phases = p.Phases, Place = p.Place ?? "" })],
        Windows = [.. squad.Windows.SelectMany(w => w.Days.Select(d => new WindowForm { Day = d, From = w.From, To = w.To }))],
    };

    public Squad ToSquad() => new(
        Key, Name, Planning.Squads.AgeGroup.Find(AgeGroup) ?? Planning.Squads.AgeGroup.Senior, TrainingAge,
        [.. Practices.Select(p => new Practice(p.Day, p.Start ?? new LocalTime(19, 0), p.Minutes, p.Phases, string.IsNullOrWhiteSpace(p.Place) ? null : p.Place.Trim()))], MatchDay, MatchStart,
        [.. Windows.Select(w => new TimeWindow([w.Day], w.From ?? new LocalTime(18, 0), w.To ?? new LocalTime(21, 0)))]);
}

/// <summary>A practice night while it is being typed.</summary>
public sealed class PracticeForm
{
    public IsoDayOfWeek Day { get; set; } = IsoDayOfWeek.Tuesday;
    public LocalTime? Start { get; set; } = new LocalTime(19, 0);
    public int Minutes { get; set; } = 90;
    public IReadOnlyList<Planning.Phases.PhaseKind> Phases { get; set; } = Practice.UsualPhases;
    public string Place { get; set; } = "";
}

/// <summary>Times on one weekday while they are being typed.</summary>
public sealed class WindowForm
{
    public IsoDayOfWeek Day { get; set; } = IsoDayOfWeek.Monday;
    public LocalTime? From { get; set; } = new LocalTime(18, 0);
    public LocalTime? To { get; set; } = new LocalTime(21, 0);
}
