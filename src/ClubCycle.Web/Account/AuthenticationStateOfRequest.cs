using Microsoft.AspNetCore.Components.Authorization;

namespace ClubCycle.Web.Account;

/// <summary>Gives plain endpoints the same way to ask who is signed in as components have.</summary>
internal static class AuthenticationStateOfRequest
{
    public static void UseAuthenticationStateOfRequest(this IApplicationBuilder app) => app.Use((http, next) =>
    {
        if (http.RequestServices.GetService<AuthenticationStateProvider>() is IHostEnvironmentAuthenticationStateProvider state)
        {
            state.SetAuthenticationState(Task.FromResult(new AuthenticationState(http.User)));
        }

        return next(http);
    });
}
