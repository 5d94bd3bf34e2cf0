using System.Security.Claims;
using ClubCycle.Data;
using ClubCycle.Data.Accounts;
using ClubCycle.Data.Audit;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Components.Server.Circuits;
using Microsoft.AspNetCore.Identity;

namespace ClubCycle.Web.Account;

/// <summary>Accounts, cookies and rights.</summary>
internal static partial class AccountSetup
{
    public static void AddAccounts(this IServiceCollection services, IConfiguration settings)
    {
        services.AddIdentityCore<ClubUser>(Rules)
            .AddEntityFrameworkStores<ClubCycleDb>()
            .AddUserManager<CoachAccounts>()
            .AddSignInManager<CoachSignIn>()
            .AddTokenProvider<CodesOnce>(TokenOptions.DefaultAuthenticatorProvider)
            .AddClaimsPrincipalFactory<CoachClaims>()
            .AddPasswordValidator<ForbiddenPasswords>();
        services.AddAuthentication(IdentityConstants.ApplicationScheme).AddIdentityCookies();
        services.ConfigureApplicationCookie(SignInCookie);
        services.Configure<CookieAuthenticationOptions>(IdentityConstants.TwoFactorUserIdScheme, SecondStepCookie);

        // Ends a session within a minute of a password change, and at once where an action asks the database.
        services.Configure<SecurityStampValidatorOptions>(stamp =>
        {
            stamp.ValidationInterval = TimeSpan.FromMinutes(1);
            stamp.OnRefreshingPrincipal = SignInCookies.KeepAsync;
        });
        services.AddOptions<SignInTimes>().Bind(settings.GetSection(SignInTimes.Section)).ValidateDataAnnotations().ValidateOnStart();
        services.AddSingleton<SignIns>();

        // OWASP's figure for PBKDF2 with SHA-512 (password storage cheat sheet).
        services.Configure<PasswordHasherOptions>(hashing => hashing.IterationCount = 220_000);
        services.AddKeyRing(settings);
        services.AddPasskeys();
        services.AddClubCyclePolicies();
        services.AddScoped<AuthenticationStateProvider, CoachRevalidation>();
        services.AddScoped<CircuitHandler, ClubOfScope.OfCircuit>();
        services.AddScoped<CircuitHandler, OpenPages.OfCircuit>();
        services.AddScoped<CurrentCoach>();
        services.AddScoped<SignInLinks>();
        services.AddScoped<Setup>();
        services.AddScoped<CoachInvitations>();
        services.AddSingleton<SetupOnce>();
        services.AddSingleton<PasswordQueue>();
        services.AddSingleton<KnownBrowser>();
        services.AddSingleton<IAntiforgery, FormTokens>();
        services.AddRateLimiter(limits => SignInLimit.Add(limits, settings.GetValue("SignIn:TriesPerMinute", SignInLimit.DefaultTriesPerMinute)));
    }

    private static void Rules(IdentityOptions identity)
    {
        identity.User.RequireUniqueEmail = true;

        // Length is what counts; rules about kinds of characters lead to worse passwords (ASVS 6.2.5).
        identity.Password.RequiredLength = ForbiddenPasswords.Shortest;
        identity.Password.RequiredUniqueChars = 1;
        identity.Password.RequireDigit = false;
        identity.Password.RequireLowercase = false;
        identity.Password.RequireUppercase = false;
        identity.Password.RequireNonAlphanumeric = false;
        identity.Lockout.MaxFailedAccessAttempts = 5;
        identity.Lockout.DefaultLockoutTimeSpan = TimeSpan.FromMinutes(5);
    }

    private static void SignInCookie(CookieAuthenticationOptions cookie)
    {
        Guard(cookie, "ClubCycle.SignIn");

        // How long a sign-in lives is decided by its row (SignInTimes); this is only the longest that may be set.
        cookie.ExpireTimeSpan = TimeSpan.FromHours(24);
        cookie.SlidingExpiration = false;
        cookie.Events.OnSigningIn = SignInCookies.StartAsync;
        cookie.Events.OnValidatePrincipal = SignInCookies.CheckAsync;
        cookie.Events.OnSigningOut = SignInCookies.EndAsync;
        cookie.LoginPath = AccountEndpoints.SignInPath;
        cookie.AccessDeniedPath = "/account/denied";
        cookie.ReturnUrlParameter = "returnUrl";
        cookie.Events.OnRedirectToLogin = context => AnswerAsync(context, StatusCodes.Status401Unauthorized);
        cookie.Events.OnRedirectToAccessDenied = DenyAsync;
    }

    /// <summary>Out of reach of scripts and of other sites; over https under a name that binds it to this host.</summary>
    private static void Guard(CookieAuthenticationOptions cookie, string name)
    {
        cookie.Cookie.Name = name;
        cookie.Cookie.HttpOnly = true;
        cookie.Cookie.SameSite = SameSiteMode.Lax;
        cookie.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
        cookie.CookieManager = new SignInCookies.Names();
    }

    /// <summary>Between the password or link and the code.</summary>
    private static void SecondStepCookie(CookieAuthenticationOptions cookie)
    {
        Guard(cookie, "ClubCycle.SecondStep");
        cookie.ExpireTimeSpan = TimeSpan.FromMinutes(5);
    }

    /// <summary>Somebody who is signed in and may not open this address.</summary>
    private static async Task DenyAsync(RedirectContext<CookieAuthenticationOptions> context)
    {
        var (http, person) = (context.HttpContext, context.HttpContext.User);
        Forbidden(http.RequestServices.GetRequiredService<ILogger<CurrentCoach>>(), http.Request.Path);
        if (CurrentCoach.IdOf(person, CoachClaims.Club) is { } club && CurrentCoach.IdOf(person, ClaimTypes.NameIdentifier) is { } user)
        {
            await http.RequestServices.GetRequiredService<AccountTrail>().NoteRefusalAsync(club, user, "access.refused", "address", http.RequestAborted);
        }

        await AnswerAsync(context, StatusCodes.Status403Forbidden);
    }

    [LoggerMessage(LogLevel.Warning, "{Path} is not open to who asked for it.")]
    private static partial void Forbidden(ILogger log, string path);

    /// <summary>Programs get a status, people a page.</summary>
    private static Task AnswerAsync(RedirectContext<CookieAuthenticationOptions> context, int status)
    {
        if (context.Request.Path.StartsWithSegments("/api") || context.Request.Path.StartsWithSegments("/openapi"))
        {
            context.Response.StatusCode = status;
        }
        else
        {
            context.Response.Redirect(context.RedirectUri);
        }

        return Task.CompletedTask;
    }
}
