namespace ClubCycle.Planning.Tests;

public sealed class TypedTextTests
{
    private const string Family = "\U0001F468\u200D\U0001F469\u200D\U0001F467\u200D\U0001F466";

    [Theory]
    [InlineData("O'Neil-Łaski")]
    [InlineData("محمد")]
    [InlineData("ÅSA \U0001F3D1")]
    [InlineData(Family)]
    [InlineData("می\u200Cخواهم")]
    [InlineData("Null")]
    [InlineData("<b>{{7*7}}${jndi:\\;,:")]
    [InlineData("=1+1")]
    public void A_name_that_people_have_is_taken_as_it_is(string name)
    {
        Assert.Null(Name(name));
        Assert.Equal(name, TypedText.Tidy(name));
    }

    [Theory]
    [InlineData("", "x.name-missing")]
    [InlineData(" \u3000", "x.name-missing")]
    [InlineData("\u200B\u200D", "x.name-missing")]
    [InlineData("\u3164\u2800", "x.name-missing")]
    [InlineData("\u0301", "x.name-missing")]
    [InlineData("a\0b", "x.name-control-character")]
    [InlineData("a\tb", "x.name-control-character")]
    [InlineData("a\u001Bb", "x.name-control-character")]
    [InlineData("a\u0085b", "x.name-control-character")]
    [InlineData("a\u2028b", "x.name-control-character")]
    [InlineData("a\u202Eb", "x.name-direction")]
    [InlineData("a\u2066b", "x.name-direction")]
    public void A_name_that_cannot_be_kept_as_it_is_is_refused(string name, string code) => Assert.Equal(code, Name(name)?.Code);

    // Not as theory data: half a pair does not survive being written down as a test's name.
    [Fact]
    public void Half_a_surrogate_pair_is_refused_wherever_it_stands() => Assert.All(
        new[] { "a\uD83C", "\uDFD1a", "\uDFD1\uD83C", "a\uD83C\uD83C\uDFD1", "a\uFFFE" }, text => Assert.Equal("x.name-broken", Name(text)?.Code));

    [Fact]
    public void A_length_counts_characters_as_people_see_them_as_far_as_there_is_room()
    {
        Assert.Null(Name(string.Concat(Enumerable.Repeat("\U0001F3D1", 100))));
        Assert.Contains("has 101 characters", Name(string.Concat(Enumerable.Repeat("\U0001F3D1", 101)))!.Message, StringComparison.Ordinal);
        Assert.Contains("has 20 characters, some of them made of several", Name(string.Concat(Enumerable.Repeat(Family, 20)))!.Message, StringComparison.Ordinal);
        Assert.Equal("x.name-too-long", Name("a" + new string('\u0301', 5_000))!.Code);
    }

    [Fact]
    public void The_same_word_from_two_keyboards_is_the_same_text() => Assert.Equal("José", TypedText.Tidy("Jose\u0301 "));

    [Fact]
    public void A_note_may_have_lines_and_nothing_else_that_controls()
    {
        Assert.Null(TypedText.NoteProblem("one\r\ntwo\n", 20, "x.note", "note", "note"));
        Assert.Equal("one\ntwo", TypedText.Tidy("one\r\ntwo\n"));
        Assert.Equal("x.note-control-character", TypedText.NoteProblem("one\ttwo", 20, "x.note", "note", "note")?.Code);
    }

    [Fact]
    public void A_start_never_ends_in_half_a_character() => Assert.Equal("a\U0001F3D1", TypedText.Start("a\U0001F3D1b", 2));

    private static Problem? Name(string text) => TypedText.NameProblem(text, 100, "x.name", "name", "x");
}
