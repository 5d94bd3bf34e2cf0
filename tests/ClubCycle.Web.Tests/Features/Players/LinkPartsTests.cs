using Bunit;
using ClubCycle.Data.Links;
using ClubCycle.Planning;
using ClubCycle.Planning.Feeds;
using ClubCycle.Planning.Languages;
using ClubCycle.Planning.Squads;
using ClubCycle.Web.Features.Players;

namespace ClubCycle.Web.Tests.Features.Players;

public sealed class LinkPartsTests
{
    private const string Base = "https://club.example/";

    private static readonly LinkSheet Sheet = new("Sheet of 3 Mar 2026",
    [
        new("Ines Kestrel", new NewLink(new Guid(1, 0, 0, [0, 0, 0, 0, 0, 0, 0, 0]), "AbCdEfGhIjKlMnOpQrStUvWxYz0123456789AbCdEfG")),
        new("Bo L.", new NewLink(new Guid(2, 0, 0, [0, 0, 0, 0, 0, 0, 0, 0]), "BbCdEfGhIjKlMnOpQrStUvWxYz0123456789AbCdEfG")),
    ]);

    [Fact]
    public async Task What_is_ticked_is_what_the_link_will_show()
    {
        await using var context = new BunitContext();
        LinkForm form = new("", new FeedOptions());
        var fields = context.Render<LinkOptionFields>(p => p.Add(c => c.Id, "x").Add(c => c.Form, form));

        var boxes = fields.FindAll("input[type=checkbox]");
        await boxes[1].ChangeAsync(false);
        await fields.FindAll("input[type=checkbox]")[4].ChangeAsync(true);
        await fields.Find("select").ChangeAsync("120");

        Assert.Equal(new FeedOptions(Practices: false, DayOnly: true, ReminderMinutes: 120), form.Options);
        await fields.Find("select").ChangeAsync("");
        Assert.Null(form.Options.ReminderMinutes);
    }

    [Fact]
    public async Task Places_of_minors_are_off_and_the_reason_stands_beside_the_tick()
    {
        await using var context = new BunitContext();

        var fields = context.Render<LinkOptionFields>(p => p.Add(c => c.Id, "x").Add(c => c.Minors, true).Add(c => c.Form, new LinkForm("", FeedOptions.UsualFor(AgeGroup.Youth(18)))));

        var places = fields.FindAll("input[type=checkbox]")[3];
        Assert.False(places.HasAttribute("checked"));
        Assert.Contains("where children train", fields.Find("#" + places.GetAttribute("aria-describedby")).TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_reminder_promises_nothing()
    {
        await using var context = new BunitContext();

        var fields = context.Render<LinkOptionFields>(p => p.Add(c => c.Id, "x").Add(c => c.Form, new LinkForm("", new FeedOptions())));

        Assert.Contains("Many calendar programs ignore reminders", fields.Find("#" + fields.Find("select").GetAttribute("aria-describedby")).TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_language_is_offered_by_its_own_name_and_the_chosen_one_is_kept()
    {
        await using var context = new BunitContext();
        LinkForm form = new("", new FeedOptions(Language: Language.German));
        var fields = context.Render<LinkOptionFields>(p => p.Add(c => c.Id, "x").Add(c => c.Form, form));

        Assert.Equal([("en", "English"), ("nl", "Nederlands"), ("de", "Deutsch"), ("es", "Español")], fields.FindAll("#x-language option").Select(o => (o.GetAttribute("lang")!, o.TextContent)));
        Assert.Equal("German", fields.Find("#x-language").GetAttribute("value"));
        await fields.Find("#x-language").ChangeAsync("Dutch");

        Assert.Equal(new FeedOptions(Language: Language.Dutch), form.Options);
    }

    [Fact]
    public async Task The_form_says_that_the_page_comes_in_it_too()
    {
        await using var context = new BunitContext();

        var fields = context.Render<LinkOptionFields>(p => p.Add(c => c.Id, "x").Add(c => c.Form, new LinkForm("", new FeedOptions())));

        Assert.Contains("so does the player's page", fields.Find("#" + fields.Find("#x-language").GetAttribute("aria-describedby")).TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_editor_tells_why_a_link_was_refused_and_keeps_what_was_typed()
    {
        await using var context = new BunitContext();
        context.JSInterop.Mode = JSRuntimeMode.Loose;

        var editor = context.Render<LinkEditor>(p => p.Add(c => c.Title, "A new link for Bo").Add(c => c.Done, "Make the link").Add(c => c.Form, new LinkForm("own phone", new FeedOptions()))
            .Add(c => c.Problems, [new Problem("link.too-many", "This player has 10 live links.")]));

        Assert.Contains("This player has 10 live links.", editor.Markup, StringComparison.Ordinal);
        Assert.Equal("own phone", editor.Find("#link-name").GetAttribute("value"));
    }

    [Fact]
    public async Task A_card_carries_code_address_steps_squad_and_club_and_no_surname()
    {
        await using var context = new BunitContext();

        var card = Cards(context, fullNames: false).Find(".card");

        Assert.Equal("Ines K.", card.QuerySelector(".card-name")!.TextContent);
        Assert.Equal(Base + "p/" + Sheet.Links[0].Link.Token, card.QuerySelector(".card-address")!.TextContent);
        Assert.Equal(("Under 14", "Sandhaven"), (card.QuerySelector(".card-squad")!.TextContent, card.QuerySelector(".card-club")!.TextContent));
        Assert.Equal(3, card.QuerySelectorAll("ol li").Length);
        Assert.DoesNotContain("Kestrel", card.OuterHtml, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_coach_who_asks_for_them_gets_names_as_they_stand_in_the_roster()
    {
        await using var context = new BunitContext();

        Assert.Equal(["Ines Kestrel", "Bo L."], Cards(context, fullNames: true).FindAll(".card-name").Select(n => n.TextContent));
    }

    [Fact]
    public async Task Each_card_has_a_code_of_its_own()
    {
        await using var context = new BunitContext();

        var codes = Cards(context, fullNames: false).FindAll(".card .qr path").Select(p => p.GetAttribute("d")).ToList();

        Assert.Equal((2, 2), (codes.Count, codes.Distinct().Count()));
    }

    private static IRenderedComponent<SheetCards> Cards(BunitContext context, bool fullNames) => context.Render<SheetCards>(p => p
        .Add(c => c.Sheet, Sheet).Add(c => c.Squad, "Under 14").Add(c => c.Club, "Sandhaven").Add(c => c.BaseAddress, Base).Add(c => c.FullNames, fullNames));
}
