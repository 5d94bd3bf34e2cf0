using System.Globalization;
using System.Text.Json;
using ClubCycle.TestKit;
using Microsoft.Playwright;

namespace ClubCycle.Benchmarks;

/// <summary>The year board of a full club as a coach's first visit of the day finds it: on a laptop's screen, with a processor a quarter as fast as this one's and nothing kept.</summary>
internal static class ScreenFigures
{
    private const int Width = 1366;
    private const int Visits = 5;
    private const int Slower = 4;

    /// <summary>Takes notes of what the page does from its first byte on.</summary>
    private const string Notes =
        """
        window.notes = { lcp: 0, what: '', cls: 0, slowest: 0, slowestName: '' };
        new PerformanceObserver(list => list.getEntries().forEach(e => { notes.lcp = e.startTime; notes.what = e.element?.className || e.element?.localName || e.url; }))
          .observe({ type: 'largest-contentful-paint', buffered: true });
        new PerformanceObserver(list => list.getEntries().forEach(e => { if (!e.hadRecentInput) notes.cls += e.value; }))
          .observe({ type: 'layout-shift', buffered: true });
        new PerformanceObserver(list => list.getEntries().forEach(e => { if (e.duration > notes.slowest) { notes.slowest = e.duration; notes.slowestName = e.name; } }))
          .observe({ type: 'event', buffered: true, durationThreshold: 16 });
        """;

    public static async Task PrintAsync()
    {
        await using var server = await OwnServer.StartAsync();
        await using var app = await server.WebAsync();
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = Environment.GetEnvironmentVariable("CLUBCYCLE_CHROMIUM") ?? "/usr/bin/chromium",
            Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
        var cookies = await SetUpAsync(browser, app.Address);
        await FullClub.FillAsync(server.ConnectionString, new WallClock());

        var load = await OwnServer.LoadAsync();
        List<Visit> visits = [];
        for (var i = 0; i <= Visits; i++)
        {
            var visit = await VisitAsync(browser, cookies, app.Address);
            if (i == 0)
            {
                Say("year board, first visit after the start, largest contentful paint ms", visit.LargestPaint);
            }
            else
            {
                visits.Add(visit);
            }
        }

        var one = visits[0];
        Say("year board, squads", one.Rows);
        Say("year board, weeks", one.Weeks);
        Say($"year board, largest contentful paint ms, processor {Slower} times slower", Median(v => v.LargestPaint));
        Console.WriteLine($"year board, what is painted largest: {one.Largest}");
        Say("year board, first byte ms", Median(v => v.FirstByte));
        Say("year board, buttons answer after ms", Median(v => v.Live));
        Say("year board, slowest interaction ms", visits.Max(v => v.SlowestInteraction));
        Console.WriteLine($"year board, slowest interaction: {visits.MaxBy(v => v.SlowestInteraction)!.SlowestName}");
        Say("year board, first visit KB transferred", Median(v => v.Kilobytes));
        Say("year board, page itself KB transferred", Median(v => v.PageKilobytes));
        Say("year board, first visit KB over the web socket, before its compression", Median(v => v.SocketKilobytes));
        Say("year board, elements", visits.Max(v => v.Elements));
        Console.WriteLine($"year board, layout shift: {visits.Max(v => v.Shift).ToString("0.000", CultureInfo.InvariantCulture)}");
        Say("year board, sideways scroll px", visits.Max(v => v.Overflow));
        Console.WriteLine($"load average at the start: {load}");
        Console.WriteLine($"load average at the end: {await OwnServer.LoadAsync()}");

        double Median(Func<Visit, double> of) => visits.Select(of).Order().ElementAt(visits.Count / 2);
    }

