using ClubCycle.Planning.Weeks;

namespace ClubCycle.Planning.Loads;

/// <summary>The loads of the weeks so far, as the rule on weekly rises (R09) looks at them.</summary>
internal sealed class LoadHistory
{
    /// <summary>Below this a rise is not judged, AU.</summary>
    public const double TooLittleToJudgeAu = 300;

    /// <summary>"The loading weeks before" are three at most: the longest run that a plan has.</summary>
    public const int RunWeeks = 3;

    private const int FourWeeks = 4;

    private readonly List<double> _run = [];
    private readonly Queue<double> _lastFour = [];
    private double? _last;
    private WeekLoading _lastKind;

    /// <summary>Mean load of the last four weeks, easier ones too; null without four.</summary>
    public double? MeanOfFour => _lastFour.Count < FourWeeks ? null : _lastFour.Average();

    /// <summary>Mean load of the last loading weeks in a row, three at most; null when there are none.</summary>
    public double? MeanOfRun => _run.Count == 0 ? null : _run.Average();

    /// <summary>What next week's load is compared with, AU: last week's, or after an easier week the larger of it and the mean of the loading weeks before. Null without a past.</summary>
    public double? Reference => _last is not { } last ? null
        : _lastKind is WeekLoading.Unloading or WeekLoading.Taper && MeanOfRun is { } mean ? Math.Max(last, mean)
        : last;

    /// <summary>A week without any load counts as an easier week, whatever it was meant to be.</summary>
    public void Add(WeekLoading kind, double loadAu)
    {
        _lastFour.Enqueue(loadAu);
        if (_lastFour.Count > FourWeeks)
        {
            _lastFour.Dequeue();
        }

        kind = loadAu == 0 ? WeekLoading.Unloading : kind;
        if (kind is WeekLoading.Loading or WeekLoading.Match)
        {
            if (_lastKind is WeekLoading.Unloading or WeekLoading.Taper)
            {
                _run.Clear();
            }

            _run.Add(loadAu);
            if (_run.Count > RunWeeks)
            {
                _run.RemoveAt(0);
            }
        }

        (_last, _lastKind) = (loadAu, kind);
    }
}
