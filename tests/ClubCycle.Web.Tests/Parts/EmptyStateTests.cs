using Bunit;
using ClubCycle.Web.Parts;

namespace ClubCycle.Web.Tests.Parts;

public sealed class EmptyStateTests
{
    [Fact]
    public async Task It_says_what_is_missing_what_to_do_and_offers_it()
    {
        await using var context = new BunitContext();

        var empty = context.Render<EmptyState>(p => p
            .Add(c => c.Title, "No squads yet")
            .AddChildContent("Add the first one.")
            .Add(c => c.Action, "<a href=\"squads/new\">Add a squad</a>"));

        Assert.Equal("No squads yet", empty.Find("h2").TextContent);
        Assert.Equal("Add the first one.", empty.Find("p").TextContent);
        Assert.Equal("squads/new", empty.Find(".buttons a").GetAttribute("href"));
    }
}
