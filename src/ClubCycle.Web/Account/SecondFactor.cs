using ClubCycle.Data.Accounts;
using ClubCycle.Data.Audit;
using ClubCycle.Planning;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;

namespace ClubCycle.Web.Account;

/// <summary>A code of an authenticator app beside the password: turned on and off by its owner, with the password and a code each time.</summary>
internal static class SecondFactor
{
    public const string Path = "/account/second-factor";
    public const string On = "on";
    public const string Off = "off";
    public const string Renew = "renew";

    public static void MapSecondFactor(this IEndpointRouteBuilder app)
    {
        app.MapGet(Path, ShowAsync);
        app.MapPost(Path, ChangeAsync).RequireRateLimiting(SignInLimit.Name);
    }

    /// <summary>The six digits of a code, however they are grouped; null for anything else.</summary>
    public static string? Digits(string code)
    {
        var tight = string.Concat(code.Where(sign => !char.IsWhiteSpace(sign) && sign != '-'));
        return tight.Length == 6 && tight.All(char.IsAsciiDigit) ? tight : null;
    }

    private static async Task<IResult> ShowAsync(HttpContext http, CoachAccounts users, CurrentCoach coach, CancellationToken cancel) =>
        await users.GetUserAsync(http.User) is { } user ? Show(StatusCodes.Status200OK, user, users.GenerateNewAuthenticatorKey(), await SecondFactorDuty.IsOwedAsync(coach, cancel)) : TypedResults.LocalRedirect(AccountEndpoints.SignInPath);

    private static async Task<IResult> ChangeAsync(
        [FromForm] string what, [FromForm] string code, [FromForm] string current, [FromForm] string? key, HttpContext http, CoachAccounts users, CoachSignIn signIn, CurrentCoach coach, PasswordQueue queue, AccountTrail trail, CancellationToken cancel)
    {
        if (await users.GetUserAsync(http.User) is not { } user)
        {
            return TypedResults.LocalRedirect(AccountEndpoints.SignInPath);
        }

        if (!user.TwoFactorEnabled && key is not null && IsKey(key))
        {
            await users.SetKeyAsync(user, key);
        }

        if ((await PasswordRefusalAsync(user, current, signIn, queue, cancel) ?? await CodeRefusalAsync(user, code, users)) is { } problem)
        {
            await trail.NoteRefusalAsync(user.ClubId, user.Id, "account.second-factor-refused", cancel: cancel);
            return Show(StatusCodes.Status422UnprocessableEntity, user, key ?? "", await SecondFactorDuty.IsOwedAsync(coach, cancel), problem);
        }

        switch (what)
        {
            case Off:
                await users.SetTwoFactorEnabledAsync(user, false);
                await users.ResetAuthenticatorKeyAsync(user);
                await trail.NoteAsync(user, "account.second-factor-off", cancel);
                await signIn.RefreshSignInAsync(user);
                return TypedResults.LocalRedirect(Path);
            case On or Renew:
                await users.SetTwoFactorEnabledAsync(user, true);
                var codes = await users.GenerateNewTwoFactorRecoveryCodesAsync(user, CoachAccounts.Codes) ?? throw new InvalidOperationException("The recovery codes were not saved.");
                await trail.NoteAsync(user, what == On ? "account.second-factor-on" : "account.recovery-codes-made", cancel);
                await signIn.RefreshSignInAsync(user);
                return AccountEndpoints.Page<SecondFactorPage>((nameof(SecondFactorPage.Codes), codes.ToList()));
            default:
                return TypedResults.BadRequest();
        }
    }

    /// <summary>Why somebody who is signed in has not shown again who they are: the password, and a code once an app is on.</summary>
    public static async Task<Problem?> RefusalAsync(ClubUser user, string current, string? code, CoachAccounts users, CoachSignIn signIn, PasswordQueue queue, CancellationToken cancel) =>
        await PasswordRefusalAsync(user, current, signIn, queue, cancel) ?? (user.TwoFactorEnabled ? await CodeRefusalAsync(user, code ?? "", users) : null);

    private static async Task<Problem?> PasswordRefusalAsync(ClubUser user, string current, CoachSignIn signIn, PasswordQueue queue, CancellationToken cancel) =>
        await queue.RunAsync(() => signIn.CheckPasswordSignInAsync(user, current, lockoutOnFailure: true), cancel) switch
        {
            { IsLockedOut: true } => AccountProblems.LockedOut,
            { Succeeded: false } => AccountProblems.WrongPassword,
            _ => null,
        };

    private static async Task<Problem?> CodeRefusalAsync(ClubUser user, string code, CoachAccounts users) =>
        Digits(code) is { } digits && await users.VerifyTwoFactorTokenAsync(user, TokenOptions.DefaultAuthenticatorProvider, digits) ? null : AccountProblems.WrongCode;

    /// <summary>A key that was shown comes back with the form; it counts once its owner has shown a code of it.</summary>
    private static RazorComponentResult<SecondFactorPage> Show(int status, ClubUser user, string key, bool isOwed, params Problem[] problems) => AccountEndpoints.Page<SecondFactorPage>(
        status, (nameof(SecondFactorPage.IsOn), user.TwoFactorEnabled), (nameof(SecondFactorPage.IsOwed), isOwed), (nameof(SecondFactorPage.HasPassword), user.PasswordHash is not null), (nameof(SecondFactorPage.Email), user.Email ?? ""), (nameof(SecondFactorPage.Problems), problems),
        (nameof(SecondFactorPage.Key), key), (nameof(SecondFactorPage.Address), user.TwoFactorEnabled || !IsKey(key) ? null : AddressOf(user.Email ?? "", key)));

    /// <summary>As the library makes them: 160 bits in base 32.</summary>
    private static bool IsKey(string key) => key.Length == 32 && key.All(sign => sign is >= 'A' and <= 'Z' or >= '2' and <= '7');

    // The form that authenticator apps read (from memory); digits and seconds are their usual 6 and 30.
    private static string AddressOf(string email, string key) => $"otpauth://totp/ClubCycle:{Uri.EscapeDataString(email)}?secret={key}&issuer=ClubCycle";
}
