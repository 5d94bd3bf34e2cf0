using System.Diagnostics;
using System.Diagnostics.Metrics;

namespace ClubCycle.Data.Telemetry;

/// <summary>What the program counts of itself. Costs next to nothing while nobody listens; names neither club nor person.</summary>
public static class ClubMeter
{
    public const string Name = "ClubCycle";

    private static readonly Meter Meter = new(Name);
    private static readonly Counter<long> Answers = Meter.CreateCounter<long>("clubcycle.feed.answers", "{answer}", "Answers to calendars that poll, by status");
    private static readonly Histogram<double> Publishing = Meter.CreateHistogram<double>("clubcycle.publish.duration", "s", "Time to publish the plans of one command");

    public static void FeedAnswered(int status) => Answers.Add(1, new KeyValuePair<string, object?>("http.response.status_code", status));

    /// <summary>Seconds since the last backup, as often as somebody collects.</summary>
    /// <param name="age">Null while it is not known.</param>
    public static void TellBackupAge(Func<double?> age) =>
        Meter.CreateObservableGauge("clubcycle.backup.age", () => age() is { } seconds ? [new Measurement<double>(seconds)] : Array.Empty<Measurement<double>>(), "s", "Time since the last backup");

    /// <summary>Measures until it is disposed.</summary>
    internal static PublishTime Publish() => new(Stopwatch.GetTimestamp());

    internal readonly record struct PublishTime(long Start) : IDisposable
    {
        public void Dispose() => Publishing.Record(Stopwatch.GetElapsedTime(Start).TotalSeconds);
    }
}
