using System.Xml.Linq;
using ClubCycle.Data;
using ClubCycle.TestKit;
using ClubCycle.Web.Account;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;
using NodaTime;

namespace ClubCycle.Web.Tests.Account;

/// <summary>ASVS 13.3.1: what lies in the database opens no session without the file beside it.</summary>
public sealed class KeyRingTests(TestApp app) : IClassFixture<TestApp>, IDisposable
{
    private const string Purpose = "what a session is sealed for";

    private readonly TemporaryFolder _folder = TemporaryFolder.ReachableByAll("clubcycle-keys-");

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task A_key_in_the_database_is_sealed()
    {
        await using var node = await NodeAsync(NewFile("a"));
        node.Protect("session");

        var key = Assert.Single(await KeysAsync());

        Assert.Equal("AES-256-GCM", Assert.Single(key.Descendants("sealed")).Attribute("with")!.Value);
        Assert.Empty(key.Descendants("masterKey"));
    }

    [Fact]
    public async Task With_the_same_file_every_node_opens_it()
    {
        var file = NewFile("a");
        await using var one = await NodeAsync(file);
        var session = one.Protect("session");

        await using var other = await NodeAsync(file, fresh: false);

        Assert.Equal("session", other.Unprotect(session));
    }

    [Fact]
    public async Task With_another_file_or_none_nothing_opens_it_and_work_goes_on_with_a_new_key()
    {
        await using var one = await NodeAsync(NewFile("a"));
        var session = one.Protect("session");

        foreach (var file in new[] { NewFile("b"), null })
        {
            await using var other = await NodeAsync(file, fresh: false);

            Assert.ThrowsAny<Exception>(() => other.Unprotect(session));
            Assert.Equal("new", other.Unprotect(other.Protect("new")));
        }
    }

    [Fact]
    public async Task A_key_from_before_that_lies_open_goes_on_opening_sessions()
    {
        await using var before = await NodeAsync(null);
        var session = before.Protect("session");
        Assert.Empty(Assert.Single(await KeysAsync()).Descendants("sealed"));

        await using var now = await NodeAsync(NewFile("a"), fresh: false);

        Assert.Equal("session", now.Unprotect(session));
    }

    [Fact]
    public void Beside_a_private_database_the_file_is_made_for_its_owner_only_and_stays()
    {
        var path = Path.Combine(_folder.Path, "data", "session-key");

        var made = KeyFile.ReadOrMake(path);

        Assert.Equal(made.Key, KeyFile.ReadOrMake(path).Key);
        Assert.Equal(SealedKey.KeyBytes, made.Key.Length);
        Assert.Matches("^[0-9a-f]{64}$", File.ReadAllText(path));
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(path));
        }
    }

    [Theory]
    [InlineData("missing", null)]
    [InlineData("short", "0123456789")]
    public void A_file_that_is_missing_or_too_short_stops_the_start_with_its_name(string name, string? text)
    {
        var path = Path.Combine(_folder.Path, name);
        if (text is not null)
        {
            File.WriteAllText(path, text);
        }

        var refused = Assert.Throws<OptionsValidationException>(() => KeyFile.Choose(Settings(path)));

        Assert.Contains(path, refused.Message, StringComparison.Ordinal);
    }

    private string NewFile(string name)
    {
        var path = Path.Combine(_folder.Path, name);
        File.WriteAllText(path, new string(name[0], 64));
        return path;
    }

    private static IConfiguration Settings(string? file) => new ConfigurationBuilder().AddInMemoryCollection(
        new Dictionary<string, string?> { ["ConnectionStrings:ClubCycle"] = "Host=given", [KeyFile.Setting] = file }).Build();

    /// <summary>The program's key ring over the database, as a node with this file has it.</summary>
    private async Task<Node> NodeAsync(string? file, bool fresh = true)
    {
        if (fresh)
        {
            await using var db = await app.Services.GetRequiredService<IDbContextFactory<ClubCycleDb>>().CreateDbContextAsync(Cancel);
            await db.DataProtectionKeys.ExecuteDeleteAsync(Cancel);
        }

        ServiceCollection services = new();
        services.AddLogging().AddSingleton<IClock>(app.Clock).AddClubCycleData(app.ConnectionString);
        services.AddKeyRing(Settings(file));
        return new Node(services.BuildServiceProvider());
    }

    private async Task<List<XElement>> KeysAsync()
    {
        await using var db = await app.Services.GetRequiredService<IDbContextFactory<ClubCycleDb>>().CreateDbContextAsync(Cancel);
        return [.. (await db.DataProtectionKeys.Select(k => k.Xml!).ToListAsync(Cancel)).Select(XElement.Parse)];
    }

    private sealed class Node(ServiceProvider services) : IAsyncDisposable
    {
        public string Protect(string text) => services.GetRequiredService<IDataProtectionProvider>().CreateProtector(Purpose).Protect(text);

        public string Unprotect(string text) => services.GetRequiredService<IDataProtectionProvider>().CreateProtector(Purpose).Unprotect(text);

        public ValueTask DisposeAsync() => services.DisposeAsync();
    }
}
