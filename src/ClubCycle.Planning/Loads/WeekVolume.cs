using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Templates;
using ClubCycle.Planning.Weeks;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Loads;

/// <summary>A session that has its place and now gets its minutes.</summary>
/// <param name="Minutes">Of a full loading week.</param>
/// <param name="InsidePractice">Part of the practice's load.</param>
/// <param name="Fixed">A person fixed it: it is never left out.</param>
/// <param name="Given">A person gave the minutes: they neither shrink nor leave.</param>
internal readonly record struct SessionVolume(Workout Workout, int Minutes, bool InsidePractice, bool Fixed, bool Given = false)
{
    /// <summary>Planned effort that counts for the week, CR10.</summary>
    public int Effort => InsidePractice ? 0 : Workout.Effort;
}

/// <summary>How much each week holds: phase waves, unloading, taper, return after time off (R09, R13, R19, R46).</summary>
internal sealed class WeekVolume(LoadingPattern pattern, LoadHistory history)
{
    /// <summary>No session shrinks below this share of its full minutes to keep a rise small; below it a session is not worth the way to it.</summary>
    private const double SmallestShare = 0.5;
    private const double SmallestEasyWeekShare = 0.3;

    /// <summary>Warm-up, something worth it, cool-down: minutes.</summary>
    private const int Shortest = 15;
    private const int ShortestHard = 25;
    private const int ShortestTaper = 20;

    /// <summary>The last week before matches has about half of the mean of the four weeks before (R46: 40 to 59 %).</summary>
    private const double TaperShare = 0.5;
    private const double FirstEasyWeekShare = 0.7;

    /// <summary>A taper keeps four fifths of the sessions, practices counted (R46).</summary>
    private const double LeftOutInTaperAtMost = 0.2;

    /// <summary>So many weeks of a stint keep to the largest rise; after them the matches alone decide.</summary>
    private const int WeeksIntoStint = 8;

    /// <summary>Minutes for each session; 0 leaves it out.</summary>
    /// <param name="sessions">Those that have a place, most valuable first.</param>
    /// <param name="asked">Sessions that the mix asks for, also those without a place.</param>
    /// <param name="weeksBack">Weeks in training again before this one after two weeks or more without; null when there was no such time.</param>
    /// <param name="usualMinutes">Of all sessions that the mix asks for in a full week.</param>
    public int[] Minutes(CycleWeek week, WeekLoading loading, IReadOnlyList<Contact> contacts, IReadOnlyList<SessionVolume> sessions, int asked, int? weeksBack, double usualMinutes)
    {
        var full = new int[sessions.Count];
        var efforts = new int[sessions.Count];
        var least = new int[sessions.Count];
        double fullAu = 0;
        double givenAu = 0;
        for (var i = 0; i < full.Length; i++)
        {
            (full[i], efforts[i]) = (sessions[i].Minutes, sessions[i].Effort);
            least[i] = sessions[i].Given ? full[i] : ShortestOf(sessions[i].Workout, loading);
            fullAu += full[i] * efforts[i];
            givenAu += sessions[i].Given ? full[i] * efforts[i] : 0;
        }

        double contactAu = 0;
        foreach (var contact in contacts)
        {
            contactAu += contact.LoadAu;
        }

        var missing = asked - sessions.Count;

        var returning = weeksBack is { } back && back < RuleLimits.ReturnShares.Count ? RuleLimits.ReturnShares[back] : 1;
        var builds = LoadingWave.Builds(week.Phase);
        int[] minutes = [];
        if (builds && loading == WeekLoading.Taper && history.MeanOfFour is { } four and >= RuleLimits.TaperTooLittleAu)
        {
            minutes = WeekMinutes.Fill(full, efforts, least, SmallestEasyWeekShare, Math.Min((TaperShare * four) - contactAu, fullAu));
            LeaveOut(minutes, sessions, (int)(LeftOutInTaperAtMost * (asked + contacts.Count)) - missing, () => contactAu + Au() > RuleLimits.TaperMost * four);
        }
        else if (builds && loading != WeekLoading.Loading && history.MeanOfRun is { } mean)
        {
            minutes = WeekMinutes.Fill(full, efforts, least, SmallestEasyWeekShare, Math.Min((pattern.UnloadVolume * mean) - contactAu, Share(pattern.UnloadVolume)));

            // Sessions do not shrink for ever: where practices hold much of the load, the least valuable sessions are left out instead.
            LeaveOut(minutes, sessions, contactAu > 0 && contactAu <= RuleLimits.UnloadingMost * mean ? sessions.Count : (asked / 2) - missing, () => contactAu + Au() > RuleLimits.UnloadingMost * mean);
        }
        else
        {
            var wanted = builds ? pattern.FirstWeekVolume * Math.Pow(1 + pattern.WeeklyRise, week.WeekInPhase - 1)
                : week.WeekInPhase == 1 && week.Phase != PhaseKind.InSeason ? FirstEasyWeekShare
                : 1;
            var target = Share(Math.Min(wanted, returning));

            // In season the matches decide; only the way into a stint is made gentle.
            var rises = builds || week.Phase == PhaseKind.Break || (week.Phase == PhaseKind.InSeason && week.WeekInPhase <= WeeksIntoStint);
            var most = rises && history.Reference is { } reference and >= LoadHistory.TooLittleToJudgeAu ? RuleLimits.RiseWarned * reference : double.MaxValue;
            minutes = WeekMinutes.Fill(full, efforts, least, Math.Min(SmallestShare, returning), Math.Min(target, most - contactAu));
        }

        if (returning < 1)
        {
            LeaveOut(minutes, sessions, sessions.Count - 1, () => OwnMinutes() > returning * usualMinutes);
        }

        return minutes;

        // What a coach gave counts whole; the waves are for the others.
        double Share(double share) => ((fullAu - givenAu) * share) + givenAu;

        int Au()
        {
            var au = 0;
            for (var i = 0; i < minutes.Length; i++)
            {
                au += minutes[i] * efforts[i];
            }

            return au;
        }

        int OwnMinutes()
        {
            var own = 0;
            for (var i = 0; i < minutes.Length; i++)
            {
                own += sessions[i].InsidePractice ? 0 : minutes[i];
            }

            return own;
        }
    }

    private static int ShortestOf(Workout workout, WeekLoading loading)
    {
        var shortest = workout.Hardness == Hardness.Hard ? ShortestHard : Shortest;
        return loading == WeekLoading.Taper ? Math.Min(ShortestTaper, shortest) : shortest;
    }

    /// <summary>Below this a session of so many full minutes does not shrink to keep a rise small or a week easy.</summary>
    internal static int ShortestMinutes(Workout workout, WeekLoading loading, int full)
    {
        var share = loading is WeekLoading.Unloading or WeekLoading.Taper ? SmallestEasyWeekShare : SmallestShare;
        return Math.Min(full, Math.Max(ShortestOf(workout, loading), (int)(full * share / WeekMinutes.Step) * WeekMinutes.Step));
    }

    /// <summary>Leaves out the least valuable sessions while the week holds too much.</summary>
    private static void LeaveOut(int[] minutes, IReadOnlyList<SessionVolume> sessions, int atMost, Func<bool> tooMuch)
    {
        for (var last = minutes.Length - 1; last >= 0 && atMost > 0 && tooMuch(); last--)
        {
            if (sessions[last] is { Fixed: false, Given: false, Effort: > 0 })
            {
                minutes[last] = 0;
                atMost--;
            }
        }
    }
}
