using ClubCycle.Planning.Feeds;
using ClubCycle.Web.Features.Players;

namespace ClubCycle.Web.Tests.Features.Players;

public sealed class LinkTextTests
{
    [Theory]
    [InlineData("spm", "sessions, practices and matches")]
    [InlineData("sm", "sessions and matches")]
    [InlineData("m", "matches only")]
    [InlineData("spmld-r1440", "sessions, practices and matches, with places, days without times, reminder a day before")]
    [InlineData("pl-r15", "practices only, with places, reminder 15 minutes before")]
    [InlineData("s-r60", "sessions only, reminder 1 hour before")]
    [InlineData("s-r120", "sessions only, reminder 2 hours before")]
    [InlineData("sm-r60-es", "sessions and matches, reminder 1 hour before, in Español")]
    public void What_a_calendar_shows_is_told_in_words(string code, string words) => Assert.Equal(words, LinkText.Shows(FeedOptions.Of(code)!));

    [Theory]
    [InlineData("Ines Kestrel", "Ines K.")]
    [InlineData("Ana P.", "Ana P.")]
    [InlineData("Ines von der Kestrel", "Ines K.")]
    [InlineData("  Bo  ", "Bo")]
    [InlineData("Zoë Ōtani", "Zoë Ō.")]
    public void A_card_shows_a_first_name_and_an_initial(string stored, string shown) => Assert.Equal(shown, LinkText.ShortName(stored));

    [Fact]
    public void Every_reminder_on_offer_has_words_of_its_own() => Assert.Equal(FeedOptions.Reminders.Count, FeedOptions.Reminders.Select(LinkText.Before).Distinct().Count());
}
