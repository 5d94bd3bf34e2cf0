using Bunit;
using ClubCycle.Web.Parts;

namespace ClubCycle.Web.Tests.Parts;

public sealed class PageHeaderTests
{
    [Fact]
    public async Task A_screen_has_one_heading_and_a_way_up()
    {
        await using var context = new BunitContext();

        var header = context.Render<PageHeader>(p => p
            .Add(c => c.Title, "Senior women")
            .Add(c => c.Lead, "The year.")
            .Add(c => c.UpHref, "/")
            .Add(c => c.UpName, "Year board"));

        Assert.Equal("Senior women", Assert.Single(header.FindAll("h1")).TextContent);
        Assert.Equal("/", header.Find("a").GetAttribute("href"));
        Assert.EndsWith("Year board", header.Find("a").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_buttons_there_is_no_empty_row_for_them()
    {
        await using var context = new BunitContext();

        Assert.Empty(context.Render<PageHeader>(p => p.Add(c => c.Title, "Squads")).FindAll(".page-header-actions"));
    }
}
