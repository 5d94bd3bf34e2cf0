using System.Buffers.Text;
using ClubCycle.Data.Accounts;
using ClubCycle.Data.Audit;
using ClubCycle.Planning;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;

namespace ClubCycle.Web.Account;

/// <summary>Passkeys: a key in a phone, a computer or a security key, opened there by finger, face or PIN. One is both factors at once.</summary>
internal static class Passkeys
{
    public const string Path = "/account/passkeys";
    public const string SignInPath = "/account/sign-in/passkey";
    public const string Challenge = "/challenge";
    public const int Most = 10;
    public const int LongestName = 60;

    public static void AddPasskeys(this IServiceCollection services) => services.Configure<IdentityPasskeyOptions>(passkeys =>
    {
        // The device asks for finger, face or PIN, and knows whose key it is, so that nobody types an e-mail.
        passkeys.UserVerificationRequirement = "required";
        passkeys.ResidentKeyRequirement = "required";
    });

    public static void MapPasskeys(this IEndpointRouteBuilder app)
    {
        app.MapGet(Path, ShowAsync);
        app.MapPost(Path, AddAsync).RequireRateLimiting(SignInLimit.Name);
        app.MapPost(Path + Challenge, ChallengeToAddAsync).RequireRateLimiting(SignInLimit.Name);
        app.MapPost(Path + "/remove", RemoveAsync).RequireRateLimiting(SignInLimit.Name);
        app.MapPost(SignInPath, SignInAsync).RequireRateLimiting(SignInLimit.Name).AllowAnonymous();
        app.MapPost(SignInPath + Challenge, ChallengeToSignInAsync).RequireRateLimiting(SignInLimit.Name).AllowAnonymous();
    }

    private static async Task<IResult> ShowAsync(HttpContext http, CoachAccounts users) =>
        await users.GetUserAsync(http.User) is { } user ? await PageAsync(StatusCodes.Status200OK, user, users) : TypedResults.LocalRedirect(AccountEndpoints.SignInPath);

    /// <summary>Only who has just shown who they are is given a challenge to answer with a new key.</summary>
    private static async Task<IResult> ChallengeToAddAsync(
        [FromForm] string name, [FromForm] string current, [FromForm] string? code, HttpContext http, CoachAccounts users, CoachSignIn signIn, PasswordQueue queue, AccountTrail trail, CancellationToken cancel)
    {
        if (await users.GetUserAsync(http.User) is not { } user)
        {
            return TypedResults.Unauthorized();
        }

        if (await NameProblemAsync(name, user, users) is { } problem)
        {
            return Refused(problem);
        }

        if (await SecondFactor.RefusalAsync(user, current, code, users, signIn, queue, cancel) is { } refusal)
        {
            await trail.NoteRefusalAsync(user.ClubId, user.Id, "account.passkey-refused", cancel: cancel);
            return Refused(refusal);
        }

        return Json(await signIn.MakePasskeyCreationOptionsAsync(new PasskeyUserEntity { Id = user.Id.ToString("D"), Name = user.Email ?? user.DisplayName, DisplayName = user.DisplayName }));
    }

    private static async Task<IResult> AddAsync([FromForm] string name, [FromForm] string credential, HttpContext http, CoachAccounts users, CoachSignIn signIn, SignIns signIns, AccountTrail trail, CancellationToken cancel)
    {
        if (await users.GetUserAsync(http.User) is not { } user)
        {
            return TypedResults.LocalRedirect(AccountEndpoints.SignInPath);
        }

        if (await NameProblemAsync(name, user, users) is { } problem)
        {
            return await PageAsync(StatusCodes.Status422UnprocessableEntity, user, users, problem);
        }

        if (await signIn.NewPasskeyAsync(user, credential) is not { } passkey)
        {
            return await PageAsync(StatusCodes.Status422UnprocessableEntity, user, users, AccountProblems.PasskeyRefused);
        }

        passkey.Name = TypedText.Tidy(name);
        if (await users.AddOrUpdatePasskeyAsync(user, passkey) is { Succeeded: false } refused)
        {
            return await PageAsync(StatusCodes.Status422UnprocessableEntity, user, users, [.. AccountProblems.Of(refused)]);
        }

        await signIns.ShowedPasskeyAsync(http.User, true, cancel);
        await trail.NoteAsync(user, "account.passkey-added", cancel);
        return TypedResults.LocalRedirect(Path);
    }

