namespace ClubCycle.Browser.Tests;

/// <summary>The demo club, shared by the tests of a class.</summary>
public sealed class DemoApp : IAsyncLifetime
{
    public RunningApp App { get; private set; } = null!;

    public async ValueTask InitializeAsync() => App = await RunningApp.StartAsync("--demo");

    public ValueTask DisposeAsync() => App.DisposeAsync();
}
