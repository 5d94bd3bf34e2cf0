using ClubCycle.Planning;
using ClubCycle.Planning.PlanFiles;

namespace ClubCycle.Web.Api;

/// <summary>A plan with the request it answers: the same for the command and the interface.</summary>
internal sealed record PlanAnswer(PlanRequest Request, SquadPlan Plan)
{
    public static Result<PlanAnswer> To(string json) => PlanFile.ReadRequest(json) switch
    {
        Result<PlanRequest>.Ok(var request) => AnnualPlanner.Plan(request) switch
        {
            Result<SquadPlan>.Ok(var plan) => new PlanAnswer(request, plan),
            Result<SquadPlan>.Failed failed => new Result<PlanAnswer>.Failed(failed.Problems),
            var other => throw new InvalidOperationException($"Unknown result {other.GetType()}"),
        },
        Result<PlanRequest>.Failed failed => new Result<PlanAnswer>.Failed(failed.Problems),
        var other => throw new InvalidOperationException($"Unknown result {other.GetType()}"),
    };
}
