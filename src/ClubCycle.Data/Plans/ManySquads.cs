namespace ClubCycle.Data.Plans;

/// <summary>Planning of many squads on all cores, away from the screen that asked.</summary>
internal static class ManySquads
{
    /// <summary>In the order of the inputs. Cancelling throws; no work goes on behind it.</summary>
    public static async Task<IReadOnlyList<TPlanned>> PlanAsync<TInput, TPlanned>(
        IReadOnlyList<TInput> inputs, Func<TInput, TPlanned> plan, IProgress<SquadsDone>? progress, CancellationToken cancel)
    {
        var planned = new TPlanned[inputs.Count];
        var done = 0;
        await Parallel.ForAsync(0, inputs.Count, new ParallelOptions { CancellationToken = cancel, MaxDegreeOfParallelism = Environment.ProcessorCount }, (i, _) =>
        {
            planned[i] = plan(inputs[i]);
            progress?.Report(new SquadsDone(Interlocked.Increment(ref done), inputs.Count));
            return ValueTask.CompletedTask;
        });
        return planned;
    }
}
