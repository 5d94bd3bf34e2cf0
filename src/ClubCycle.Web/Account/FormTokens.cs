using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.DataProtection;

namespace ClubCycle.Web.Account;

/// <summary>The framework's form tokens, whose cookie has over https the name that binds it to this host, as the session's has. The framework knows one name only.</summary>
internal sealed class FormTokens : IAntiforgery, IDisposable
{
    public const string Cookie = "ClubCycle.Form";

    private readonly ServiceProvider _overHttps;
    private readonly ServiceProvider _inTheClear;

    public FormTokens(IDataProtectionProvider protection, ILoggerFactory logging)
    {
        (_overHttps, _inTheClear) = (Make(SignInCookies.Names.Prefix + Cookie, CookieSecurePolicy.Always), Make(Cookie, CookieSecurePolicy.None));

        ServiceProvider Make(string name, CookieSecurePolicy secure) => new ServiceCollection()
            .AddSingleton(protection)
            .AddSingleton(logging)
            .AddLogging()
            .AddAntiforgery(form => (form.Cookie.Name, form.Cookie.SecurePolicy, form.Cookie.Path) = (name, secure, "/"))
            .BuildServiceProvider();
    }

    public AntiforgeryTokenSet GetAndStoreTokens(HttpContext httpContext) => For(httpContext).GetAndStoreTokens(httpContext);

    public AntiforgeryTokenSet GetTokens(HttpContext httpContext) => For(httpContext).GetTokens(httpContext);

    public Task<bool> IsRequestValidAsync(HttpContext httpContext) => For(httpContext).IsRequestValidAsync(httpContext);

    public Task ValidateRequestAsync(HttpContext httpContext) => For(httpContext).ValidateRequestAsync(httpContext);

    public void SetCookieTokenAndHeader(HttpContext httpContext) => For(httpContext).SetCookieTokenAndHeader(httpContext);

    public void Dispose()
    {
        _overHttps.Dispose();
        _inTheClear.Dispose();
    }

    private IAntiforgery For(HttpContext http) => (http.Request.IsHttps ? _overHttps : _inTheClear).GetRequiredService<IAntiforgery>();
}
