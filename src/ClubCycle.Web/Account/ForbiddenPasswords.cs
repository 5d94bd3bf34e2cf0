using ClubCycle.Data.Accounts;
using Microsoft.AspNetCore.Identity;

namespace ClubCycle.Web.Account;

/// <summary>Refuses passwords that are easy to guess here: words of the sport, of this program and of the person (OWASP ASVS 5.0, 6.2.11).</summary>
internal sealed class ForbiddenPasswords : IPasswordValidator<ClubUser>
{
    public const int Shortest = 12;
    public const int Longest = 256;

    private static readonly string[] Words = ["hockey", "clubcycle", "password", "passwort", "wachtwoord", "qwerty", "letmein", "123456", "abcdef"];

    public Task<IdentityResult> ValidateAsync(UserManager<ClubUser> manager, ClubUser user, string? password) =>
        Task.FromResult(Fault(user, password ?? "") is { } fault
            ? IdentityResult.Failed(new IdentityError { Code = "password.forbidden", Description = fault })
            : IdentityResult.Success);

    private static string? Fault(ClubUser user, string password)
    {
        if (password.Length > Longest)
        {
            return $"A password has at most {Longest} characters.";
        }

        if (password.Distinct().Count() < 5)
        {
            return "The password repeats the same few characters. Take several words that do not belong together.";
        }

        // What is left after taking the easy words out must still be a password's worth.
        var rest = password;
        foreach (var word in Words.Concat(WordsOf(user)))
        {
            rest = rest.Replace(word, "", StringComparison.OrdinalIgnoreCase);
        }

        return rest.Length < Shortest - 4 ? "The password is made of words that are easy to guess here. Take several words that do not belong together." : null;
    }

    private static IEnumerable<string> WordsOf(ClubUser user) =>
        user.DisplayName.Split(' ').Concat((user.Email ?? "").Split('@', '.')).Where(word => word.Length >= 4);
}
