using System.Buffers.Binary;
using System.Net;
using System.Text.RegularExpressions;
using ClubCycle.Data.Accounts;
using ClubCycle.Web.Tests.Shell;
using Microsoft.AspNetCore.DataProtection.AuthenticatedEncryption;
using Microsoft.AspNetCore.DataProtection.AuthenticatedEncryption.ConfigurationModel;
using Microsoft.AspNetCore.DataProtection.KeyManagement;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;
using Npgsql;

namespace ClubCycle.Web.Tests.Account;

/// <summary>What docs/asvs.md says and no other test showed.</summary>
public sealed partial class AsvsBehaviourTests(TestApp app, AsvsBehaviourTests.InProduction production) : IClassFixture<TestApp>, IClassFixture<AsvsBehaviourTests.InProduction>
{
    private const string SessionCookie = "ClubCycle.SignIn";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>ASVS 6.2.8 and 6.2.9.</summary>
    [Theory]
    [InlineData(0, true)]
    [InlineData(1, false)]
    [InlineData(2, false)]
    [InlineData(3, false)]
    public async Task A_long_password_counts_as_it_was_typed(int spelling, bool opens)
    {
        var typed = $" Seven quiet lanterns beside a slow river, {new string('x', 40)} and a gate ";
        var club = await app.NewClubAsync();
        var person = await app.InClubAsync(club.Id, s => TestApp.AddCoachAsync(s, club.Id, ClubRole.SquadCoach, typed));

        var answer = await SignInAsync(app.Browser(), person, new[] { typed, typed.Trim(), typed.ToUpperInvariant(), typed[..64] }[spelling]);

        Assert.Equal(opens, answer.StatusCode == HttpStatusCode.Redirect);
    }

    /// <summary>ASVS 6.2.6 and 6.2.7.</summary>
    [Fact]
    public async Task Password_fields_hide_what_is_typed_and_leave_pasting_and_password_managers_alone()
    {
        var club = await app.NewClubAsync();
        var browser = app.Browser();
        await SignInAsync(browser, club.Head, TestApp.Password);
        var pages = await app.Browser().GetStringAsync("/account/sign-in", Cancel) + await browser.GetStringAsync("/account/password", Cancel);

        var fields = Input().Matches(pages).Select(m => m.Value).Where(field => field.Contains("password\"", StringComparison.Ordinal)).ToList();

        Assert.Equal(3, fields.Count);
        Assert.All(fields, field => Assert.Matches(@"type=""password"".*autocomplete=""(current|new)-password""", field));
        Assert.DoesNotMatch(@"\son[a-z]+=|<script(?! type=""module"" src=""/?js/passkey)", pages);
    }

    /// <summary>ASVS 7.4.3.</summary>
    [Fact]
    public async Task A_new_password_ends_the_sessions_of_other_browsers()
    {
        var club = await app.NewClubAsync();
        var (other, own) = (app.Browser(), app.Browser());
        await SignInAsync(other, club.Head, TestApp.Password);
        await SignInAsync(own, club.Head, TestApp.Password);
        var asking = app.Services.GetRequiredService<IOptions<SecurityStampValidatorOptions>>().Value;
        var usual = asking.ValidationInterval;
        Assert.InRange(usual, TimeSpan.Zero, TimeSpan.FromMinutes(1));

        await TestApp.SendFormAsync(own, "/account/password", "/account/password", ("current", TestApp.Password), ("password", "seven quiet lanterns"));

        // As if the minute were over.
        asking.ValidationInterval = TimeSpan.Zero;
        try
        {
            Assert.Equal(HttpStatusCode.OK, (await own.GetAsync("/account/password", Cancel)).StatusCode);
            Assert.Equal(HttpStatusCode.Redirect, (await other.GetAsync("/account/password", Cancel)).StatusCode);
        }
        finally
        {
            asking.ValidationInterval = usual;
        }
    }