    /// <summary>Ends every other sign-in, too: the device may be in the wrong hands.</summary>
    private static async Task<IResult> RemoveAsync(
        [FromForm] string passkey, [FromForm] string current, [FromForm] string? code, HttpContext http, CoachAccounts users, CoachSignIn signIn, SignIns signIns, PasswordQueue queue, AccountTrail trail, CancellationToken cancel)
    {
        if (await users.GetUserAsync(http.User) is not { } user)
        {
            return TypedResults.LocalRedirect(AccountEndpoints.SignInPath);
        }

        if (await SecondFactor.RefusalAsync(user, current, code, users, signIn, queue, cancel) is { } refusal)
        {
            await trail.NoteRefusalAsync(user.ClubId, user.Id, "account.passkey-refused", cancel: cancel);
            return await PageAsync(StatusCodes.Status422UnprocessableEntity, user, users, refusal);
        }

        if ((await users.GetPasskeysAsync(user)).FirstOrDefault(p => IdOf(p) == passkey) is { } known)
        {
            await users.RemovePasskeyAsync(user, known.CredentialId);
            await signIns.EndOthersAsync(http.User, cancel);
            await signIns.ShowedPasskeyAsync(http.User, (await users.GetPasskeysAsync(user)).Count > 0 && await signIns.ByPasskeyAsync(http.User, cancel), cancel);
            await trail.NoteAsync(user, "account.passkey-removed", cancel);
        }

        return TypedResults.LocalRedirect(Path);
    }

    private static async Task<IResult> ChallengeToSignInAsync([FromForm] IFormCollection form, CoachSignIn signIn) => Json(await signIn.MakePasskeyRequestOptionsAsync(null));

    private static async Task<IResult> SignInAsync([FromForm] string credential, [FromForm] string? returnUrl, CoachSignIn signIn) =>
        await signIn.ByPasskeyAsync(credential)
            ? TypedResults.LocalRedirect(LocalAddress.Of(returnUrl))
            : AccountEndpoints.Page<SignInPage>(StatusCodes.Status422UnprocessableEntity, (nameof(SignInPage.Problems), new[] { AccountProblems.PasskeyRefused }), (nameof(SignInPage.ReturnUrl), LocalAddress.Of(returnUrl)));

    internal static string IdOf(UserPasskeyInfo passkey) => Base64Url.EncodeToString(passkey.CredentialId);

    private static async Task<Problem?> NameProblemAsync(string name, ClubUser user, CoachAccounts users) =>
        TypedText.NameProblem(name, LongestName, "account.passkey-name", "passkey's name", "name")
        ?? ((await users.GetPasskeysAsync(user)).Count >= Most ? AccountProblems.TooManyPasskeys : null);

    private static async Task<IResult> PageAsync(int status, ClubUser user, CoachAccounts users, params Problem[] problems) => AccountEndpoints.Page<PasskeysPage>(
        status, (nameof(PasskeysPage.Passkeys), (await users.GetPasskeysAsync(user)).OrderBy(p => p.CreatedAt).ToList()), (nameof(PasskeysPage.HasPassword), user.PasswordHash is not null),
        (nameof(PasskeysPage.AsksCode), user.TwoFactorEnabled), (nameof(PasskeysPage.Email), user.Email ?? ""), (nameof(PasskeysPage.Problems), problems));

    private static ContentHttpResult Json(string options) => TypedResults.Content(options, "application/json");

    private static JsonHttpResult<RefusedAnswer> Refused(Problem problem) => TypedResults.Json(new RefusedAnswer(SayPlan(problem.Message)), statusCode: StatusCodes.Status422UnprocessableEntity);

    private sealed record RefusedAnswer(string Problem);
}
