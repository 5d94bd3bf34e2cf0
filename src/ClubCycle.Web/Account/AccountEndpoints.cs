using System.Security.Claims;
using ClubCycle.Data.Accounts;
using ClubCycle.Data.Audit;
using ClubCycle.Planning;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using NodaTime;

namespace ClubCycle.Web.Account;

/// <summary>Signing in and out, passwords, and the first run: plain pages and plain forms, since a live page cannot set cookies.</summary>
internal static class AccountEndpoints
{
    public const string SignInPath = "/account/sign-in";
    public const string CodePath = "/account/sign-in/code";
    public const string LinkPath = "/account/sign-in-link";
    public const string SetupPath = "/setup";
    public const string SignInsPath = "/account/sign-ins";
    public const string PasswordPath = "/account/password";

    public static void MapAccount(this IEndpointRouteBuilder app)
    {
        var open = app.MapGroup("").AllowAnonymous();
        open.MapGet(SignInPath, (string? returnUrl) => Page<SignInPage>((nameof(SignInPage.ReturnUrl), LocalAddress.Of(returnUrl))));
        open.MapPost(SignInPath, SignInAsync).RequireRateLimiting(SignInLimit.Name);
        open.MapGet(CodePath, ShowCodeAsync);
        open.MapPost(CodePath, CheckCodeAsync).RequireRateLimiting(SignInLimit.Name);
        open.MapGet(LinkPath + "/{token}", ShowLinkAsync);
        open.MapPost(LinkPath + "/{token}", UseLinkAsync).RequireRateLimiting(SignInLimit.Name);
        open.MapGet("/account/denied", () => Page<DeniedPage>(StatusCodes.Status403Forbidden));
        open.MapGet(SetupPath, ShowSetupAsync);
        open.MapPost(SetupPath, SetUpAsync).RequireRateLimiting(SignInLimit.Name);

        app.MapPost("/account/sign-out", SignOutAsync);
        app.MapGet(SignInsPath, ShowSignInsAsync);
        app.MapPost(SignInsPath, EndSignInAsync);
        app.MapSecondFactor();
        app.MapPasskeys();
        app.MapGet(PasswordPath, ShowPasswordAsync);
        app.MapPost(PasswordPath, SavePasswordAsync).RequireRateLimiting(SignInLimit.Name);
    }

    private static async Task<IResult> SignInAsync(
        [FromForm] string email, [FromForm] string password, [FromForm] string? returnUrl,
        HttpContext http, SignInManager<ClubUser> signIn, KnownBrowser browser, PasswordQueue queue, AccountTrail trail, CancellationToken cancel)
    {
        var user = password.Length <= ForbiddenPasswords.Longest ? await signIn.UserManager.FindByNameAsync(email.Trim()) : null;
        var result = user is not null && browser.Knows(http, user)
            ? await queue.RunAsync(() => browser.TryAsync(http, user, signIn.UserManager, () => CheckAsync(signIn, user, password)), cancel)
            : await queue.ForStrangerAsync(() => CheckAsync(signIn, user, password), cancel);
        if (result is null)
        {
            http.Response.Headers.RetryAfter = "30";
            return Again(StatusCodes.Status503ServiceUnavailable, AccountProblems.Busy);
        }

        if (result.Succeeded)
        {
            return TypedResults.LocalRedirect(LocalAddress.Of(returnUrl));
        }

        if (result.RequiresTwoFactor)
        {
            return TypedResults.LocalRedirect($"{CodePath}?returnUrl={Uri.EscapeDataString(LocalAddress.Of(returnUrl))}");
        }

        if (user is not null)
        {
            await trail.NoteRefusalAsync(user.ClubId, user.Id, "account.sign-in-refused", cancel: cancel);
        }

        return Again(StatusCodes.Status422UnprocessableEntity, result.IsLockedOut ? AccountProblems.LockedOut : AccountProblems.WrongSignIn);

        IResult Again(int status, Problem problem) =>
            Page<SignInPage>(status, (nameof(SignInPage.Problems), new[] { problem }), (nameof(SignInPage.Email), email), (nameof(SignInPage.ReturnUrl), LocalAddress.Of(returnUrl)));
    }

