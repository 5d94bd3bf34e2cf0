namespace ClubCycle.Browser.Tests;

/// <summary>What looks for barriers does find them, those of the whole page too.</summary>
[Collection(Chromium.FirstLane)]
public sealed class LookingTests(Chromium chromium) : IClassFixture<Chromium>
{
    [Fact]
    public async Task A_barrier_is_found()
    {
        await using var person = await chromium.NewPersonAsync();
        var page = await person.NewPageAsync();
        await page.SetContentAsync("""<!doctype html><html><body><div>loose</div><img src="x.png"><button></button><p style="color:#bbb;background:#fff">pale</p></body></html>""");

        var barriers = await page.BarriersAsync("a bad page");

        Assert.All(
            ["html-has-lang", "document-title", "landmark-one-main", "page-has-heading-one", "image-alt", "button-name", "color-contrast"],
            rule => Assert.Contains(barriers, barrier => barrier.StartsWith($"a bad page: {rule}:", StringComparison.Ordinal)));
    }
}
