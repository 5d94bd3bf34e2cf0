using Bunit;
using ClubCycle.Data;
using ClubCycle.Data.Live;
using ClubCycle.Web.Account;
using ClubCycle.Web.Parts;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;

namespace ClubCycle.Web.Tests.Parts;

public sealed class LiveTests : IAsyncDisposable
{
    private static readonly Guid Club = NewId.Create();
    private static readonly Guid Squad = NewId.Create();

    private readonly BunitContext context = new();
    private readonly ClubChanges changes = new();
    private readonly CurrentClub club = new();
    private int fetched;

    public LiveTests()
    {
        club.Use(Club);
        context.Services.AddSingleton(changes);
        context.Services.AddSingleton(club);
        context.Services.AddSingleton<Microsoft.Extensions.Logging.ILogger<Live>>(NullLogger<Live>.Instance);
        context.SetRendererInfo(new RendererInfo("Server", true));
    }

    private static CancellationToken Cancel => Xunit.TestContext.Current.CancellationToken;

    public ValueTask DisposeAsync() => context.DisposeAsync();

    [Fact]
    public async Task A_change_that_concerns_the_screen_fetches_it_again()
    {
        Render();

        changes.Tell(new ClubChange(Club, Squad, null));

        await FetchedAsync(1);
    }

    [Fact]
    public async Task Many_changes_in_a_moment_fetch_once()
    {
        Render();

        for (var i = 0; i < 100; i++)
        {
            changes.Tell(new ClubChange(Club, Squad, null));
        }

        await FetchedAsync(1);
    }

    [Fact]
    public async Task A_change_that_comes_while_fetching_is_fetched_too()
    {
        var going = new TaskCompletionSource();
        Render(work: () => fetched == 1 ? going.Task : Task.CompletedTask);
        changes.Tell(new ClubChange(Club, Squad, null));
        await UntilAsync(() => fetched == 1);

        changes.Tell(new ClubChange(Club, Squad, null));
        going.SetResult();

        await FetchedAsync(2);
    }

    [Fact]
    public async Task What_is_typed_stays_and_a_line_offers_to_show_the_change()
    {
        var part = Render(typing: true);

        changes.Tell(new ClubChange(Club, Squad, NewId.Create()));

        await part.WaitForElementAsync(".live-notice");
        Assert.Equal(0, fetched);
        await part.Find("button").ClickAsync(new());
        Assert.Equal((1, 0), (fetched, part.FindAll(".live-notice").Count));
    }

    [Fact]
    public async Task Following_others_is_no_use_of_the_page_and_asking_to_see_it_is()
    {
        List<bool> used = [];
        var part = Render(work: () =>
        {
            used.Add(AtTheScreen.IsSomebody);
            return Task.CompletedTask;
        });
        changes.Tell(new ClubChange(Club, Squad, null));
        await FetchedAsync(1);
        part.Render(p => p.Add(c => c.Typing, true));
        changes.Tell(new ClubChange(Club, Squad, null));
        await part.WaitForElementAsync(".live-notice");

        await part.Find("button").ClickAsync(new());

        Assert.Equal([false, true], used);
    }

    [Fact]
    public async Task A_persons_own_change_shows_no_line()
    {
        var part = Render(typing: true);

        changes.Tell(new ClubChange(Club, Squad, club.Origin));

        await Task.Delay(500, Cancel);
        Assert.Empty(part.FindAll(".live-notice"));
    }

    [Fact]
    public async Task A_change_of_something_else_than_what_is_typed_shows_no_line()
    {
        var asked = 0;
        var part = Render(typing: true, isOld: () => Task.FromResult(++asked > 1));

        changes.Tell(new ClubChange(Club, Squad, null));
        await UntilAsync(() => asked == 1);
        Assert.Empty(part.FindAll(".live-notice"));
        changes.Tell(new ClubChange(Club, Squad, null));

        await part.WaitForElementAsync(".live-notice");
    }

    [Fact]
    public async Task A_screen_that_was_left_fetches_no_more()
    {
        Render();
        await context.DisposeComponentsAsync();

        changes.Tell(new ClubChange(Club, Squad, null));

        await Task.Delay(500, Cancel);
        Assert.Equal(0, fetched);
    }

    [Fact]
    public async Task A_screen_that_turns_to_another_squad_follows_that_one()
    {
        var part = Render();
        var other = NewId.Create();
        part.Render(p => p.Add(c => c.Squad, other));

        changes.Tell(new ClubChange(Club, Squad, null));
        await Task.Delay(500, Cancel);
        Assert.Equal(0, fetched);
        changes.Tell(new ClubChange(Club, other, null));

        await FetchedAsync(1);
    }

    [Fact]
    public async Task While_the_database_is_away_the_screen_stays_and_follows_again_later()
    {
        Render(work: () => fetched == 1 ? throw new InvalidOperationException("transient", new NpgsqlException("gone")) : Task.CompletedTask);
        changes.Tell(new ClubChange(Club, Squad, null));
        await UntilAsync(() => fetched == 1);

        changes.TellAll();

        await FetchedAsync(2);
    }

    [Fact]
    public async Task A_page_that_is_only_drawn_asks_for_nothing()
    {
        context.SetRendererInfo(new RendererInfo("Static", false));
        Render();

        changes.Tell(new ClubChange(Club, Squad, null));

        await Task.Delay(500, Cancel);
        Assert.Equal(0, fetched);
    }

    private IRenderedComponent<Live> Render(bool typing = false, Func<Task<bool>>? isOld = null, Func<Task>? work = null) => context.Render<Live>(p => p
        .Add(c => c.Squad, Squad).Add(c => c.Typing, typing).Add(c => c.IsOld, isOld)
        .Add(c => c.OnChange, () =>
        {
            fetched++;
            return work?.Invoke() ?? Task.CompletedTask;
        }));

    private async Task FetchedAsync(int times)
    {
        await UntilAsync(() => fetched >= times);
        await Task.Delay(400, Cancel);
        Assert.Equal(times, fetched);
    }

    /// <summary>Fetching draws nothing here, so there is no drawing to wait for.</summary>
    private static async Task UntilAsync(Func<bool> happened)
    {
        for (var i = 0; !happened(); i++)
        {
            Assert.True(i < 1000, "It did not happen within ten seconds.");
            await Task.Delay(10, Cancel);
        }
    }
}
