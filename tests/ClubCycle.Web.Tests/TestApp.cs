using System.Net;
using System.Security.Claims;
using System.Text.RegularExpressions;
using ClubCycle.Data;
using ClubCycle.Data.Accounts;
using ClubCycle.Data.Clubs;
using ClubCycle.Data.Links;
using ClubCycle.Data.Outbox;
using ClubCycle.Data.Plans;
using ClubCycle.Data.Players;
using ClubCycle.Data.Seasons;
using ClubCycle.Data.Squads;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using ClubCycle.TestKit;
using ClubCycle.Web.Account;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using NodaTime;

namespace ClubCycle.Web.Tests;

/// <summary>The whole application over a fresh database of its own, without a network.</summary>
public sealed partial class TestApp : IAsyncLifetime
{
    public const string Password = "window tractor lemon";

    private TestDatabase _database = null!;
    private WebApplicationFactory<Program>? _factory;

    internal TestClock Clock { get; } = new(Instant.FromUtc(2026, 3, 3, 12, 0));

    /// <summary>Settings of one class's application, set before it is first used.</summary>
    internal Dictionary<string, string> Settings { get; } = [];

    /// <summary>Hears everything that is logged.</summary>
    internal ILoggerProvider? Log { get; set; }

    /// <summary>Listens on a port of its own, for what only bytes on a wire can show. Set before it is first used.</summary>
    internal bool OnTheWire { get; set; }

    internal IServiceProvider Services => Host.Services;

    internal string ConnectionString => _database.ConnectionString;

    /// <summary>For what is no work of the app's.</summary>
    internal string OwnerConnectionString => _database.OwnerConnectionString;

    private WebApplicationFactory<Program> Host => _factory ??= Started(new WebApplicationFactory<Program>().WithWebHostBuilder(host => host
        .UseSetting("ConnectionStrings:ClubCycle", _database.ConnectionString)
        .UseSetting("SignIn:TriesPerMinute", "100000")
        .UseSetting("Costly:PerMinute", "100000")
        .UseSettings(OnTheWire ? new Dictionary<string, string> { [WebHostDefaults.ServerUrlsKey] = "http://127.0.0.1:0" } : [])
        .UseSettings(Settings)
        .ConfigureTestServices(services =>
        {
            services.AddSingleton<IClock>(Clock);
            if (!Settings.ContainsKey("environment"))
            {
                // Passwords by the hundred, and none of them worth stealing.
                services.Configure<PasswordHasherOptions>(hashing => hashing.IterationCount = 1_000);
            }

            if (Log is { } log)
            {
                services.AddSingleton(log);
            }
        })));

    private WebApplicationFactory<Program> Started(WebApplicationFactory<Program> factory)
    {
        if (OnTheWire)
        {
            factory.UseKestrel(0);
            factory.StartServer();
        }

        return factory;
    }

    public async ValueTask InitializeAsync() => _database = await TestDatabase.CreateAsync(owner => DataSetup.MigrateAsync(owner, TestContext.Current.CancellationToken));

    public async ValueTask DisposeAsync()
    {
        if (_factory is not null)
        {
            await _factory.DisposeAsync();
        }

        await _database.DisposeAsync();
    }

