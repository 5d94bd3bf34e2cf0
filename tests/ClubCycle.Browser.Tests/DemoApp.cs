[assembly: AssemblyFixture(typeof(ClubCycle.Browser.Tests.FirstDemo))]

namespace ClubCycle.Browser.Tests;

/// <summary>A demo club that was made once and stopped: to make it is most of a start.</summary>
public sealed class FirstDemo : IAsyncDisposable
{
    private readonly Lazy<Task<RunningApp>> _app = new(async () =>
    {
        var app = await RunningApp.StartAsync("--demo");
        Assert.True(await app.StopAsync(), "The demo did not stop by itself");
        return app;
    });

    public Task<RunningApp> StoppedAsync() => _app.Value;

    public async ValueTask DisposeAsync()
    {
        if (_app.IsValueCreated)
        {
            await (await _app.Value).DisposeAsync();
        }
    }
}

/// <summary>The demo club, shared by the tests of a class.</summary>
public sealed class DemoApp(FirstDemo first) : IAsyncLifetime
{
    public RunningApp App { get; private set; } = null!;

    public async ValueTask InitializeAsync() => App = await RunningApp.StartAsync("--demo", like: await first.StoppedAsync());

    public ValueTask DisposeAsync() => App.DisposeAsync();
}