    private static async Task<Microsoft.AspNetCore.Identity.SignInResult> CheckAsync(SignInManager<ClubUser> signIn, ClubUser? user, string password)
    {
        if (user?.PasswordHash is not null)
        {
            return await signIn.PasswordSignInAsync(user, password, isPersistent: false, lockoutOnFailure: true);
        }

        // An unknown e-mail takes as long as a wrong password, so that the time does not tell who has an account.
        signIn.UserManager.PasswordHasher.HashPassword(new ClubUser(), password);
        return Microsoft.AspNetCore.Identity.SignInResult.Failed;
    }

    private static async Task<IResult> ShowCodeAsync(string? returnUrl, SignInManager<ClubUser> signIn) =>
        await signIn.GetTwoFactorAuthenticationUserAsync() is not null
            ? Page<CodePage>((nameof(CodePage.ReturnUrl), LocalAddress.Of(returnUrl)))
            : TypedResults.LocalRedirect(SignInPath);

    /// <summary>Six digits are a code of the app; anything else is a recovery code.</summary>
    private static async Task<IResult> CheckCodeAsync(
        [FromForm] string code, [FromForm] string? returnUrl, HttpContext http, SignInManager<ClubUser> signIn, KnownBrowser browser, AccountTrail trail, CancellationToken cancel)
    {
        if (await signIn.GetTwoFactorAuthenticationUserAsync() is not { } user)
        {
            return TypedResults.LocalRedirect(SignInPath);
        }

        var digits = SecondFactor.Digits(code);
        var result = await browser.TryAsync(http, user, signIn.UserManager, () => digits is not null
            ? signIn.TwoFactorAuthenticatorSignInAsync(digits, isPersistent: false, rememberClient: false)
            : signIn.TwoFactorRecoveryCodeSignInAsync(code));
        if (result.Succeeded)
        {
            if (digits is null)
            {
                await trail.NoteAsync(user, "account.recovery-code-used", cancel);
            }

            return TypedResults.LocalRedirect(LocalAddress.Of(returnUrl));
        }

        await trail.NoteRefusalAsync(user.ClubId, user.Id, "account.code-refused", cancel: cancel);
        return Page<CodePage>(
            StatusCodes.Status422UnprocessableEntity,
            (nameof(CodePage.Problems), new[] { result.IsLockedOut ? AccountProblems.LockedOut : AccountProblems.WrongCode }), (nameof(CodePage.ReturnUrl), LocalAddress.Of(returnUrl)));
    }

    private static async Task<IResult> ShowLinkAsync(string token, SignInLinks links, CancellationToken cancel) =>
        await links.LookAsync(token, cancel) is { } user
            ? Page<SignInLinkPage>((nameof(SignInLinkPage.Person), user.DisplayName), (nameof(SignInLinkPage.Action), $"{LinkPath}/{token}"))
            : Page<SignInLinkPage>(StatusCodes.Status404NotFound);

    private static async Task<IResult> UseLinkAsync(string token, [FromForm] IFormCollection form, SignInLinks links, CoachSignIn signIn, CancellationToken cancel)
    {
        if (await links.UseAsync(token, cancel) is not { } user)
        {
            return Page<SignInLinkPage>(StatusCodes.Status404NotFound);
        }

        return TypedResults.LocalRedirect((await signIn.ByLinkAsync(user)).RequiresTwoFactor ? CodePath : "/");
    }

    private static async Task<IResult> SignOutAsync([FromForm] IFormCollection form, SignInManager<ClubUser> signIn, HttpContext http)
    {
        await signIn.SignOutAsync();
        http.Response.Headers["Clear-Site-Data"] = "\"cache\", \"storage\"";
        return TypedResults.LocalRedirect(SignInPath);
    }

    private static async Task<IResult> ShowSignInsAsync(HttpContext http, SignIns signIns, CancellationToken cancel) =>
        CurrentCoach.IdOf(http.User, ClaimTypes.NameIdentifier) is { } user
            ? Page<SignInsPage>((nameof(SignInsPage.SignIns), await signIns.OfAsync(user, cancel)), (nameof(SignInsPage.Own), CurrentCoach.IdOf(http.User, SignIns.Claim)))
            : TypedResults.LocalRedirect(SignInPath);

