namespace ClubCycle.Planning.PlanFiles;

/// <summary>The JSON that goes into and comes out of planning one squad. Dates ISO 8601, times local to the club, every number with its unit in its name.</summary>
public static class PlanFile
{
    /// <summary>A request that can be planned, or every problem with its place. Never throws for any text.</summary>
    public static Result<PlanRequest> ReadRequest(string json) => JsonText.Read(json, RequestFile.Read);

    /// <summary>A plan that was written by <see cref="WritePlan"/>.</summary>
    public static Result<SquadPlan> ReadPlan(string json) => JsonText.Read(json, (root, _) => PlanReader.Read(root));

    public static string WriteRequest(PlanRequest request) => JsonText.Write(json => RequestFile.Write(json, request));

    /// <summary>The same plan always gives the same bytes.</summary>
    public static string WritePlan(SquadPlan plan) => JsonText.Write(json => PlanWriter.Write(json, plan));

    public static string WriteProblems(IReadOnlyList<Problem> problems) => JsonText.Write(json =>
    {
        json.WriteStartObject();
        json.WriteStartArray("problems");
        foreach (var problem in problems)
        {
            json.WriteStartObject();
            json.WriteString("code", problem.Code);
            json.WriteString("at", problem.At);
            json.WriteString("message", problem.Message);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    });
}
