using ClubCycle.Data.FirstSteps;
using ClubCycle.Planning;
using ClubCycle.Web.Account;

namespace ClubCycle.Web.Features.FirstSteps;

/// <summary>The guide through a new club's first hour, and squads to try things on. For head coaches.</summary>
public sealed class FirstStepsActions(CurrentCoach coaches, FirstStepsStore steps, SampleStore sample)
{
    public async Task<Result<FirstStepsView>> LookAsync(CancellationToken cancel = default) =>
        (await coaches.HeadAsync(cancel)).TryGet(out var coach, out var problems)
            ? new FirstStepsView(await steps.LookAsync(coach.UserId, cancel), await sample.IsThereAsync(cancel))
            : new Result<FirstStepsView>.Failed(problems);

    /// <summary>Puts the guide away, or takes it out again.</summary>
    public async Task<Result<bool>> CloseAsync(bool closed, CancellationToken cancel = default) =>
        (await coaches.HeadAsync(cancel)).TryGet(out var coach, out var problems) ? await steps.CloseAsync(coach.UserId, closed, cancel) : new Result<bool>.Failed(problems);

    public async Task<Result<int>> AddSampleAsync(CancellationToken cancel = default) =>
        (await coaches.HeadAsync(cancel)).TryGet(out var coach, out var problems) ? await sample.AddAsync(coach.UserId, cancel) : new Result<int>.Failed(problems);

    public async Task<Result<int>> ClearSampleAsync(CancellationToken cancel = default) =>
        (await coaches.HeadAsync(cancel)).TryGet(out var coach, out var problems) ? await sample.ClearAsync(coach.UserId, cancel) : new Result<int>.Failed(problems);
}

/// <param name="Sample">The sample's squads are there.</param>
public sealed record FirstStepsView(Data.FirstSteps.FirstSteps Steps, bool Sample);
