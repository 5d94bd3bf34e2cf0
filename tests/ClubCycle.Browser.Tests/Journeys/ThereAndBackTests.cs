using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using ClubCycle.TestKit;
using Microsoft.Playwright;
using Npgsql;

namespace ClubCycle.Browser.Tests.Journeys;

/// <summary>From a file of matches and a template to a published year, through second thoughts, and back; the database shows that only what changed was written.</summary>
[Collection(Chromium.SecondLane)]
public sealed partial class ThereAndBackTests(Chromium chromium) : IClassFixture<Chromium>
{
    private static readonly DateTime Today = TimeProvider.System.GetUtcNow().Date;

    [Fact]
    public async Task A_year_goes_from_a_file_and_a_template_to_players_and_back_and_only_what_changed_is_written()
    {
        await using var database = await TestDatabase.CreateAsync(_ => Task.CompletedTask, "empty");
        await using var app = await RunningApp.StartAsync("--demo", database);
        await using var head = await chromium.NewPersonAsync();
        var page = await head.NewPageAsync();
        await page.GotoAsync(app.Printed("Head coach sign-in"));
        await page.GetByRole(AriaRole.Button, new() { NameRegex = SignIn() }).ClickAsync();
        await page.LiveAsync();
        await AddSquadAsync(page, app, "Women 3");
        await AddSquadAsync(page, app, "Men 2");
        await page.OpenAsync(app.Address + "/squads");
        var squad = (await page.Locator("td a", new() { HasText = "Women 3" }).First.GetAttributeAsync("href"))!.Replace("/year", "", StringComparison.Ordinal);
        var id = Guid.Parse(squad.Split('/')[2]);
        var published = await SessionsAsync(database);

        // Forty matches from a file.
        await page.OpenAsync(app.Address + squad + "/matches");
        await page.ChooseFileAsync("#match-file", new FilePayload { Name = "matches.csv", MimeType = "text/csv", Buffer = Encoding.UTF8.GetBytes(string.Join("\r\n", Lines())) });
        await Assertions.Expect(page.GetByText("40 new, 0 changed")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Take these matches" }).ClickAsync();
        await Assertions.Expect(page.GetByText("40 matches taken")).ToBeVisibleAsync();

        // A clone of the template, edited, for this squad.
        await page.OpenAsync(app.Address + "/templates");
        await page.GetByRole(AriaRole.Button, new() { Name = "Clone Senior standard" }).ClickAsync();
        await page.GetByLabel("Title of the clone").FillAsync("There and back");
        await page.GetByRole(AriaRole.Button, new() { Name = "Clone it" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "There and back" }).WaitForAsync();
        var minutes = page.GetByLabel("Minutes of session 1 in In season");
        await minutes.FillAsync("45");
        await minutes.PressAsync("Tab");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save as version 2" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Use version 2 for Women 3" }).ClickAsync();
        await Assertions.Expect(page.GetByText("uses this version")).ToBeVisibleAsync();

        // Closed days for the whole club: what they do to each of twelve squads, before anything is saved.
        await page.OpenAsync(app.Address + "/seasons");
        await page.Locator("#closed-how").SelectOptionAsync("hand");
        await FillAsync(page, "#closed-first", Today.AddDays(25));
        await FillAsync(page, "#closed-last", Today.AddDays(27));
        await Assertions.Expect(page.Locator(".effect")).ToHaveCountAsync(12);
        Assert.Equal(published, await SessionsAsync(database));
        await page.GetByRole(AriaRole.Button, new() { NameRegex = Close() }).ClickAsync();
        await Assertions.Expect(page.GetByText("Drafts follow at once").First).ToBeVisibleAsync();
        Assert.Equal(published, await SessionsAsync(database));

