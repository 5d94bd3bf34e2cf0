using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Templates;

namespace ClubCycle.Web.Features.Templates;

/// <summary>A template while it is being changed. A deep copy: the stored one never changes.</summary>
public sealed class TemplateForm
{
    private readonly Template _from;

    private TemplateForm(Template from) => _from = from;

    public string Title { get; set; } = "";
    public List<ChainForm> Chains { get; private init; } = [];
    public List<MixForm> Mixes { get; private init; } = [];
    public int UnloadEvery { get; set; }
    public double UnloadPercent { get; set; }
    public double FirstWeekPercent { get; set; }
    public double RisePercent { get; set; }

    public static TemplateForm Of(Template template) => new(template)
    {
        Title = template.Title,
        UnloadEvery = template.Loading.UnloadEvery,
        UnloadPercent = Percent(template.Loading.UnloadVolume),
        FirstWeekPercent = Percent(template.Loading.FirstWeekVolume),
        RisePercent = Percent(template.Loading.WeeklyRise),
        Chains =
        [
            .. template.Chains.Select(c => new ChainForm
            {
                Name = c.Name, MinWeeks = c.MinWeeks, MaxWeeks = c.MaxWeeks,
                Phases = [.. c.Phases.Select(p => new ChainPhaseForm { Kind = p.Kind, From = p, MinWeeks = p.MinWeeks, SharePercent = Percent(p.IdealShare), MaxWeeks = p.MaxWeeks, FixedWeeks = p.FixedWeeks })],
            }),
        ],
        Mixes =
        [
            .. template.Mixes.Select(m => new MixForm
            {
                From = m, ActiveDaysAtMost = m.ActiveDaysAtMost, HoursBetweenHard = m.HoursBetweenHard, Pairs = m.SessionsPerContactDay > 0,
                Slots = [.. m.Slots.Select(s => new SlotForm { From = s, Workouts = [.. s.Workouts], Minutes = s.Minutes })],
            }),
        ],
    };

    public Template ToTemplate() => _from with
    {
        Title = Title,
        Chains = [.. Chains.Select(c => new Chain(c.Name, c.MinWeeks, c.MaxWeeks, [.. c.Phases.Select(p => new ChainPhase(p.Kind, p.MinWeeks, Share(p.SharePercent, p.From.IdealShare), p.MaxWeeks, p.FixedWeeks))]))],
        Mixes = [.. Mixes.Select(m => m.From with { ActiveDaysAtMost = m.ActiveDaysAtMost, HoursBetweenHard = m.HoursBetweenHard, SessionsPerContactDay = m.Pairs ? 1 : 0, Slots = [.. m.Slots.Select(s => s.From with { Workouts = [.. s.Workouts], Minutes = s.Minutes })] })],
        Loading = new LoadingPattern(
            UnloadEvery, Share(UnloadPercent, _from.Loading.UnloadVolume), Share(FirstWeekPercent, _from.Loading.FirstWeekVolume), Share(RisePercent, _from.Loading.WeeklyRise)),
    };

    private static double Percent(double share) => Math.Round(share * 100, 2);

    // A share that nobody touched stays what it was, with all its digits.
    private static double Share(double percent, double from) => percent == Percent(from) ? from : percent / 100;
}

public sealed class ChainForm
{
    public string Name { get; init; } = "";
    public int MinWeeks { get; set; }
    public int MaxWeeks { get; set; }
    public List<ChainPhaseForm> Phases { get; init; } = [];

    /// <summary>Adds a phase at the end; its lengths are a start to change.</summary>
    public void Add(PhaseKind kind)
    {
        var phase = new ChainPhase(kind, 1, 0.2, 8);
        Phases.Add(new ChainPhaseForm { Kind = kind, From = phase, MinWeeks = phase.MinWeeks, SharePercent = phase.IdealShare * 100, MaxWeeks = phase.MaxWeeks });
    }

    public void Up(ChainPhaseForm phase)
    {
        var index = Phases.IndexOf(phase);
        if (index > 0)
        {
            (Phases[index - 1], Phases[index]) = (Phases[index], Phases[index - 1]);
        }
    }
}

public sealed class ChainPhaseForm
{
    public required ChainPhase From { get; init; }
    public PhaseKind Kind { get; init; }
    public int MinWeeks { get; set; }
    public double SharePercent { get; set; }
    public int MaxWeeks { get; set; }
    public int? FixedWeeks { get; set; }
}

public sealed class MixForm
{
    public required WeeklyMix From { get; init; }
    public int ActiveDaysAtMost { get; set; }
    public int HoursBetweenHard { get; set; }

    /// <summary>A session may share a day with a practice.</summary>
    public bool Pairs { get; set; }
    public List<SlotForm> Slots { get; init; } = [];

    /// <summary>Adds a slot with a name of its own, least valuable.</summary>
    public void Add(string workout)
    {
        var number = 1;
        while (Slots.Any(s => s.From.Name == $"{workout}.{number}"))
        {
            number++;
        }

        Slots.Add(new SlotForm { From = new Slot($"{workout}.{number}", [workout], 30), Workouts = [workout], Minutes = 30 });
    }

    public void Up(SlotForm slot)
    {
        var index = Slots.IndexOf(slot);
        if (index > 0)
        {
            (Slots[index - 1], Slots[index]) = (Slots[index], Slots[index - 1]);
        }
    }
}

public sealed class SlotForm
{
    public required Slot From { get; init; }
    public List<string> Workouts { get; init; } = [];
    public int Minutes { get; set; }
}
