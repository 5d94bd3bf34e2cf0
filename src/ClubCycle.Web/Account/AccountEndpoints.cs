using System.Security.Claims;
using ClubCycle.Data.Accounts;
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
    public const string LinkPath = "/account/sign-in-link";
    public const string SetupPath = "/setup";
    public const string SignInsPath = "/account/sign-ins";

    public static void MapAccount(this IEndpointRouteBuilder app)
    {
        var open = app.MapGroup("").AllowAnonymous();
        open.MapGet(SignInPath, (string? returnUrl) => Page<SignInPage>(("ReturnUrl", LocalAddress.Of(returnUrl))));
        open.MapPost(SignInPath, SignInAsync).RequireRateLimiting(SignInLimit.Name);
        open.MapGet(LinkPath + "/{token}", ShowLinkAsync);
        open.MapPost(LinkPath + "/{token}", UseLinkAsync).RequireRateLimiting(SignInLimit.Name);
        open.MapGet("/account/denied", () => Page<DeniedPage>(StatusCodes.Status403Forbidden));
        open.MapGet(SetupPath, ShowSetupAsync);
        open.MapPost(SetupPath, SetUpAsync).RequireRateLimiting(SignInLimit.Name);

        app.MapPost("/account/sign-out", SignOutAsync);
        app.MapGet(SignInsPath, ShowSignInsAsync);
        app.MapPost(SignInsPath, EndSignInAsync);
        app.MapGet("/account/password", ShowPasswordAsync);
        app.MapPost("/account/password", SavePasswordAsync).RequireRateLimiting(SignInLimit.Name);
    }

    private static async Task<IResult> SignInAsync(
        [FromForm] string email, [FromForm] string password, [FromForm] string? returnUrl,
        SignInManager<ClubUser> signIn, PasswordQueue queue, CancellationToken cancel)
    {
        var user = password.Length <= ForbiddenPasswords.Longest ? await signIn.UserManager.FindByNameAsync(email.Trim()) : null;
        var result = await queue.RunAsync(() => CheckAsync(signIn, user, password), cancel);
        if (result.Succeeded)
        {
            return TypedResults.LocalRedirect(LocalAddress.Of(returnUrl));
        }

        return Page<SignInPage>(
            StatusCodes.Status422UnprocessableEntity,
            ("Problems", new[] { result.IsLockedOut ? AccountProblems.LockedOut : AccountProblems.WrongSignIn }), ("Email", email), ("ReturnUrl", LocalAddress.Of(returnUrl)));
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

    private static async Task<IResult> ShowLinkAsync(string token, SignInLinks links, CancellationToken cancel) =>
        await links.LookAsync(token, cancel) is { } user
            ? Page<SignInLinkPage>(("Person", user.DisplayName), ("Action", $"{LinkPath}/{token}"))
            : Page<SignInLinkPage>(StatusCodes.Status404NotFound);

    private static async Task<IResult> UseLinkAsync(string token, [FromForm] IFormCollection form, SignInLinks links, SignInManager<ClubUser> signIn, CancellationToken cancel)
    {
        if (await links.UseAsync(token, cancel) is not { } user)
        {
            return Page<SignInLinkPage>(StatusCodes.Status404NotFound);
        }

        await signIn.UserManager.ResetAccessFailedCountAsync(user);
        await signIn.SignInAsync(user, isPersistent: false, "link");
        return TypedResults.LocalRedirect("/");
    }

    private static async Task<IResult> SignOutAsync([FromForm] IFormCollection form, SignInManager<ClubUser> signIn, HttpContext http)
    {
        await signIn.SignOutAsync();
        http.Response.Headers["Clear-Site-Data"] = "\"cache\", \"storage\"";
        return TypedResults.LocalRedirect(SignInPath);
    }

    private static async Task<IResult> ShowSignInsAsync(HttpContext http, SignIns signIns, CancellationToken cancel) =>
        CurrentCoach.IdOf(http.User, ClaimTypes.NameIdentifier) is { } user
            ? Page<SignInsPage>(("SignIns", await signIns.OfAsync(user, cancel)), ("Own", CurrentCoach.IdOf(http.User, SignIns.Claim)))
            : TypedResults.LocalRedirect(SignInPath);

    private static async Task<IResult> EndSignInAsync([FromForm] Guid signIn, HttpContext http, SignIns signIns, CancellationToken cancel)
    {
        if (CurrentCoach.IdOf(http.User, ClaimTypes.NameIdentifier) is { } user)
        {
            await signIns.EndAsync(user, signIn, cancel);
        }

        return TypedResults.LocalRedirect(SignInsPath);
    }

    private static async Task<IResult> ShowPasswordAsync(HttpContext http, UserManager<ClubUser> users) =>
        await users.GetUserAsync(http.User) is { } user
            ? Page<PasswordPage>(("HasPassword", user.PasswordHash is not null), ("Email", user.Email ?? ""))
            : TypedResults.LocalRedirect(SignInPath);

    private static async Task<IResult> SavePasswordAsync(
        [FromForm] string password, [FromForm] string? current, HttpContext http, SignInManager<ClubUser> signIn, SignIns signIns, PasswordQueue queue, CancellationToken cancel)
    {
        var users = signIn.UserManager;
        if (await users.GetUserAsync(http.User) is not { } user)
        {
            return TypedResults.LocalRedirect(SignInPath);
        }

        var had = user.PasswordHash is not null;
        var saved = await queue.RunAsync(() => had ? users.ChangePasswordAsync(user, current ?? "", password) : users.AddPasswordAsync(user, password), cancel);
        if (!saved.Succeeded)
        {
            return Page<PasswordPage>(StatusCodes.Status422UnprocessableEntity, ("HasPassword", had), ("Email", user.Email ?? ""), ("Problems", AccountProblems.Of(saved)));
        }

        await signIns.EndAllAsync(user.Id, cancel);
        await signIn.RefreshSignInAsync(user);
        return TypedResults.LocalRedirect("/");
    }

    private static async Task<IResult> ShowSetupAsync(Setup setup, CancellationToken cancel) =>
        await setup.IsDoneAsync(cancel) ? TypedResults.NotFound() : Page<SetupPage>();

    private static async Task<IResult> SetUpAsync(
        [FromForm] string club, [FromForm] string timeZone, [FromForm] IsoDayOfWeek firstWeekday, [FromForm] string name, [FromForm] string email, [FromForm] string password,
        Setup setup, SignInManager<ClubUser> signIn, PasswordQueue queue, CancellationToken cancel)
    {
        if (await setup.IsDoneAsync(cancel))
        {
            return TypedResults.NotFound();
        }

        var form = new SetupForm(club, timeZone, firstWeekday, name, email, password);
        switch (await queue.RunAsync(() => setup.RunAsync(form, cancel), cancel))
        {
            case Result<ClubUser>.Ok(var coach):
                await signIn.SignInAsync(coach, isPersistent: false);
                return TypedResults.LocalRedirect("/");
            case Result<ClubUser>.Failed(var problems):
                return Page<SetupPage>(StatusCodes.Status422UnprocessableEntity, ("Form", form), ("Problems", problems));
            case var other:
                throw new InvalidOperationException($"Unknown result {other.GetType()}");
        }
    }

    private static RazorComponentResult<T> Page<T>(params (string Name, object? Value)[] parameters)
        where T : IComponent => Page<T>(StatusCodes.Status200OK, parameters);

    private static RazorComponentResult<T> Page<T>(int status, params (string Name, object? Value)[] parameters)
        where T : IComponent => new(parameters.ToDictionary(p => p.Name, p => p.Value)) { StatusCode = status };
}