        // Published: rows that say the same are not written again.
        await page.OpenAsync(app.Address + "/");
        await page.GetByRole(AriaRole.Button, new() { Name = "Publish all that are ready" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { NameRegex = Publish() }).ClickAsync();
        await page.GetByText("published as revision").First.WaitForAsync();
        var all = await SessionsAsync(database);
        AssertOnlyChangesWritten(published, all);
        Assert.Contains(all.Values, s => s.Squad != id && !published.ContainsValue(s));
        var year = Content(all, id);

        // A match moves: shown first, saved, undone, redone, published.
        var match = all.Values.Where(s => s.Squad == id && s.Kind == "Match" && !s.Cancelled && s.Date > DateOnly.FromDateTime(Today.AddDays(30))).MinBy(s => s.Date)!;
        await page.OpenAsync($"{app.Address}{squad}/week/{Iso(match.Date)}");
        await page.Locator(".week-session.week-match", new() { HasText = match.Title }).First.GetByRole(AriaRole.Button, new() { NameRegex = MoveTo() }).ClickAsync();
        await FillAsync(page, "#move-date", match.Date.AddDays(1).ToDateTime(TimeOnly.MinValue));
        await Assertions.Expect(page.GetByText("What that does to the plan")).ToBeVisibleAsync();
        await page.PictureAsync("there-and-back-move");
        await page.GetByRole(AriaRole.Button, new() { Name = "Move it" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Changes players do not see yet" })).ToBeVisibleAsync();
        await page.PictureAsync("there-and-back-moved");
        await page.GetByRole(AriaRole.Button, new() { NameRegex = UndoMove() }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { NameRegex = PlayersSee() })).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { NameRegex = RedoMove() }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Changes players do not see yet" })).ToBeVisibleAsync();
        Assert.Equal(all, await SessionsAsync(database));
        await page.GetByRole(AriaRole.Button, new() { Name = "Publish to players" }).ClickAsync();
        await page.GetByText("Published as revision").WaitForAsync();
        var moved = await SessionsAsync(database);
        AssertOnlyChangesWritten(all, moved);
        Assert.Equal(match.Date.AddDays(1), moved[match.Uid].Date);
        Assert.InRange(Written(all, moved), 1, 12);

        // And back: the year as it was published before.
        await page.OpenAsync(app.Address + squad + "/revisions");
        await page.GetByRole(AriaRole.Button, new() { NameRegex = GoBack() }).Nth(1).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { NameRegex = BackTo() }).WaitForAsync();
        await page.PictureAsync("there-and-back-revisions");
        Assert.Empty(await page.BarriersAsync("revisions"));
        await page.GetByRole(AriaRole.Button, new() { Name = "Make it the draft" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Publish to players" }).ClickAsync();
        await page.GetByText("Published as revision").WaitForAsync();
        var back = await SessionsAsync(database);
        AssertOnlyChangesWritten(moved, back);
        Assert.Equal(year, Content(back, id));
        TestContext.Current.SendDiagnosticMessage(
            $"Session rows of 12 squads: {all.Count}; written by publishing all: {Written(published, all)}, by a moved match: {Written(all, moved)}, by going back: {Written(moved, back)}");

        // An act with its effect and findings, as a person sees it.
        await page.OpenAsync($"{app.Address}{squad}/week/{Iso(match.Date)}");
        var watch = Stopwatch.StartNew();
        await page.GetByRole(AriaRole.Button, new() { NameRegex = Skip() }).First.ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { NameRegex = UndoSkip() }).WaitForAsync();
        TestContext.Current.SendDiagnosticMessage($"Skip a session, until its undo is offered: {watch.ElapsedMilliseconds} ms in the browser");
    }

    private static async Task AddSquadAsync(IPage page, RunningApp app, string name)
    {
        await page.OpenAsync(app.Address + "/squads");
        await page.GetByRole(AriaRole.Button, new() { Name = "Add a squad" }).ClickAsync();
        await page.Locator("#squad-name").FillAsync(name);
        await page.Locator("#squad-age").SelectOptionAsync("Senior");
        await page.GetByRole(AriaRole.Button, new() { Name = "Add and plan its year" }).ClickAsync();
        await page.Locator("h1", new() { HasText = name }).WaitForAsync();
    }

    /// <summary>The coming forty Saturdays on which the club's season has matches; most belong to years that are not planned yet.</summary>
    private static string[] Lines() =>
    [
        "Date;Time;Opponent",
        .. Enumerable.Range(1, 2000).Select(i => Today.AddDays(i)).Where(d => d.DayOfWeek == DayOfWeek.Saturday && d.Month is (10 or 11 or 1 or 2)).Take(40)
            .Select((d, i) => $"{d.ToString("dd/MM/yyyy", CultureInfo.InvariantCulture)};10:30;Riverside {i + 1}"),
    ];

    private static async Task FillAsync(IPage page, string field, DateTime day)
    {
        await page.Locator(field).FillAsync(day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        await page.Locator(field).DispatchEventAsync("change");
    }

    /// <summary>All rows that phones are told from, with the transaction that wrote each last.</summary>
    private static async Task<Dictionary<Guid, Row>> SessionsAsync(TestDatabase database)
    {
        await using var connection = new NpgsqlConnection(database.ConnectionString);
        await connection.OpenAsync(TestContext.Current.CancellationToken);
        await using var command = new NpgsqlCommand(
            "select set_config('app.club', '*', false); select uid, squad_id, date, start::text, minutes, title, kind, sequence, cancelled_at is not null, xmin::text from club.sessions", connection);
        await using var reader = await command.ExecuteReaderAsync(TestContext.Current.CancellationToken);
        await reader.NextResultAsync(TestContext.Current.CancellationToken);
        Dictionary<Guid, Row> rows = [];
        while (await reader.ReadAsync(TestContext.Current.CancellationToken))
        {
            rows.Add(reader.GetGuid(0), new Row(
                reader.GetGuid(0), reader.GetGuid(1), reader.GetFieldValue<DateOnly>(2), reader.GetString(3), reader.GetInt32(4), reader.GetString(5), reader.GetString(6), reader.GetInt32(7), reader.GetBoolean(8), reader.GetString(9)));
        }

        return rows;
    }

    private static int Written(Dictionary<Guid, Row> before, Dictionary<Guid, Row> after) => after.Values.Count(row => !before.TryGetValue(row.Uid, out var was) || was.Writer != row.Writer);

    private static void AssertOnlyChangesWritten(Dictionary<Guid, Row> before, Dictionary<Guid, Row> after)
    {
        foreach (var row in after.Values)
        {
            if (before.TryGetValue(row.Uid, out var was))
            {
                Assert.True((was with { Writer = row.Writer } == row) == (was.Writer == row.Writer), $"{was} was written again as {row}");
                Assert.InRange(row.Sequence - was.Sequence, 0, 1);
            }
        }

        Assert.Empty(before.Keys.Except(after.Keys));
    }

    private static List<(Guid, DateOnly, string, int, string)> Content(Dictionary<Guid, Row> rows, Guid squad) =>
        [.. rows.Values.Where(r => r.Squad == squad && !r.Cancelled).OrderBy(r => r.Date).ThenBy(r => r.Start).ThenBy(r => r.Uid).Select(r => (r.Uid, r.Date, r.Start, r.Minutes, r.Title))];

    private static string Iso(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private sealed record Row(Guid Uid, Guid Squad, DateOnly Date, string Start, int Minutes, string Title, string Kind, int Sequence, bool Cancelled, string Writer);

    [GeneratedRegex("sign in", RegexOptions.IgnoreCase)]
    private static partial Regex SignIn();

    [GeneratedRegex("^Close ")]
    private static partial Regex Close();

    [GeneratedRegex("^Publish \\d+ squads?$")]
    private static partial Regex Publish();

    [GeneratedRegex("^Move to")]
    private static partial Regex MoveTo();

    [GeneratedRegex("^Undo: Move match")]
    private static partial Regex UndoMove();

    [GeneratedRegex("^Redo: Move match")]
    private static partial Regex RedoMove();

    [GeneratedRegex("^Players see revision")]
    private static partial Regex PlayersSee();

    [GeneratedRegex("^Go back to it")]
    private static partial Regex GoBack();

    [GeneratedRegex("^Back to revision")]
    private static partial Regex BackTo();

    [GeneratedRegex("^Skip ")]
    private static partial Regex Skip();

    [GeneratedRegex("^Undo: Skip")]
    private static partial Regex UndoSkip();
}