    private static async Task<Visit> VisitAsync(IBrowser browser, IReadOnlyList<Cookie> cookies, string address)
    {
        await using var person = await browser.NewContextAsync(new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = Width, Height = 768 }, Locale = "en-GB" });
        await person.AddCookiesAsync(cookies);
        await person.AddInitScriptAsync(Notes);
        // A busy machine is slow, not wrong; the figures say how slow.
        person.SetDefaultTimeout(180_000);
        var page = await person.NewPageAsync();
        var devtools = await person.NewCDPSessionAsync(page);
        double bytes = 0, pageBytes = 0, socket = 0;
        string? document = null;
        devtools.Event("Network.requestWillBeSent").OnEvent += (_, e) => document ??= e!.Value.GetProperty("requestId").GetString();
        devtools.Event("Network.loadingFinished").OnEvent += (_, e) =>
        {
            var length = e!.Value.GetProperty("encodedDataLength").GetDouble();
            bytes += length;
            pageBytes += e.Value.GetProperty("requestId").GetString() == document ? length : 0;
        };
        devtools.Event("Network.webSocketFrameReceived").OnEvent += (_, e) => socket += BytesOf(e!.Value.GetProperty("response"));
        await devtools.SendAsync("Network.enable");
        await devtools.SendAsync("Emulation.setCPUThrottlingRate", new Dictionary<string, object> { ["rate"] = Slower });

        await page.GotoAsync(address + "/");
        await page.Locator("#page[data-live=yes]").WaitForAsync();
        await page.Locator(".board-row").First.WaitForAsync();
        var live = await page.EvaluateAsync<double>("performance.now()");

        // Late paints and shifts are counted too; a press would end both.
        await Task.Delay(1_000);
        var seen = await NotesAsync(page);
        var (kilobytes, pageKilobytes, socketKilobytes) = (bytes / 1_000, pageBytes / 1_000, socket / 1_000);
        var figures = await page.EvaluateAsync<JsonElement>(
            """
            ({
              elements: document.querySelectorAll('*').length, rows: document.querySelectorAll('.board-row').length, weeks: document.querySelectorAll('.board-week').length,
              overflow: document.documentElement.scrollWidth - document.documentElement.clientWidth, firstByte: performance.getEntriesByType('navigation')[0].responseStart
            })
            """);
        await UseAsync(page);
        var used = await NotesAsync(page);
        return new Visit(
            seen.GetProperty("lcp").GetDouble(), seen.GetProperty("what").GetString()!, figures.GetProperty("firstByte").GetDouble(), live, used.GetProperty("slowest").GetDouble(), used.GetProperty("slowestName").GetString()!,
            kilobytes, pageKilobytes, socketKilobytes, figures.GetProperty("elements").GetInt32(), figures.GetProperty("rows").GetInt32(), figures.GetProperty("weeks").GetInt32(), seen.GetProperty("cls").GetDouble(), figures.GetProperty("overflow").GetInt32());
    }

    /// <summary>What a head coach does with the board: walks it with keys and pointer, filters, compares two squads, and goes back to all.</summary>
    private static async Task UseAsync(IPage page)
    {
        await page.Locator("[role=grid]").FocusAsync();
        foreach (var key in (string[])["ArrowRight", "ArrowRight", "ArrowDown", "ArrowDown", "End", "Home", "PageDown", "PageUp", "Control+End", "Control+Home"])
        {
            await page.Keyboard.PressAsync(key);
            await Task.Delay(60);
        }

        for (var i = 0; i < 8; i++)
        {
            await page.Mouse.MoveAsync(400 + (i * 90), 330 + (i * 35));
            await Task.Delay(60);
        }

        foreach (var (list, choice) in (IReadOnlyList<(string, int)>)[("age", 1), ("age", 0), ("with", 2), ("with", 0), ("first", 1), ("second", 2), ("first", 0)])
        {
            await page.Locator($".toolbar select[name={list}]").SelectOptionAsync(new SelectOptionValue { Index = choice });
            await Task.Delay(400);
        }
    }

    private static async Task<JsonElement> NotesAsync(IPage page)
    {
        await page.EvaluateAsync("new Promise(done => requestAnimationFrame(() => setTimeout(done, 100)))");
        return await page.EvaluateAsync<JsonElement>("notes");
    }

    /// <summary>Binary frames come in base64.</summary>
    private static double BytesOf(JsonElement frame)
    {
        var data = frame.GetProperty("payloadData").GetString()!;
        return frame.GetProperty("opcode").GetInt32() == 2 ? data.Length * 0.75 : data.Length;
    }

    /// <summary>The first person makes the club; the other browsers take over the cookies.</summary>
    private static async Task<IReadOnlyList<Cookie>> SetUpAsync(IBrowser browser, string address)
    {
        await using var person = await browser.NewContextAsync(new BrowserNewContextOptions { Locale = "en-GB" });
        person.SetDefaultTimeout(180_000);
        var page = await person.NewPageAsync();
        await page.GotoAsync(address + "/setup");
        await page.GetByLabel("Name of the club").FillAsync("Benchmark club");
        await page.GetByLabel("Time zone").FillAsync("Europe/Lisbon");
        await page.GetByLabel("Your name").FillAsync("Robin");
        await page.GetByLabel("E-mail").FillAsync("robin@example.org");
        foreach (var password in await page.Locator("input[type=password]").AllAsync())
        {
            await password.FillAsync("window tractor lemon 42");
        }

        await page.GetByLabel("second factor").UncheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Create the club" }).ClickAsync();
        await page.Locator("#page[data-live=yes]").WaitForAsync();
        return [.. (await person.CookiesAsync()).Select(c => new Cookie { Name = c.Name, Value = c.Value, Domain = c.Domain, Path = c.Path, HttpOnly = c.HttpOnly })];
    }

    private static void Say(string name, double value) => Console.WriteLine($"{name}: {value.ToString("0", CultureInfo.InvariantCulture)}");

    private sealed record Visit(
        double LargestPaint, string Largest, double FirstByte, double Live, double SlowestInteraction, string SlowestName,
        double Kilobytes, double PageKilobytes, double SocketKilobytes, int Elements, int Rows, int Weeks, double Shift, int Overflow);
}
