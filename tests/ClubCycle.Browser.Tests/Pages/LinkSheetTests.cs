using System.Diagnostics;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace ClubCycle.Browser.Tests.Pages;

/// <summary>A sheet of cards for a whole squad, printed by a real browser over https and read by a foreign reader of codes.</summary>
[Collection(Chromium.FirstLane)]
public sealed partial class LinkSheetTests(Chromium chromium, FirstDemo first) : IClassFixture<Chromium>, IAsyncLifetime
{
    private const int Players = 30;
    private const int CardsPerPage = 8;

    /// <summary>CSS fixes an inch at 96 px.</summary>
    private const double PixelsPerMillimetre = 96 / 25.4;

    private RunningApp _app = null!;

    public async ValueTask InitializeAsync() => _app = await RunningApp.StartAsync("--demo", https: true, like: await first.StoppedAsync());

    public ValueTask DisposeAsync() => _app.DisposeAsync();

    [Fact]
    public async Task Every_printed_code_reads_as_the_address_beneath_it()
    {
        var reader = Program("zbarimg");
        var renderer = Program("pdftoppm");
        await using var head = await chromium.NewPersonAsync();
        var page = await head.NewPageAsync();
        await MakeSheetAsync(page);
        await UseLongNamesAsync(page);
        var addresses = await page.Locator(".card-address").AllInnerTextsAsync();
        var folder = Directory.CreateTempSubdirectory("clubcycle-sheet-");
        var pdf = Path.Combine(folder.FullName, "sheet.pdf");
        await page.PdfAsync(new PagePdfOptions { Path = pdf, PreferCSSPageSize = true, PrintBackground = false });
        Directory.CreateDirectory(Looking.Pictures);
        string[] pages = [];
        HashSet<string> read = [];

        // As sharp as two cameras see it: a phone tries many frames, and the reader misses a code now and then in one.
        foreach (var dotsPerInch in new[] { "200", "300" })
        {
            await RunAsync(renderer, "-r", dotsPerInch, "-png", pdf, Path.Combine(folder.FullName, "page-" + dotsPerInch));
            pages = Directory.GetFiles(folder.FullName, $"page-{dotsPerInch}*.png");
            read.UnionWith((await RunAsync(reader, ["--quiet", "--raw", "--nodbus", "-Sdisable", "-Sqrcode.enable", .. pages])).Split('\n', StringSplitOptions.RemoveEmptyEntries));
        }

        foreach (var picture in pages)
        {
            File.Copy(picture, Path.Combine(Looking.Pictures, "printed-sheet-" + Path.GetFileName(picture)), overwrite: true);
        }

        folder.Delete(recursive: true);

        Assert.Equal(Players, addresses.Count);
        Assert.All(addresses, address => Assert.StartsWith("https://", address, StringComparison.Ordinal));
        Assert.Equal(addresses.Order(StringComparer.Ordinal), read.Order(StringComparer.Ordinal));
        Assert.Equal((Players + CardsPerPage - 1) / CardsPerPage, pages.Length);
    }