    /// <summary>A browser without a session: keeps cookies, follows nothing.</summary>
    internal HttpClient Browser() => OnTheWire
        ? new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false }) { BaseAddress = Host.ClientOptions.BaseAddress }
        : Host.CreateClient(new WebApplicationFactoryClientOptions { AllowAutoRedirect = false });

    /// <summary>Fetches the form's page, then sends the form with its antiforgery token.</summary>
    internal static async Task<HttpResponseMessage> SendFormAsync(HttpClient browser, string page, string action, params (string Name, string Value)[] fields)
    {
        var cancel = TestContext.Current.CancellationToken;
        var html = await browser.GetStringAsync(page, cancel);
        var token = AntiforgeryToken().Match(html).Groups[1].Value;
        return await browser.PostAsync(action, new FormUrlEncodedContent(fields.Append(("__RequestVerificationToken", token)).Select(f => KeyValuePair.Create(f.Item1, f.Item2))), cancel);
    }

    /// <summary>A club with a head coach, a squad coach, two squads of which the squad coach has the first, and a player of it.</summary>
    internal async Task<TestClub> NewClubAsync(AgeGroup? age = null)
    {
        var cancel = TestContext.Current.CancellationToken;
        await using var scope = Services.CreateAsyncScope();
        var services = scope.ServiceProvider;
        var id = (await services.GetRequiredService<ClubStore>().CreateAsync("Sandhaven", "Europe/Lisbon", IsoDayOfWeek.Monday, cancel)).OrThrow();
        services.GetRequiredService<CurrentClub>().Use(id);
        var head = await AddCoachAsync(services, id, ClubRole.HeadCoach);
        var coach = await AddCoachAsync(services, id, ClubRole.SquadCoach);
        var squads = services.GetRequiredService<SquadStore>();
        var own = (await squads.AddAsync(Squad("Blue", age), null, head, cancel)).OrThrow();
        var other = (await squads.AddAsync(Squad("Red", age), null, head, cancel)).OrThrow();
        (await squads.SetCoachesAsync(own, [coach], head, cancel)).OrThrow();
        (await services.GetRequiredService<SeasonStore>().AddAsync(
            null, new LocalDate(2026, 2, 28), [new Stint(new LocalDate(2026, 10, 1), new LocalDate(2026, 11, 30)), new Stint(new LocalDate(2027, 1, 1), new LocalDate(2027, 2, 28))], head, cancel)).OrThrow();
        var player = (await services.GetRequiredService<PlayerStore>().AddAsync(own, ["Ines Kestrel"], head, cancel)).OrThrow()[0];
        return new TestClub(this, id, head, coach, own, other, player);
    }

    /// <summary>Runs the work as this person, or as nobody, the way an open page does. The club comes from the sign-in.</summary>
    internal async Task<T> AsAsync<T>(Guid? person, Func<IServiceProvider, Task<T>> work)
    {
        await using var scope = Services.CreateAsyncScope();
        var services = scope.ServiceProvider;
        var signIn = services.GetRequiredService<SignInManager<ClubUser>>();
        var principal = person is { } id ? await signIn.CreateUserPrincipalAsync((await signIn.UserManager.FindByIdAsync(id.ToString()))!) : new ClaimsPrincipal(new ClaimsIdentity());
        if (person is not null)
        {
            await services.GetRequiredService<SignIns>().StartAsync(principal, "test", TestContext.Current.CancellationToken);
        }

        ((IHostEnvironmentAuthenticationStateProvider)services.GetRequiredService<AuthenticationStateProvider>()).SetAuthenticationState(Task.FromResult(new AuthenticationState(principal)));
        var result = await work(services);
        await services.GetRequiredService<SignIns>().EndAsync(principal, TestContext.Current.CancellationToken);
        return result;
    }

    internal async Task<T> InClubAsync<T>(Guid club, Func<IServiceProvider, Task<T>> work)
    {
        await using var scope = Services.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentClub>().Use(club);
        return await work(scope.ServiceProvider);
    }

    private static Squad Squad(string name, AgeGroup? age) => new(
        Guid.Empty, name, age ?? AgeGroup.Senior, TrainingAge.Some,
        [new Practice(IsoDayOfWeek.Tuesday, new LocalTime(19, 30), 90, Practice.UsualPhases)], IsoDayOfWeek.Saturday, new LocalTime(14, 0), []);

    internal static async Task<Guid> AddCoachAsync(IServiceProvider services, Guid club, ClubRole role, string? password = Password)
    {
        var id = NewId.Create();
        var email = $"{id:N}@example.org";
        var users = services.GetRequiredService<UserManager<ClubUser>>();
        var coach = new ClubUser { Id = id, ClubId = club, DisplayName = $"Coach {role}", Email = email, UserName = email, Role = role };
        var made = password is null ? await users.CreateAsync(coach) : await users.CreateAsync(coach, password);
        Assert.True(made.Succeeded, string.Join("; ", made.Errors.Select(e => e.Description)));
        return id;
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex AntiforgeryToken();
}

