using ClubCycle.Data;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Components.Server.Circuits;

namespace ClubCycle.Web.Account;

/// <summary>Tells the data layer which club a request or an open page belongs to.</summary>
internal static class ClubOfScope
{
    public static void UseClubOfRequest(this IApplicationBuilder app) => app.Use((http, next) =>
    {
        if (CurrentCoach.IdOf(http.User, CoachClaims.Club) is { } club)
        {
            http.RequestServices.GetRequiredService<CurrentClub>().Use(club);
        }

        return next(http);
    });

    internal sealed class OfCircuit(AuthenticationStateProvider state, CurrentClub current) : CircuitHandler
    {
        public override async Task OnCircuitOpenedAsync(Circuit circuit, CancellationToken cancellationToken)
        {
            if (CurrentCoach.IdOf((await state.GetAuthenticationStateAsync()).User, CoachClaims.Club) is { } club)
            {
                current.Use(club);
            }
        }
    }
}
