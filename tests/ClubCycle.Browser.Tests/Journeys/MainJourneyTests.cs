using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace ClubCycle.Browser.Tests.Journeys;

/// <summary>
/// From a fresh instance to a match that moved on a player's phone: the head coach sets the club and its season up, a squad coach clones and changes the
/// template and publishes, a player's calendar follows.
/// </summary>
[Collection(Chromium.FirstLane)]
public sealed partial class MainJourneyTests(Chromium chromium) : IClassFixture<Chromium>
{
    [Fact]
    public async Task A_club_goes_from_nothing_to_a_calendar_that_follows_a_moved_match_by_keyboard_alone()
    {
        await using var app = await RunningApp.StartAsync("--empty");
        await using var office = await chromium.NewPersonAsync();
        var head = await office.NewPageAsync();

        // 1. The head coach makes the club, sets the season dates and adds squads.
        await head.GotoAsync(app.Address);
        await head.GetByLabel("Name of the club").WriteAsync("Quarry Bank Hockey");
        await head.GetByLabel("Time zone").WriteAsync("Europe/Dublin");
        await head.GetByLabel("Your name").WriteAsync("Robin");
        await head.GetByLabel("E-mail").WriteAsync("robin@example.org");
        foreach (var password in await head.Locator("input[type=password]").AllAsync())
        {
            await password.WriteAsync("a long enough sentence 42");
        }

        await head.GetByLabel("second factor").TickAsync();
        await head.GetByRole(AriaRole.Button, new() { Name = "Create the club" }).EnterAsync();
        await head.LiveAsync();
        await head.GetByText("No squads yet").WaitForAsync();
        await head.PictureAsync("journey-1-empty-board");

        var today = DateOnly.FromDateTime(TimeProvider.System.GetUtcNow().UtcDateTime);
        await head.OpenAsync(app.Address + "/seasons");
        await WriteDayAsync(head, "First stint: first match day", today.AddDays(70));
        await WriteDayAsync(head, "Last match day", today.AddDays(60), exact: true);
        await head.GetByText("Swap the two dates").WaitForAsync();
        await WriteDayAsync(head, "Last match day", today.AddDays(160), exact: true);
        await head.GetByText("No squad follows these dates yet").WaitForAsync();
        await head.GetByRole(AriaRole.Button, new() { Name = "Save the dates" }).EnterAsync();
        await head.GetByText("Drafts follow at once").WaitForAsync();

        await AddSquadAsync(head, app, "Women 1", "Senior");
        await AddSquadAsync(head, app, "Under 12", "U12");

        // 2. The board shows both squads' years.
        await head.OpenAsync(app.Address + "/");
        await Assertions.Expect(head.Locator(".board-row")).ToHaveCountAsync(2);
        await Assertions.Expect(head.Locator(".board-row .phase").First).ToBeVisibleAsync();
        await head.PictureAsync("journey-2-board");

        // 3. A squad coach is invited, clones the template, changes it, sees what it does and publishes.
        await head.OpenAsync(app.Address + "/settings");
        await head.Locator("#invite-name").WriteAsync("Sam");
        await head.Locator("#invite-email").WriteAsync("sam@example.org");
        await head.GetByRole(AriaRole.Button, new() { Name = "Make the sign-in link" }).EnterAsync();
        var invitation = await head.Locator("#invite-link").InputValueAsync();
        await head.GetByRole(AriaRole.Checkbox, new() { Name = "Women 1" }).TickAsync();
        await head.GetByText("squad coaches set").WaitForAsync();

        await using var home = await chromium.NewPersonAsync();
        var coach = await home.NewPageAsync();
        await coach.GotoAsync(invitation);
        await coach.GetByRole(AriaRole.Button, new() { NameRegex = SignIn() }).EnterAsync();
        await coach.LiveAsync();
        await coach.OpenAsync(app.Address + "/");
        await Assertions.Expect(coach.Locator(".board-row")).ToHaveCountAsync(1);
        await coach.OpenAsync(app.Address + "/templates");
        await coach.GetByRole(AriaRole.Button, new() { Name = "Clone Senior standard" }).EnterAsync();
        await coach.GetByLabel("Title of the clone").WriteAsync("Women, longer pre-season");
        await coach.GetByRole(AriaRole.Button, new() { Name = "Clone it" }).EnterAsync();
        await coach.GetByRole(AriaRole.Heading, new() { Name = "Women, longer pre-season" }).WaitForAsync();
        await coach.GetByLabel("Squad", new() { Exact = true }).ChooseAsync("Women 1");
        await coach.Locator(".year-chart").WaitForAsync();
        var length = coach.GetByLabel("Fixed weeks of Pre-season, gaps of 16 to 40 weeks");
        await length.WriteAsync("9");
        await coach.Keyboard.PressAsync("Tab");
        await coach.GetByText("Against the squad's draft").WaitForAsync();
        await coach.PictureAsync("journey-3-template");
        await coach.GetByRole(AriaRole.Button, new() { Name = "Save as version 2" }).EnterAsync();
        await coach.GetByText("Saved as version 2").WaitForAsync();
        await coach.GetByRole(AriaRole.Button, new() { Name = "Use version 2 for Women 1" }).EnterAsync();
        await coach.GetByText("uses this version").WaitForAsync();

        await coach.GetByRole(AriaRole.Link, new() { Name = "Women 1" }).First.EnterAsync();
        await coach.GetByRole(AriaRole.Button, new() { Name = "Publish to players" }).EnterAsync();
        await coach.GetByText("Published as revision 1").WaitForAsync();
        await coach.PictureAsync("journey-3-published");

        // 4. A player's link; the calendar is read, a match moves, the calendar is read again.
        await coach.GetByRole(AriaRole.Link, new() { Name = "Players" }).EnterAsync();
        await coach.GetByLabel("Names, one a line").WriteAsync("Alex P.");
        await coach.GetByRole(AriaRole.Button, new() { Name = "Add them" }).EnterAsync();
        await coach.GetByRole(AriaRole.Button, new() { Name = "New link for Alex P." }).EnterAsync();
        await coach.GetByRole(AriaRole.Button, new() { Name = "Make the link" }).EnterAsync();
        var feed = await coach.Locator("#feed-address").InnerTextAsync();
        await coach.PictureAsync("journey-4-link");

        using var phone = new HttpClient();
        var before = await EventsAsync(phone, feed, events => events.Count > 0);
        Assert.Contains(before.Values, e => e.Summary.StartsWith("Match", StringComparison.Ordinal));
        var match = before.First(e => e.Value.Summary.StartsWith("Match", StringComparison.Ordinal) && Day(e.Value) > today.AddDays(75));
        var to = Day(match.Value).AddDays(1);

        var squad = SquadPath().Match(coach.Url).Value;
        await coach.OpenAsync($"{app.Address}{squad}/week/{Day(match.Value):yyyy-MM-dd}");
        await coach.GetByRole(AriaRole.Button, new() { NameRegex = MoveMatch() }).EnterAsync();
        await WriteDayAsync(coach, "New day", to);
        await coach.GetByRole(AriaRole.Button, new() { Name = "Move it" }).EnterAsync();
        await coach.GetByText("Changes players do not see yet").WaitForAsync();
        await coach.PictureAsync("journey-4-moved");
        await coach.GetByRole(AriaRole.Button, new() { Name = "Publish to players" }).EnterAsync();
        await coach.GetByText("Published as revision 2").WaitForAsync();

        var after = await EventsAsync(phone, feed, events => events.TryGetValue(match.Key, out var moved) && Day(moved) == to);
        Assert.Equal(before.Keys.Order(), after.Keys.Order());
        Assert.True(after[match.Key].Sequence > match.Value.Sequence);
        Assert.All(before.Where(e => e.Value.Start == after[e.Key].Start), e => Assert.Equal(e.Value.Sequence, after[e.Key].Sequence));
        Assert.DoesNotContain("Alex", await phone.GetStringAsync(new Uri(feed), TestContext.Current.CancellationToken), StringComparison.Ordinal);

        Assert.True(await app.StopAsync("INT"), "Ctrl-C must end the program and its PostgreSQL");
    }

