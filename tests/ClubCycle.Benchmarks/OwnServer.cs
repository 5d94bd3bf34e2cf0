using System.Net;
using System.Text.RegularExpressions;
using ClubCycle.Data;
using ClubCycle.Data.Embedded;
using ClubCycle.TestKit;

namespace ClubCycle.Benchmarks;

/// <summary>A durable PostgreSQL of a benchmark's own with our schema in it. It goes with the benchmark, however that ends.</summary>
internal sealed partial class OwnServer : IAsyncDisposable
{
    public const string Email = "robin@example.org";
    public const string Password = "window tractor lemon";

    private readonly TemporaryFolder _folder = TemporaryFolder.ReachableByAll("clubcycle-benchmark-");
    private readonly AfterUs _after;
    private PrivatePostgres _server = null!;

    private OwnServer() => _after = AfterUs.EndServer(_folder.Path);

    public string Folder => _folder.Path;

    public string ConnectionString => _server.ConnectionString;

    /// <summary>For preparing what the app never does.</summary>
    public string OwnerConnectionString => _server.OwnerConnectionString;

    public string BackupConnectionString => _server.BackupConnectionString;

    public string SuperuserConnectionString => _server.SuperuserConnectionString;

    public static async Task<OwnServer> StartAsync()
    {
        var own = new OwnServer();
        own._server = await PrivatePostgres.StartAsync(new PrivatePostgresSettings { DataFolder = own.Folder });
        await DataSetup.MigrateAsync(own.OwnerConnectionString);
        return own;
    }

    /// <summary>The real program over it, as a process.</summary>
    public Task<StartedProgram> WebAsync(params IReadOnlyList<string> settings)
    {
        var here = new DirectoryInfo(AppContext.BaseDirectory);
        var web = Path.Combine(here.Parent!.Parent!.FullName, "ClubCycle.Web", here.Name, "ClubCycle.Web.dll");
        return StartedProgram.StartAsync(web, address => ["serve", $"--urls={address}", .. settings], "/health/live", new Dictionary<string, string> { ["ConnectionStrings__ClubCycle"] = ConnectionString });
    }

    /// <summary>The first person makes the club and is signed in.</summary>
    public static async Task<HttpClient> SetUpAsync(string address)
    {
        var coach = Browser(address);
        using var answer = await SendAsync(coach, "/setup", ("club", "Benchmark club"), ("timeZone", "Europe/Lisbon"), ("firstWeekday", "Monday"), ("name", "Robin"), ("email", Email), ("password", Password));
        return answer.StatusCode == HttpStatusCode.Redirect ? coach : throw new InvalidOperationException($"/setup answered {answer.StatusCode}.");
    }

    public static HttpClient Browser(string address) => new(new SocketsHttpHandler { AllowAutoRedirect = false }) { BaseAddress = new Uri(address), Timeout = TimeSpan.FromMinutes(5) };

    /// <summary>Fetches a page and sends its form.</summary>
    public static async Task<HttpResponseMessage> SendAsync(HttpClient browser, string page, params IEnumerable<(string Name, string Value)> fields) =>
        await browser.PostAsync(page, Form(await TokenAsync(browser, page), fields));

    public static async Task<string> TokenAsync(HttpClient browser, string page) => Token().Match(await browser.GetStringAsync(page)).Groups[1].Value;

    public static FormUrlEncodedContent Form(string token, IEnumerable<(string Name, string Value)> fields) =>
        new(fields.Append(("__RequestVerificationToken", token)).Select(f => KeyValuePair.Create(f.Item1, f.Item2)));

    public static async Task<string> LoadAsync() => (await File.ReadAllTextAsync("/proc/loadavg")).Split(' ')[0];

    public async ValueTask DisposeAsync()
    {
        await _server.DisposeAsync();
        _after.Dispose();
        _folder.Dispose();
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex Token();
}
