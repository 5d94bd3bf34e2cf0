namespace ClubCycle.Web.Account;

/// <summary>Until there is a club, people who open a page are led to the set-up page.</summary>
internal static class SetupRedirect
{
    public static void UseSetupRedirect(this IApplicationBuilder app) => app.Use(async (http, next) =>
    {
        if (IsPage(http.Request) && !await http.RequestServices.GetRequiredService<Setup>().IsDoneAsync(http.RequestAborted))
        {
            http.Response.Redirect(AccountEndpoints.SetupPath);
            return;
        }

        await next(http);
    });

    private static bool IsPage(HttpRequest request) =>
        HttpMethods.IsGet(request.Method)
        && (request.Path == "/" || request.Path == AccountEndpoints.SignInPath);
}
