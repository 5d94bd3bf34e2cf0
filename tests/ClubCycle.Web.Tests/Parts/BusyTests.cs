using Bunit;
using ClubCycle.Web.Parts;

namespace ClubCycle.Web.Tests.Parts;

public sealed class BusyTests
{
    [Fact]
    public async Task Progress_has_a_name_and_says_how_far_it_is()
    {
        await using var context = new BunitContext();

        var busy = context.Render<Busy>(p => p.Add(c => c.Name, "Planning squads").Add(c => c.Done, 9).Add(c => c.Of, 24));

        Assert.Equal("status", busy.Find(".busy").GetAttribute("role"));
        Assert.Equal("Planning squads", busy.Find("progress").GetAttribute("aria-label"));
        Assert.Equal("9", busy.Find("progress").GetAttribute("value"));
        Assert.Equal("Planning squads, 9 of 24", busy.Find("span").TextContent);
    }

    [Fact]
    public async Task Progress_of_unknown_length_claims_no_value()
    {
        await using var context = new BunitContext();

        Assert.Null(context.Render<Busy>(p => p.Add(c => c.Name, "Making the wall chart")).Find("progress").GetAttribute("value"));
    }
}