    /// <summary>ASVS 7.2.1, 9.1.1 and 9.2.2.</summary>
    [Theory]
    [InlineData("as it is", HttpStatusCode.OK)]
    [InlineData("one sign changed", HttpStatusCode.Redirect)]
    [InlineData("a form's token instead", HttpStatusCode.Redirect)]
    public async Task A_session_opens_pages_only_as_it_was_handed_out(string what, HttpStatusCode status)
    {
        var club = await app.NewClubAsync();
        var signIn = await app.Browser().GetAsync("/account/sign-in", Cancel);
        var session = CookieOf(await SignInAsync(app.Browser(), club.Head, TestApp.Password), SessionCookie);
        var middle = session.Length / 2;
        var sent = what switch
        {
            "as it is" => session,
            "one sign changed" => session[..middle] + (session[middle] == 'A' ? 'B' : 'A') + session[(middle + 1)..],
            _ => CookieOf(signIn, "ClubCycle.Form"),
        };

        Assert.Equal(status, (await WithSessionAsync(sent)).StatusCode);
    }

    /// <summary>ASVS 9.1.2, 11.2.3, 11.3.1 to 11.3.3 and 11.4.2. Rounds: OWASP password storage cheat sheet.</summary>
    [Fact]
    public async Task Sessions_are_sealed_and_passwords_hashed_by_what_is_thought_strong_today()
    {
        var sealing = Assert.IsType<AuthenticatedEncryptorConfiguration>(production.App.Services.GetRequiredService<IOptions<KeyManagementOptions>>().Value.AuthenticatedEncryptorConfiguration);
        var hash = await production.App.InClubAsync((await production.App.NewClubAsync()).Id, s => Task.FromResult(
            Convert.FromBase64String(s.GetRequiredService<IPasswordHasher<ClubUser>>().HashPassword(new ClubUser(), TestApp.Password))));

        // Version 1, then the pseudo-random function (2 is HMAC with SHA-512) and the rounds, as ASP.NET Core Identity writes them.
        Assert.Equal(
            (EncryptionAlgorithm.AES_256_GCM, 1, 2u, 220_000u),
            (sealing.EncryptionAlgorithm, hash[0], BinaryPrimitives.ReadUInt32BigEndian(hash.AsSpan(1)), BinaryPrimitives.ReadUInt32BigEndian(hash.AsSpan(5))));
    }

    /// <summary>ASVS 14.3.1.</summary>
    [Fact]
    public async Task Signing_out_has_the_browser_clear_what_it_kept()
    {
        var club = await app.NewClubAsync();

        var answer = await TestApp.SendFormAsync(await club.SignedInAsync(club.Head), "/account/password", "/account/sign-out");

        Assert.Equal("\"cache\", \"storage\"", Assert.Single(answer.Headers.GetValues("Clear-Site-Data")));
    }

