using System.Reflection;
using ClubCycle.Data.Demo;
using ClubCycle.Data.Fixtures;
using ClubCycle.Data.Plans;
using ClubCycle.Planning;
using ClubCycle.Planning.Feeds;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Templates;
using NodaTime;

namespace ClubCycle.Web.Tests.Feeds;

/// <summary>A squad that publishes again and again, with the stamps its database would hold.</summary>
internal sealed class PublishedSquad(PlanRequest request, SquadPlan plan)
{
    private readonly Dictionary<Guid, SessionRow> _rows = [];
    private int _revision;

    public PlanRequest Request => request;

    public SquadPlan Plan { get; private set; } = plan;

    /// <summary>Noon of the cycle's first day, as a club does that plans in time.</summary>
    public Instant Now { get; set; } = request.Season.Cycle.Start.At(LocalTime.Noon).InZoneLeniently(request.Zone).ToInstant();

    public static PublishedSquad Of(PlanRequest request) => new(request, AnnualPlanner.Plan(request).OrThrow());

    public PublishedPlan Publish(IReadOnlyList<PlannedSession>? sessions = null)
    {
        Plan = Plan with { Sessions = sessions ?? Plan.Sessions };
        var today = Now.InZone(request.Zone).Date;
        var uids = Plan.Sessions.Select(s => s.Uid).ToHashSet();
        foreach (var row in SessionRows.Changed(Guid.Empty, request.Squad.Key, Plan.Sessions, _rows.Values.Where(r => r.Date >= today || uids.Contains(r.Uid)).ToList(), Now).ToList())
        {
            _rows[row.Uid] = row;
        }

        var since = Now - PlanStore.CancelledIsToldFor;
        return new PublishedPlan(
            request.Squad.Key, request.Squad.Name, "Sandhaven", request.Zone, request.FirstWeekday, ++_revision, Now, Plan,
            _rows.Values.Where(r => r.CancelledAt is null).ToDictionary(r => r.Uid, Stamp),
            [.. _rows.Values.Where(r => r.CancelledAt > since).OrderBy(r => r.Uid).Select(r => new CancelledSession(r.Uid, r.Date, r.Start, r.Minutes, r.Title, r.Kind, Stamp(r), r.Place))]);
    }

    /// <summary>The demo club's squads, at home and away.</summary>
    public static IReadOnlyList<PlanRequest> Demo { get; } =
    [
        .. DemoSquads.All.Select(demo =>
        {
            var stints = demo.Stints ?? DemoSquads.ClubStints;
            return RequestOf(demo.Squad, "Europe/Lisbon", stints[^1].In(2025).Last, [.. stints.Select(s => s.In(2026))]);
        }),
    ];

    /// <summary>Seasons of two, three and four months, with and without a break, one of the south and one with an indoor winter, each in a zone of its own.</summary>
    public static IReadOnlyList<PlanRequest> Seasons { get; } =
    [
        RequestOf(Senior("Two months"), "Europe/Dublin", new(2026, 5, 31), new Stint(new(2027, 4, 1), new(2027, 5, 31))),
        RequestOf(Senior("Three months"), "Africa/Casablanca", new(2025, 11, 30), new Stint(new(2026, 9, 1), new(2026, 11, 30))),
        RequestOf(Senior("Four months, with a break"), "Asia/Kolkata", new(2026, 2, 28), new Stint(new(2026, 10, 1), new(2026, 11, 30)), new Stint(new(2027, 1, 1), new(2027, 2, 28))),
        RequestOf(Senior("Four months"), "Africa/Cairo", new(2026, 3, 31), new Stint(new(2026, 11, 15), new(2027, 3, 15))),
        RequestOf(Senior("South, with a break"), "Pacific/Auckland", new(2026, 9, 15), new Stint(new(2027, 4, 1), new(2027, 6, 30)), new Stint(new(2027, 8, 1), new(2027, 9, 15))),
        RequestOf(Senior("Outdoor, indoor, outdoor"), "Europe/London", new(2026, 6, 30), new Stint(new(2026, 9, 1), new(2026, 11, 30)), new Stint(new(2026, 12, 1), new(2027, 2, 28)), new Stint(new(2027, 3, 1), new(2027, 6, 30))),
    ];

    /// <summary>Every combination a link can ask for. An option that comes new joins by itself when it is a yes or no or one of a list.</summary>
    public static IReadOnlyList<FeedOptions> AllOptions { get; } = [.. Combinations(Options).Select(OptionsOf)];

    /// <summary>What links of the squad ask for: what is usual, that with any one option otherwise, and what a feed is without options.</summary>
    public static IReadOnlyList<FeedOptions> OptionsInUse(AgeGroup ages)
    {
        var usual = ValuesOf(FeedOptions.UsualFor(ages));
        return
        [
            .. usual.SelectMany((_, at) => ValuesFor(Options[at]).Select(other => OptionsOf(usual.Select((value, n) => n == at ? other : value))))
                .Append(new FeedOptions()).Distinct(),
        ];
    }