    [Fact]
    public async Task Codes_are_large_enough_nothing_is_cut_off_and_surnames_need_a_tick()
    {
        await using var head = await chromium.NewPersonAsync();
        var page = await head.NewPageAsync();
        await MakeSheetAsync(page);
        var wrong = await page.LookEverywhereAsync("link-sheet-made");
        await page.SetViewportSizeAsync(1366, 900);
        var shortNames = await page.Locator(".card-name").AllInnerTextsAsync();
        await page.GetByLabel("Print names as they stand").CheckAsync();
        await page.Locator(".card-name").GetByText("Ottoline").First.WaitForAsync();
        await UseLongNamesAsync(page);
        await page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });

        // Four modules of quiet zone on each side belong to the picture and not to the code.
        var codes = await page.EvaluateAsync<double[]>("[...document.querySelectorAll('.card .qr')].map(code => code.getBoundingClientRect().width * (code.viewBox.baseVal.width - 8) / code.viewBox.baseVal.width)");
        var cut = await page.EvaluateAsync<string[]>("[...document.querySelectorAll('.card')].filter(card => card.scrollHeight > card.clientHeight + 1 || card.scrollWidth > card.clientWidth + 1).map(card => card.innerText)");

        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
        Assert.All(codes, width => Assert.InRange(width / PixelsPerMillimetre, 30, 42));
        Assert.Empty(cut);
        Assert.Contains("Maximiliana-Theodora-Alexandrina O.", shortNames);
        Assert.DoesNotContain(shortNames, name => name.Contains("Ottoline", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_link_is_made_with_options_shown_once_and_changed_without_another_address()
    {
        await using var head = await chromium.NewPersonAsync();
        var page = await head.NewPageAsync();
        await OpenPlayersAsync(page);
        await page.GetByRole(AriaRole.Button, new() { NameRegex = NewLink() }).First.ClickAsync();
        await page.GetByLabel("Whose phone or computer").FillAsync("own phone");
        await page.GetByLabel("Hockey practices").UncheckAsync();
        await page.GetByLabel("Reminder").SelectOptionAsync("60");
        List<string> wrong = [.. await page.LookEverywhereAsync("link-editor")];
        await page.GetByRole(AriaRole.Button, new() { Name = "Make the link" }).ClickAsync();
        await page.Locator("#feed-address").WaitForAsync();
        var feed = await page.Locator("#feed-address").InnerTextAsync();
        wrong.AddRange(await page.LookEverywhereAsync("link-fresh"));
        await page.GetByRole(AriaRole.Button, new() { Name = "I have handed it over" }).ClickAsync();
        await page.Locator("button[aria-label^='Links of']").First.ClickAsync();
        await page.GetByText("sessions and matches, with places, reminder 1 hour before").WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { NameRegex = ChangeOwnPhone() }).ClickAsync();
        foreach (var kind in new[] { "Training sessions", "Matches" })
        {
            await page.GetByLabel(kind, new() { Exact = true }).UncheckAsync();
        }

        await page.GetByRole(AriaRole.Button, new() { Name = "Save it" }).ClickAsync();
        await page.GetByText("Tick at least one").WaitForAsync();
        await page.GetByLabel("Hockey practices").CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Save it" }).ClickAsync();
        await page.GetByText("practices only, with places, reminder 1 hour before").WaitForAsync();
        wrong.AddRange(await page.LookEverywhereAsync("links-of-a-player"));

        Assert.Equal(200, (await head.APIRequest.GetAsync(feed)).Status);
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    private static async Task UseLongNamesAsync(IPage page) => await page.EvaluateAsync(
        """
        for (const line of document.querySelectorAll('.card-squad')) line.textContent = 'The second indoor squad of the under-sixteens and their friends';
        for (const line of document.querySelectorAll('.card-club')) line.textContent = 'Hockey club of the long valley beyond the northern hills and the wide river';
        """);

    /// <summary>The senior squad filled up with long names, and new links for all of it.</summary>
    private async Task MakeSheetAsync(IPage page)
    {
        await OpenPlayersAsync(page);
        var there = await page.Locator("td a[href*='/players/']").CountAsync();
        var names = Enumerable.Range(1, Players - there).Select(i => i == 1 ? "Maximiliana-Theodora-Alexandrina von und zu Ottoline-Marchbank" : $"Bartholomew{i} Featherington-Hollingsworth").Select(n => n[..Math.Min(n.Length, 60)]);
        await page.GetByLabel("Names, one a line").FillAsync(string.Join('\n', names));
        await page.GetByRole(AriaRole.Button, new() { Name = "Add them" }).ClickAsync();
        await page.GetByText("Maximiliana").First.WaitForAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Links for many, to print" }).ClickAsync();
        await page.GetByLabel("Everyone (").CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = $"Make {Players} new links" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = $"Make {Players} links" }).ClickAsync();
        await page.Locator(".card").First.WaitForAsync();
    }

    private async Task OpenPlayersAsync(IPage page)
    {
        await page.GotoAsync(_app.Printed("Head coach sign-in"));
        await page.GetByRole(AriaRole.Button, new() { NameRegex = SignIn() }).ClickAsync();
        await page.LiveAsync();
        var year = await page.GetByRole(AriaRole.Link, new() { Name = "Women 1", Exact = true }).First.GetAttributeAsync("href");
        await page.OpenAsync(_app.Address + year![..^"/year".Length] + "/players");
    }

    private static string Program(string name)
    {
        var path = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Select(folder => Path.Combine(folder, name)).FirstOrDefault(File.Exists);
        Assert.SkipUnless(path is not null || Environment.GetEnvironmentVariable("CI") == "true", $"'{name}' is missing: bash deploy/test.sh gets it.");
        return path ?? throw new InvalidOperationException($"'{name}' is missing.");
    }

    private static async Task<string> RunAsync(string program, params IEnumerable<string> arguments)
    {
        var cancel = TestContext.Current.CancellationToken;
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true })!;
        var output = await process.StandardOutput.ReadToEndAsync(cancel);
        await process.WaitForExitAsync(cancel);
        return output;
    }

    [GeneratedRegex("Sign in")]
    private static partial Regex SignIn();

    [GeneratedRegex("^New link for")]
    private static partial Regex NewLink();

    [GeneratedRegex("^Change own phone of")]
    private static partial Regex ChangeOwnPhone();
}
