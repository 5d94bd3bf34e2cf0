using ClubCycle.Planning.Languages;
using CsCheck;

namespace ClubCycle.Planning.Tests.Languages;

public class PhraseBookTests
{
    private static readonly PhraseBook Dutch = new(Language.Dutch, new Dictionary<string, string>
    {
        ["Rest well."] = "Rust goed uit.",
        ["Rest well. Then run."] = "Rust eerst uit en loop dan.",
        ["Week {0} of {1}: {2}"] = "Week {0} van {1}: {2}",
        ["{0} h after '{1}' on {2}"] = "{2}: {0} uur na ‘{1}’",
        ["{0} and {1}"] = "{0} en {1}",
        ["Look for: {0}."] = "Let op: {0}.",
        ["Core and easy run"] = "Romp en rustige duurloop",
        ["Monday"] = "maandag",
        ["Head up"] = "Hoofd omhoog",
        ["Knees soft"] = "Knieën los",
    });

    private static readonly string[] Pieces = ["Rest well.", "Week ", "{0}", " and ", "; ", "'", " h after '", "' on ", "Monday", ": ", ". ", "3", ""];

    [Theory]
    [InlineData("Rest well.", "Rust goed uit.")]
    [InlineData("Week 3 of 8: Rest well.", "Week 3 van 8: Rust goed uit.")]
    [InlineData("13.5 h after 'Core and easy run' on Monday", "maandag: 13,5 uur na ‘Romp en rustige duurloop’")]
    public void A_sentence_takes_its_places_along_each_in_the_language(string english, string dutch) => Assert.Equal(dutch, Dutch.Say(english));

    [Fact]
    public void Words_that_also_stand_between_places_do_not_cut_a_phrase_in_two() => Assert.Equal("Romp en rustige duurloop en maandag", Dutch.Say("Core and easy run and Monday"));

    [Fact]
    public void Sentences_in_a_row_are_said_one_by_one_and_the_longest_known_first() =>
        Assert.Equal("Rust eerst uit en loop dan. Rust goed uit. Week 1 van 2: Rust goed uit.", Dutch.Say("Rest well. Then run. Rest well. Week 1 of 2: Rest well."));

    [Fact]
    public void A_list_begins_its_items_small_and_is_known_all_the_same() => Assert.Equal("Let op: hoofd omhoog; knieën los.", Dutch.Say("Look for: head up; knees soft."));

    [Fact]
    public void German_keeps_the_capitals_of_its_nouns() =>
        Assert.Equal("Achte auf: Kopf hoch; Knie weich.", new PhraseBook(Language.German, new Dictionary<string, string> { ["Look for: {0}."] = "Achte auf: {0}.", ["Head up"] = "Kopf hoch", ["Knees soft"] = "Knie weich" }).Say("Look for: head up; knees soft."));

    [Theory]
    [InlineData("Nobody wrote this.", "Nobody wrote this.")]
    [InlineData("Rest well. Nobody wrote this. Rest well.", "Rust goed uit. Nobody wrote this. Rust goed uit.")]
    [InlineData("12 h after 'Old drill' on Monday", "maandag: 12 uur na ‘Old drill’")]
    [InlineData("", "")]
    [InlineData("3 × 12", "3 × 12")]
    public void What_the_book_does_not_know_stays_English(string english, string said) => Assert.Equal(said, Dutch.Say(english));

    [Fact]
    public void The_pieces_that_it_does_not_know_are_named() =>
        Assert.Equal(["Nobody wrote this.", "Old drill"], Dutch.Explain("Nobody wrote this. 12 h after 'Old drill' on Monday").Unknown);

    [Fact]
    public void A_phrase_is_filled_with_what_it_is_given_as_it_is() => Assert.Equal("Monday en Head up", Dutch.Fill("{0} and {1}", "Monday", "Head up"));

    [Fact]
    public void English_stays_as_it_is() => Assert.Equal("Week 3 of 8: Rest well.", PhraseBook.English.Say("Week 3 of 8: Rest well."));

    [Fact]
    public void Any_text_gets_an_answer_and_what_is_no_phrase_comes_back_unchanged() => Gen.String.Sample(
        text => PhraseBook.For(Language.German).Say("☃" + text) == "☃" + text || text.Contains(' ', StringComparison.Ordinal),
        iter: 2_000);

    [Fact]
    public void Sentences_put_together_at_random_get_an_answer() => Gen.Int[0, Pieces.Length - 1].Array[0, 12].Sample(
        pieces => Dutch.Say(string.Concat(pieces.Select(p => Pieces[p]))) is not null,
        iter: 2_000);

    [Fact]
    public void A_text_with_very_many_readings_takes_no_longer_than_others()
    {
        var watch = System.Diagnostics.Stopwatch.StartNew();

        Dutch.Say("x" + string.Concat(Enumerable.Repeat(" and x. x; x", 400)));

        Assert.InRange(watch.Elapsed.TotalSeconds, 0, 2);
    }

    [Fact]
    public void Threads_that_read_at_the_same_time_get_the_same()
    {
        var book = new PhraseBook(Language.Dutch, Dutch.Phrases);
        var said = new string[1_000];

        Parallel.For(0, said.Length, i => said[i] = book.Say($"Week {i % 50} of 60: Rest well."));

        Assert.All(said.Index(), s => Assert.Equal($"Week {s.Index % 50} van 60: Rust goed uit.", s.Item));
    }

    [Theory]
    [InlineData("{0}{1} runs")]
    [InlineData("{0} and {0}")]
    [InlineData("{0}: {1}")]
    public void A_phrase_whose_places_cannot_be_told_apart_is_a_mistake(string key) =>
        Assert.Throws<FormatException>(() => new PhraseBook(Language.Dutch, new Dictionary<string, string> { [key] = key }));
}