    private static async Task<IResult> EndSignInAsync([FromForm] Guid signIn, HttpContext http, SignIns signIns, AccountTrail trail, CancellationToken cancel)
    {
        if (CurrentCoach.IdOf(http.User, ClaimTypes.NameIdentifier) is { } user && CurrentCoach.IdOf(http.User, CoachClaims.Club) is { } club)
        {
            await signIns.EndAsync(user, signIn, cancel);
            await trail.NoteAsync(club, user, "account.sign-in-ended", cancel: cancel);
        }

        return TypedResults.LocalRedirect(SignInsPath);
    }

    private static async Task<IResult> ShowPasswordAsync(HttpContext http, UserManager<ClubUser> users, SignIns signIns, CancellationToken cancel) =>
        await users.GetUserAsync(http.User) is { } user
            ? Page<PasswordPage>((nameof(PasswordPage.AsksCurrent), await AsksCurrentAsync(user, http, signIns, cancel)), (nameof(PasswordPage.HasPassword), user.PasswordHash is not null), (nameof(PasswordPage.Email), user.Email ?? ""))
            : TypedResults.LocalRedirect(SignInPath);

    private static async Task<IResult> SavePasswordAsync(
        [FromForm] string password, [FromForm] string? current, HttpContext http, SignInManager<ClubUser> signIn, CoachAccounts users, SignIns signIns, PasswordQueue queue, AccountTrail trail, CancellationToken cancel)
    {
        if (await users.GetUserAsync(http.User) is not { } user)
        {
            return TypedResults.LocalRedirect(SignInPath);
        }

        var asks = await AsksCurrentAsync(user, http, signIns, cancel);
        var saved = await queue.RunAsync(() => asks ? users.ChangePasswordAsync(user, current ?? "", password) : users.ReplacePasswordAsync(user, password), cancel);
        if (!saved.Succeeded)
        {
            return Page<PasswordPage>(StatusCodes.Status422UnprocessableEntity, (nameof(PasswordPage.AsksCurrent), asks), (nameof(PasswordPage.HasPassword), user.PasswordHash is not null), (nameof(PasswordPage.Email), user.Email ?? ""), (nameof(PasswordPage.Problems), AccountProblems.Of(saved)));
        }

        // Every sign-in ends, this one too; who changed the password goes on in a new one.
        await signIns.EndAllAsync(user.Id, cancel);
        await trail.NoteAsync(user, "account.password-changed", cancel);
        await signIn.SignInAsync(user, isPersistent: false);
        return TypedResults.LocalRedirect("/");
    }

    private static async Task<bool> AsksCurrentAsync(ClubUser user, HttpContext http, SignIns signIns, CancellationToken cancel) =>
        user.PasswordHash is not null && !await signIns.MayChooseFreelyAsync(http.User, cancel);

    private static async Task<IResult> ShowSetupAsync(Setup setup, CancellationToken cancel) =>
        await setup.IsDoneAsync(cancel) ? TypedResults.NotFound() : Page<SetupPage>();

    private static async Task<IResult> SetUpAsync(
        [FromForm] string club, [FromForm] string timeZone, [FromForm] IsoDayOfWeek firstWeekday, [FromForm] string name, [FromForm] string email, [FromForm] string password, [FromForm] string? secondFactor,
        Setup setup, SignInManager<ClubUser> signIn, PasswordQueue queue, CancellationToken cancel)
    {
        if (await setup.IsDoneAsync(cancel))
        {
            return TypedResults.NotFound();
        }

        var form = new SetupForm(club, timeZone, firstWeekday, name, email, password, secondFactor is not null);
        switch (await queue.RunAsync(() => setup.RunAsync(form, cancel), cancel))
        {
            case Result<ClubUser>.Ok(var coach):
                await signIn.SignInAsync(coach, isPersistent: false);
                return TypedResults.LocalRedirect("/");
            case Result<ClubUser>.Failed(var problems):
                return Page<SetupPage>(StatusCodes.Status422UnprocessableEntity, (nameof(SetupPage.Form), form), (nameof(SetupPage.Problems), problems));
            case var other:
                throw new InvalidOperationException($"Unknown result {other.GetType()}");
        }
    }

    internal static RazorComponentResult<T> Page<T>(params (string Name, object? Value)[] parameters)
        where T : IComponent => Page<T>(StatusCodes.Status200OK, parameters);

    internal static RazorComponentResult<T> Page<T>(int status, params (string Name, object? Value)[] parameters)
        where T : IComponent => new(parameters.ToDictionary(p => p.Name, p => p.Value)) { StatusCode = status };
}