    private static async Task AddSquadAsync(IPage page, RunningApp app, string name, string ages)
    {
        await page.OpenAsync(app.Address + "/squads");
        await page.GetByRole(AriaRole.Button, new() { Name = "Add a squad" }).EnterAsync();
        await page.GetByLabel("Name", new() { Exact = true }).WriteAsync(name);
        await page.GetByLabel("Age group").ChooseAsync(ages);
        await page.GetByRole(AriaRole.Button, new() { Name = "Add a practice night" }).EnterAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Add and plan its year" }).EnterAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = name }).WaitForAsync();
        await page.Locator(".year-chart").WaitForAsync();
    }

    private static Task WriteDayAsync(IPage page, string label, DateOnly date, bool exact = false) =>
        page.GetByLabel(label, new() { Exact = exact }).First.WriteDayAsync(date);

    /// <summary>Polls like a calendar program until the feed is as expected; events by UID.</summary>
    private static async Task<Dictionary<string, Event>> EventsAsync(HttpClient phone, string feed, Func<Dictionary<string, Event>, bool> expected)
    {
        for (var polls = 0; polls < 150; polls++)
        {
            var text = (await phone.GetStringAsync(new Uri(feed), TestContext.Current.CancellationToken)).Replace("\r\n ", "", StringComparison.Ordinal);
            var events = EventBlock().Matches(text).Select(m => m.Value).ToDictionary(
                block => Value(block, "UID"),
                block => new Event(Value(block, "SUMMARY"), Value(block, "DTSTART"), int.Parse(Value(block, "SEQUENCE"), System.Globalization.CultureInfo.InvariantCulture)));
            if (expected(events))
            {
                return events;
            }

            await Task.Delay(200, TestContext.Current.CancellationToken);
        }

        throw new InvalidOperationException("The feed never became what was published.");
    }

    private static string Value(string block, string property) =>
        block.Split("\r\n").First(l => l.StartsWith(property + ":", StringComparison.Ordinal) || l.StartsWith(property + ";", StringComparison.Ordinal)).Split(':', 2)[1];

    // Matches start in the afternoon, so that the UTC day is the local day in Dublin.
    private static DateOnly Day(Event e) => DateOnly.ParseExact(e.Start[..8], "yyyyMMdd", System.Globalization.CultureInfo.InvariantCulture);

    private sealed record Event(string Summary, string Start, int Sequence);

    [GeneratedRegex("BEGIN:VEVENT.*?END:VEVENT", RegexOptions.Singleline)]
    private static partial Regex EventBlock();

    [GeneratedRegex("Sign in")]
    private static partial Regex SignIn();

    [GeneratedRegex("/squads/[0-9a-f-]{36}")]
    private static partial Regex SquadPath();

    [GeneratedRegex("^Move to… another day: Match")]
    private static partial Regex MoveMatch();
}