    /// <summary>ASVS 3.4.1.</summary>
    [Theory]
    [InlineData("/account/sign-in")]
    [InlineData("/calendar/x.ics")]
    [InlineData("/p/x")]
    public async Task Browsers_that_came_by_https_are_told_to_stay_there_for_two_years(string address)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "https://club.example" + address);

        var answer = await production.App.Browser().SendAsync(request, Cancel);

        Assert.Equal("max-age=63072000; includeSubDomains", Assert.Single(answer.Headers.GetValues("Strict-Transport-Security")));
    }

    /// <summary>ASVS 13.4.2 and 16.5.1.</summary>
    [Fact]
    public async Task An_error_tells_nothing_of_the_inside()
    {
        var club = await production.App.NewClubAsync();

        var page = $"/p/{(await club.NewLinkAsync()).Token}";
        await RunAsync("alter table club.players rename to players_away");
        var answer = await production.App.Browser().GetAsync(page, Cancel);
        await RunAsync("alter table club.players_away rename to players");
        var text = await answer.Content.ReadAsStringAsync(Cancel);

        Assert.Equal(HttpStatusCode.InternalServerError, answer.StatusCode);
        Assert.Contains("Something went wrong on our side", text, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"Exception|\bat [A-Z]\w+\.|\.cs:line|players|relation", text);

        async Task RunAsync(string sql)
        {
            await using var database = NpgsqlDataSource.Create(production.App.OwnerConnectionString);
            await using var command = database.CreateCommand(sql);
            await command.ExecuteNonQueryAsync(Cancel);
        }
    }

    /// <summary>
    /// What cannot be used wrongly because it is not used: each row is one requirement of docs/asvs.md. A player's page and its worker talk to each other and fetch from
    /// their own site, and so do the sign-in page and the passkeys page; the health command asks the server that it is told. Authenticator apps know HMAC-SHA-1 only, for codes of 30 seconds.
    /// </summary>
    [Theory]
    [InlineData("1.2.4 SQL made of text", @"FromSqlRaw|ExecuteSqlRaw|SqlQueryRaw")]
    [InlineData("1.2.9 an expression made of typed text", @"new Regex\(|Regex\.(IsMatch|Match|Matches|Replace|Split)\(")]
    [InlineData("1.3.2 code made of text", @"\beval\(|new Function\(|CSharpScript|DynamicInvoke|Reflection\.Emit")]
    [InlineData("1.4.1 memory without bounds", @"\bunsafe\b(?!-)|AllowUnsafeBlocks|\bMarshal\.|DllImport|LibraryImport")]
    [InlineData("1.5.2 types chosen by the sender", @"BinaryFormatter|TypeNameHandling|JsonPolymorphic|NetDataContractSerializer")]
    [InlineData("3.2.2 text made markup", @"MarkupString|AddMarkupContent|\.(inner|outer)HTML\b|insertAdjacentHTML|document\.write")]
    [InlineData("3.4.2 answers for other sites", @"AddCors|UseCors|Access-Control-Allow")]
    [InlineData("3.5.5 messages between windows", @"postMessage|onmessage", "player.js")]
    [InlineData("11.4.1 hashes that are broken", @"\b(MD5|SHA1|HMACMD5|HMACSHA1)\b", "AppCode.cs")]
    [InlineData("12.3.2 certificates taken as they come", @"CertificateValidationCallback|DangerousAcceptAny|TrustServerCertificate|CheckCertificateRevocation|CertificateRevocationCheckMode")]
    [InlineData("13.1.1 fetching from elsewhere", @"HttpClient|WebRequest|ClientWebSocket|\bfetch\(|XMLHttpRequest|sendBeacon", "HealthCommand.cs", "passkey.js", "start.js", "worker.js")]
    [InlineData("13.4.3 lists of folders", @"DirectoryBrowser|UseFileServer")]
    [InlineData("14.3.3 keeping data in the browser", @"localStorage|sessionStorage|indexedDB")]
    public void Nothing_in_the_source_uses(string what, string pattern, params string[] butHere)
    {
        var source = Path.Combine(Path.GetDirectoryName(StyleSheet.PathOf("screens.css"))!, "..", "..", "..");
        var files = Directory.EnumerateFiles(source, "*.*", SearchOption.AllDirectories).Where(file => Path.GetExtension(file) is ".cs" or ".razor" or ".js" or ".csproj").ToList();

        Assert.True(files.Count > 300, what);
        Assert.Empty(files.Where(file => Regex.IsMatch(File.ReadAllText(file), pattern)).Select(Path.GetFileName).Except(butHere));
    }

    private static string CookieOf(HttpResponseMessage answer, string name) =>
        answer.Headers.GetValues("Set-Cookie").Single(c => c.StartsWith(name + "=", StringComparison.Ordinal)).Split(';')[0][(name.Length + 1)..];

    /// <summary>A page for signed-in people, asked for with this and no other cookie.</summary>
    private async Task<HttpResponseMessage> WithSessionAsync(string session)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/account/password") { Headers = { { "Cookie", $"{SessionCookie}={session}" } } };
        return await app.Browser().SendAsync(request, Cancel);
    }

    private static Task<HttpResponseMessage> SignInAsync(HttpClient browser, Guid person, string password) =>
        TestApp.SendFormAsync(browser, "/account/sign-in", "/account/sign-in", ("email", $"{person:N}@example.org"), ("password", password), ("returnUrl", "/"));

    [GeneratedRegex("<input[^>]*>")]
    private static partial Regex Input();

    /// <summary>The application as clubs run it.</summary>
    public sealed class InProduction : IAsyncLifetime
    {
        internal TestApp App { get; } = new();

        public async ValueTask InitializeAsync()
        {
            App.Settings["environment"] = "Production";
            await App.InitializeAsync();
        }

        public ValueTask DisposeAsync() => App.DisposeAsync();
    }
}