internal static class ManySettings
{
    public static IWebHostBuilder UseSettings(this IWebHostBuilder host, IReadOnlyDictionary<string, string> settings) =>
        settings.Aggregate(host, (built, setting) => built.UseSetting(setting.Key, setting.Value));
}

/// <summary>A club in the test application.</summary>
internal sealed record TestClub(TestApp App, Guid Id, Guid Head, Guid Coach, Guid OwnSquad, Guid OtherSquad, Guid Player)
{
    /// <summary>Publishes the own squad's draft and waits for its feed.</summary>
    public Task PublishAsync() => App.InClubAsync(Id, async services =>
    {
        var cancel = TestContext.Current.CancellationToken;
        var plans = services.GetRequiredService<PlanStore>();
        var draft = (await plans.DraftAsync(OwnSquad, cancel)).OrThrow();
        foreach (var finding in draft.InTheWay.ToList())
        {
            (await services.GetRequiredService<AcceptedFindingStore>().AcceptAsync(OwnSquad, finding.Rule, finding.Week, "for the test", Head, cancel)).OrThrow();
        }

        (await plans.PublishAsync(OwnSquad, draft.Revision, NewId.Create(), Head, "", cancel)).OrThrow();
        await using var db = await services.GetRequiredService<IClubDbFactory>().OpenAsync(cancel);
        for (var i = 0; i < 300 && await db.Outbox.AnyAsync(o => o.SquadId == OwnSquad && o.Kind == OutboxKinds.RenderFeeds, cancel); i++)
        {
            await Task.Delay(100, cancel);
        }

        return true;
    });

    /// <summary>A further coach, without a password.</summary>
    public Task<Guid> NewCoachAsync(ClubRole role, params IReadOnlyList<Guid> squads) => App.InClubAsync(Id, async services =>
    {
        var cancel = TestContext.Current.CancellationToken;
        var store = services.GetRequiredService<SquadStore>();
        var person = await TestApp.AddCoachAsync(services, Id, role, null);
        foreach (var squad in squads)
        {
            (await store.SetCoachesAsync(squad, [.. await store.CoachesAsync(squad, cancel), person], Head, cancel)).OrThrow();
        }

        return person;
    });

    /// <summary>Of a player whose guardian agreed, if one is asked.</summary>
    public Task<NewLink> NewLinkAsync() => App.InClubAsync(Id, async services =>
    {
        await AgreeAsync();
        return (await services.GetRequiredService<LinkStore>().CreateAsync(OwnSquad, Player, "own phone", Head, TestContext.Current.CancellationToken)).OrThrow();
    });

    /// <summary>A guardian of the player agreed on paper.</summary>
    public Task<int> AgreeAsync() => App.InClubAsync(Id, async services =>
        (await services.GetRequiredService<GuardianStore>().AgreedOnPaperAsync(OwnSquad, [Player], new LocalDate(2026, 2, 1), Head, TestContext.Current.CancellationToken)).OrThrow());

    public Task RevokeAsync(Guid link) => App.InClubAsync(Id, async services =>
        (await services.GetRequiredService<LinkStore>().RevokeAsync(OwnSquad, Player, link, Head, TestContext.Current.CancellationToken)).OrThrow());

    public Task<string> SignInTokenAsync(Guid person) => App.InClubAsync(Id, services =>
        services.GetRequiredService<SignInLinks>().CreateAsync(person, TestContext.Current.CancellationToken));

    /// <summary>A browser in which this coach is signed in.</summary>
    public async Task<HttpClient> SignedInAsync(Guid person)
    {
        var browser = App.Browser();
        var address = $"/account/sign-in-link/{await SignInTokenAsync(person)}";
        var answer = await TestApp.SendFormAsync(browser, address, address);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        return browser;
    }
}
