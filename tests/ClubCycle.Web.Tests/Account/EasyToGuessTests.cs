using ClubCycle.Web.Account;

namespace ClubCycle.Web.Tests.Account;

public sealed class EasyToGuessTests
{
    [Theory]
    [InlineData("summer2026!!!")]
    [InlineData("P@ssw0rd123456!")]
    [InlineData("welcome-welcome-")]
    [InlineData("lanternlanternlantern")]
    [InlineData("abcdefghijklmnop")]
    [InlineData("9876543210987654")]
    [InlineData("qwertyuiopasdfgh")]
    [InlineData("1qaz2wsx3edc4rfv")]
    [InlineData("poiuytrewqlkjhgf")]
    [InlineData("monkeydragon1234567")]
    [InlineData("xxxxxxxxxyyyyyyyyyzzzzzzzzz12")]
    public void Repetition_walks_and_padded_common_words_leave_too_little(string password) => Assert.InRange(EasyToGuess.Left(password, []), 0, 7);

    [Theory]
    [InlineData("window tractor lemon")]
    [InlineData("seven quiet lanterns")]
    [InlineData("vT9#kq2!mZw8")]
    [InlineData("83#91!77$20x64")]
    [InlineData("summer lanterns beside the river")]
    [InlineData("correcte paarden nieten")]
    public void Words_that_do_not_belong_together_and_random_signs_are_left_alone(string password) => Assert.InRange(EasyToGuess.Left(password, []), 8, 256);

    [Fact]
    public void More_than_3000_passwords_in_use_that_are_long_enough_are_known_whatever_their_capitals()
    {
        var lines = PasswordsInUse.Lines().ToList();

        Assert.InRange(lines.Distinct().Count(line => line.Length is >= ForbiddenPasswords.Shortest and <= ForbiddenPasswords.Longest), 3000, int.MaxValue);
        Assert.All(lines.Where(line => line.All(char.IsAscii)), line => Assert.True(PasswordsInUse.Has(line.ToUpperInvariant())));
        Assert.False(PasswordsInUse.Has("seven quiet lanterns"));
    }

    [Fact]
    public void Words_of_the_place_count_as_common_ones() => Assert.InRange(EasyToGuess.Left("Sandhaven-2026!", ["Sandhaven"]), 0, 7);
}
