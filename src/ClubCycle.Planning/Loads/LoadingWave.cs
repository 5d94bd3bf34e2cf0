using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Templates;
using ClubCycle.Planning.Weeks;

namespace ClubCycle.Planning.Loads;

/// <summary>Which weeks load, unload and taper.</summary>
internal static class LoadingWave
{
    /// <summary>Every n-th building week unloads: the template's n, but 3 for under-16s and for players new to training (R13).</summary>
    public static int UnloadEvery(Template template, Squad squad) =>
        squad.AgeGroup.YoungestAge < 16 || squad.TrainingAge == TrainingAge.New ? Math.Min(3, template.Loading.UnloadEvery) : template.Loading.UnloadEvery;

    public static bool Builds(PhaseKind phase) => phase is PhaseKind.AerobicBuild or PhaseKind.Mixed or PhaseKind.PreSeason;

    /// <summary>One entry a week. In-season weeks are <see cref="WeekLoading.Loading"/> here; a match turns them into match weeks later.</summary>
    /// <remarks>
    /// The count runs on through neighbouring building phases, so that a change of phase never makes a run too long. The last pre-season week before matches
    /// tapers; an unloading week that would stand right before it comes a week earlier. A closed week is rest enough: the count starts again after it.
    /// </remarks>
    public static IReadOnlyList<WeekLoading> Of(IReadOnlyList<CycleWeek> weeks, int unloadEvery, Func<CycleWeek, bool> closed)
    {
        var wave = Enumerable.Repeat(WeekLoading.Loading, weeks.Count).ToArray();
        for (var i = 0; i < weeks.Count;)
        {
            if (!Builds(weeks[i].Phase) || closed(weeks[i]))
            {
                i++;
                continue;
            }

            var from = i;
            while (i < weeks.Count && Builds(weeks[i].Phase) && !closed(weeks[i]))
            {
                i++;
            }

            var tapers = weeks[i - 1].Phase == PhaseKind.PreSeason && i - from > 1 && !(i < weeks.Count && Builds(weeks[i].Phase));
            var building = tapers ? i - 1 : i;
            for (var w = from + unloadEvery - 1; w < building; w += unloadEvery)
            {
                var early = w == building - 1 && w - 1 > from && tapers;
                wave[early ? w - 1 : w] = WeekLoading.Unloading;
            }

            if (tapers)
            {
                wave[i - 1] = WeekLoading.Taper;
            }
        }

        return wave;
    }
}
