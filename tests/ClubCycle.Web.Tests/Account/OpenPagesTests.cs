using System.Net;
using ClubCycle.Data;
using ClubCycle.Data.Live;
using ClubCycle.Data.Plans;
using ClubCycle.Planning.Replanning;
using ClubCycle.TestKit.Live;
using ClubCycle.Web.Account;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace ClubCycle.Web.Tests.Account;

/// <summary>Live pages over a real connection, opened by no browser.</summary>
public sealed class OpenPagesTests : IClassFixture<TestApp>
{
    private const string Any = "/seasons";

    private readonly TestApp app;

    public OpenPagesTests(TestApp app)
    {
        this.app = app;
        app.OnTheWire = true;
    }

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Who_has_twenty_pages_open_is_told_to_close_some_and_others_go_on()
    {
        var club = await app.NewClubAsync();
        var (head, coach) = (await club.SignedInAsync(club.Head), await club.SignedInAsync(club.Coach));
        await using var pages = await OpenAsync(head, OpenPages.Most);

        var refused = await head.GetAsync(Any, Cancel);
        await using var others = await OpenAsync(coach, 1);

        Assert.Equal(HttpStatusCode.TooManyRequests, refused.StatusCode);
        var sentence = await refused.Content.ReadAsStringAsync(Cancel);
        Assert.Contains("You have 20 pages of ClubCycle open. Close tabs or windows that you do not need, then load this page again.", sentence, StringComparison.Ordinal);
        Assert.DoesNotContain("blazor.web", sentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_page_that_was_begun_before_the_twentieth_opened_is_ended()
    {
        var club = await app.NewClubAsync();
        var head = await club.SignedInAsync(club.Head);
        var begun = await head.GetStringAsync(Any, Cancel);
        await using var pages = await OpenAsync(head, OpenPages.Most);

        await using var late = await LivePage.OpenAsync(head, Any, begun);

        await late.Ended.WaitAsync(TimeSpan.FromMinutes(1), Cancel);
        await pages.StillThereAsync();
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_page_that_is_closed_or_loses_its_connection_makes_room_for_another(bool closed)
    {
        var club = await app.NewClubAsync();
        var head = await club.SignedInAsync(club.Head);
        await using var pages = await OpenAsync(head, OpenPages.Most);

        if (closed)
        {
            await pages.First.CloseAsync();
        }
        else
        {
            await pages.First.DisposeAsync();
        }

        await UntilAsync(async () => (await head.GetAsync(Any, Cancel)).StatusCode == HttpStatusCode.OK);
    }

    [Fact]
    public async Task A_page_that_floods_the_server_with_events_is_ended_and_the_person_s_others_go_on()
    {
        var club = await app.NewClubAsync();
        await using var pages = await OpenAsync(await club.SignedInAsync(club.Head), 2);
        var button = (await pages.First.DrawnAsync("onclick")).Element;

        for (var i = 0; i < 2_000 && !pages.First.Ended.IsCompleted; i++)
        {
            await pages.First.TryPressAsync(button);
        }

        await pages.First.Ended.WaitAsync(TimeSpan.FromMinutes(1), Cancel);
        await pages.StillThereAsync(but: pages.First);
    }

    [Fact]
    public async Task A_page_that_never_says_that_it_has_drawn_is_sent_no_more_and_others_follow()
    {
        var club = await app.NewClubAsync();
        var head = await club.SignedInAsync(club.Head);
        await using var silent = await LivePage.OpenAsync(head, Any, acknowledges: false);
        await using var lively = await LivePage.OpenAsync(head, Any);
        await lively.DrawnAsync("onclick");

        await UntilAsync(() =>
        {
            app.Services.GetRequiredService<ClubChanges>().Tell(new ClubChange(club.Id, null, null));
            return Task.FromResult(lively.Updates > 20);
        });

        Assert.InRange(silent.Updates, 1, 10);
    }

    [Fact]
    public async Task A_page_that_only_follows_others_is_idle_and_one_whose_buttons_are_pressed_is_not()
    {
        var club = await app.NewClubAsync();
        var week = new LocalDate(2026, 5, 4);
        await app.InClubAsync(club.Id, async stores => (await stores.GetRequiredService<PinStore>().PinAsync(club.OwnSquad, new Pin(week, "recovery.easy-run.1", week, null), club.Head, Cancel)).OrThrow());
        await using var page = await LivePage.OpenAsync(await club.SignedInAsync(club.Head), $"/squads/{club.OwnSquad}/week/2026-05-04");
        var undo = (await page.DrawnAsync("data-undo")).Element;
        var seen = Instant.FromDateTimeOffset(TimeProvider.System.GetUtcNow()) - Duration.FromMinutes(20);
        await IdleSinceAsync(seen);

        await page.PressAsync(undo);
        await page.DrawnAsync("data-redo");
        Assert.True(await LastUseAsync() > seen + Duration.FromMinutes(19));

        await Task.Delay(1_000, Cancel);
        await IdleSinceAsync(seen);
        var before = page.Updates;
        await UntilAsync(() =>
        {
            app.Services.GetRequiredService<ClubChanges>().Tell(new ClubChange(club.Id, club.OwnSquad, null));
            return Task.FromResult(page.Updates > before + 3);
        });
        Assert.InRange(await LastUseAsync(), seen - Duration.FromSeconds(1), seen + Duration.FromSeconds(1));

        Task<int> IdleSinceAsync(Instant at) => SignInOfAsync(club.Head, row => row.ExecuteUpdateAsync(s => s.SetProperty(r => r.SeenAt, at), Cancel));

        Task<Instant> LastUseAsync() => SignInOfAsync(club.Head, row => row.Select(s => s.SeenAt).SingleAsync(Cancel));
    }

    private async Task<T> SignInOfAsync<T>(Guid person, Func<IQueryable<Data.Accounts.SignInRow>, Task<T>> work)
    {
        await using var db = await app.Services.GetRequiredService<IDbContextFactory<ClubCycleDb>>().CreateDbContextAsync(Cancel);
        return await work(db.SignIns.Where(s => s.UserId == person));
    }

    private static async Task<Pages> OpenAsync(HttpClient browser, int count)
    {
        Pages pages = new();
        for (var i = 0; i < count; i++)
        {
            var page = await LivePage.OpenAsync(browser, Any);
            pages.Add(page);
            await page.DrawnAsync("onclick");
        }

        return pages;
    }

    private static async Task UntilAsync(Func<Task<bool>> happened)
    {
        for (var i = 0; !await happened(); i++)
        {
            Assert.True(i < 300, "It did not happen within a minute.");
            await Task.Delay(200, Cancel);
        }
    }

    private sealed class Pages : IAsyncDisposable
    {
        private readonly List<LivePage> _pages = [];

        public LivePage First => _pages[0];

        public void Add(LivePage page) => _pages.Add(page);

        public async Task StillThereAsync(LivePage? but = null)
        {
            await Task.Delay(500, Cancel);
            Assert.All(_pages.Where(p => p != but), p => Assert.False(p.Ended.IsCompleted));
        }

        public async ValueTask DisposeAsync()
        {
            foreach (var page in _pages)
            {
                await page.DisposeAsync();
            }
        }
    }
}
