namespace ClubCycle.Planning.Loads;

/// <summary>Gives a week's sessions their minutes so that the week's load comes close to a target from below.</summary>
internal static class WeekMinutes
{
    public const int Step = 5;

    /// <summary>Minutes for each slot, in steps of five.</summary>
    /// <param name="full">Minutes of a full loading week, by slot.</param>
    /// <param name="efforts">Planned effort by slot, CR10.</param>
    /// <param name="least">Shortest useful length by slot, minutes.</param>
    /// <param name="floor">No session gets less than this share of its full minutes, rounded down to a step.</param>
    /// <param name="targetAu">Load of these sessions together that should not be passed, AU.</param>
    public static int[] Fill(IReadOnlyList<int> full, IReadOnlyList<int> efforts, IReadOnlyList<int> least, double floor, double targetAu)
    {
        var minutes = new int[full.Count];
        var load = 0;
        for (var i = 0; i < full.Count; i++)
        {
            minutes[i] = Math.Min(full[i], Math.Max(least[i], (int)Math.Floor(full[i] * floor / Step) * Step));
            load += minutes[i] * efforts[i];
        }

        while (true)
        {
            var next = -1;
            for (var i = 0; i < full.Count; i++)
            {
                var step = Math.Min(Step, full[i] - minutes[i]);
                if (step > 0 && load + (step * efforts[i]) <= targetAu && (next < 0 || minutes[i] * full[next] < minutes[next] * full[i]))
                {
                    next = i;
                }
            }

            if (next < 0)
            {
                return minutes;
            }

            var add = Math.Min(Step, full[next] - minutes[next]);
            minutes[next] += add;
            load += add * efforts[next];
        }
    }
}
