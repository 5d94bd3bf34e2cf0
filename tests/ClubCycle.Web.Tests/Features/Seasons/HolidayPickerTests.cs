using Bunit;
using ClubCycle.Calendars.Holidays;
using ClubCycle.Planning.Seasons;
using ClubCycle.Web.Features.Seasons;
using NodaTime;

namespace ClubCycle.Web.Tests.Features.Seasons;

public sealed class HolidayPickerTests
{
    private static readonly DateInterval Days = new(new(2026, 12, 1), new(2027, 4, 30));

    private IReadOnlyList<ClosedDays> _chosen = [];

    [Fact]
    public async Task No_country_is_chosen_and_those_that_are_missing_are_told_what_to_do()
    {
        await using var context = new BunitContext();

        var picker = Render(context);

        Assert.Equal("", picker.Find("#holiday-country").GetAttribute("value") ?? "");
        Assert.Equal(PublicHolidays.Countries.Count + 1, picker.FindAll("#holiday-country option").Count);
        Assert.Contains("from a file, or enter them by hand", picker.Markup, StringComparison.Ordinal);
        Assert.Empty(picker.FindAll("input[type=checkbox]"));
    }

    [Fact]
    public async Task The_holidays_of_the_planned_days_are_shown_and_none_is_ticked()
    {
        await using var context = new BunitContext();
        var picker = Render(context);

        picker.Find("#holiday-country").Change("Ireland");

        Assert.Equal(["25 Dec 2026", "26 Dec 2026", "1 Jan 2027", "1 Feb 2027", "17 Mar 2027", "29 Mar 2027"], picker.FindAll("li").Select(li => li.TextContent.Trim()[4..].Split(',')[0]));
        Assert.All(picker.FindAll("li input"), box => Assert.False(box.HasAttribute("checked")));
        Assert.Empty(_chosen);
    }

    [Fact]
    public async Task A_country_with_regions_asks_for_one()
    {
        await using var context = new BunitContext();
        var picker = Render(context);
        picker.Find("#holiday-country").Change("Germany");

        picker.Find("#holiday-region").Change("Bavaria");

        Assert.Contains(picker.FindAll("li"), li => li.TextContent.Contains("6 Jan 2027", StringComparison.Ordinal));
    }

    [Fact]
    public async Task What_is_ticked_is_told_and_what_is_unticked_taken_back()
    {
        await using var context = new BunitContext();
        var picker = Render(context);
        picker.Find("#holiday-country").Change("Ireland");

        picker.FindAll("li input")[4].Change(true);
        Assert.Equal([new ClosedDays(new(2027, 3, 17), new(2027, 3, 17), "Lá Fhéile Pádraig")], _chosen);

        picker.FindAll("li input")[4].Change(false);
        Assert.Empty(_chosen);
    }

    [Fact]
    public async Task All_are_ticked_in_one_act_but_those_that_are_closed_already()
    {
        await using var context = new BunitContext();
        var picker = Render(context, new ClosedDays(new(2026, 12, 24), new(2027, 1, 2), "Winter"));
        picker.Find("#holiday-country").Change("Ireland");

        picker.Find("label.check input").Change(true);

        Assert.Equal([new(2027, 2, 1), new(2027, 3, 17), new(2027, 3, 29)], _chosen.Select(c => c.First));
        Assert.Equal(3, picker.FindAll("li").Count(li => li.TextContent.Contains("closed already", StringComparison.Ordinal)));
    }

    private IRenderedComponent<HolidayPicker> Render(BunitContext context, params ClosedDays[] closed) =>
        context.Render<HolidayPicker>(p => p.Add(c => c.Days, Days).Add(c => c.Closed, closed).Add(c => c.OnChosen, chosen => _chosen = chosen));
}
