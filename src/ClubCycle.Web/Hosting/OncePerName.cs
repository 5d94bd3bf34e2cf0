namespace ClubCycle.Web.Hosting;

/// <summary>Refuses an address or a small form that gives one name two values: one part of a program could check the first and another use the second.</summary>
internal static class OncePerName
{
    public static async Task CheckAsync(HttpContext http, RequestDelegate next)
    {
        if (http.Request.Query.Any(given => given.Value.Count > 1) || await HasDoubledFieldAsync(http.Request))
        {
            http.Response.StatusCode = StatusCodes.Status400BadRequest;
            return;
        }

        await next(http);
    }

    /// <summary>Of forms that pages send. One that cannot be read is left to whoever reads it next, with the answer that it has for that.</summary>
    private static async Task<bool> HasDoubledFieldAsync(HttpRequest request)
    {
        if (!HttpMethods.IsPost(request.Method) || request.ContentType?.StartsWith("application/x-www-form-urlencoded", StringComparison.OrdinalIgnoreCase) is not true)
        {
            return false;
        }

        try
        {
            return (await request.ReadFormAsync(request.HttpContext.RequestAborted)).Any(field => field.Value.Count > 1);
        }
        catch (Exception broken) when (broken is InvalidDataException or BadHttpRequestException or IOException)
        {
            return false;
        }
    }
}