    private static ParameterInfo[] Options => typeof(FeedOptions).GetConstructors().Single(c => c.GetParameters().Length > 1).GetParameters();

    private static FeedOptions OptionsOf(IEnumerable<object?> values) => (FeedOptions)Activator.CreateInstance(typeof(FeedOptions), [.. values])!;

    private static object?[] ValuesOf(FeedOptions options) => [.. Options.Select(option => typeof(FeedOptions).GetProperty(option.Name!)!.GetValue(options))];

    private static object?[] ValuesFor(ParameterInfo option) =>
        option.ParameterType == typeof(bool) ? [false, true]
        : option.ParameterType.IsEnum ? [.. Enum.GetValues(option.ParameterType)]
        : option.Name == nameof(FeedOptions.ReminderMinutes) ? [null, .. FeedOptions.Reminders]
        : throw new InvalidOperationException($"Say here which values {option.Name} can have.");

    private static IEnumerable<IEnumerable<object?>> Combinations(IEnumerable<ParameterInfo> options) =>
        options.Aggregate((IEnumerable<IEnumerable<object?>>)[[]], (all, option) => all.SelectMany(one => ValuesFor(option).Select(one.Append)));

    private static PlanRequest RequestOf(Squad squad, string zone, LocalDate previousLastDay, params IReadOnlyList<Stint> stints)
    {
        var season = Season.Create(previousLastDay, stints).OrThrow();
        var matches = UsualMatches.Of(squad.Key, squad.MatchDay, season, [])
            .Select((match, i) => match with { Opponent = DemoSquads.Opponents[i % DemoSquads.Opponents.Count], Place = i % 2 == 0 ? "Sandhaven, pitch 1; north" : "Marrowby \\ שדה 🏑" });
        var placed = squad with { Practices = [.. squad.Practices.Select(p => p with { Place = $"Sandhaven, {p.Day}" })] };
        return new PlanRequest(DateTimeZoneProviders.Tzdb[zone], IsoDayOfWeek.Monday, placed, season, [.. matches], [], BuiltInTemplates.For(squad.AgeGroup));
    }

    private static Squad Senior(string name) => new(
        NamedId.From("test", name), name, AgeGroup.Senior, TrainingAge.Some,
        [new Practice(IsoDayOfWeek.Tuesday, new LocalTime(19, 30), 90, Practice.UsualPhases), new Practice(IsoDayOfWeek.Thursday, new LocalTime(19, 30), 90, Practice.UsualPhases)],
        IsoDayOfWeek.Saturday, new LocalTime(14, 0), []);

    private static SessionStamp Stamp(SessionRow row) => new(row.Sequence, row.ChangedAt);
}

/// <summary>What coaches do to a published year.</summary>
internal static class RandomEdits
{
    private static readonly string?[] Places = [null, "Hall", "Pitch 2, south; left \\ door", "ملعب الشمال", "🏑 ground"];

    public static IReadOnlyList<PlannedSession> Edit(this Random random, IReadOnlyList<PlannedSession> sessions, IReadOnlyList<PlannedSession> all, LocalDate today)
    {
        var edited = sessions.ToList();
        for (var n = random.Next(0, 5); n > 0; n--)
        {
            var ahead = edited.FindAll(s => s.Date >= today);
            if (ahead.Count == 0)
            {
                break;
            }

            var one = ahead[random.Next(ahead.Count)];
            var at = edited.IndexOf(one);
            switch (random.Next(9))
            {
                case 0:
                    edited[at] = one with { Date = LocalDate.Max(today, one.Date.PlusDays(random.Next(-3, 4))) };
                    break;
                case 1:
                    edited[at] = one with { Start = new LocalTime(random.Next(7, 22), 15 * random.Next(4)) };
                    break;
                case 2:
                    edited[at] = one with { Minutes = 15 * random.Next(1, 7) };
                    break;
                case 3:
                    edited[at] = one with { Title = one.Title + (random.Next(2) == 0 ? "" : " 🏑, changed; \\") };
                    break;
                case 4:
                    edited[at] = one with { Place = Places[random.Next(Places.Length)] };
                    break;
                case 5:
                    edited[at] = one with { Note = random.Next(2) == 0 ? null : "Bring a mat.\nIndoors." };
                    break;
                case 6:
                    edited[at] = one with { Steps = [], PlannedEffort = 3 };
                    break;
                case 7:
                    edited.RemoveAt(at);
                    break;
                default:
                    // Back again, or into the plan for the first time.
                    if (all.Where(s => s.Date >= today && edited.All(e => e.Uid != s.Uid)).ToList() is { Count: > 0 } gone)
                    {
                        edited.Add(gone[random.Next(gone.Count)]);
                    }

                    break;
            }
        }

        return edited;
    }
}
