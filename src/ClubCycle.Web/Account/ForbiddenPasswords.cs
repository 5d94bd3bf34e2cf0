using ClubCycle.Data.Accounts;
using ClubCycle.Data.Clubs;
using Microsoft.AspNetCore.Identity;

namespace ClubCycle.Web.Account;

/// <summary>Refuses passwords that are easy to guess here: ones that others have used, and words of the sport, of this program, of the club and of the person (OWASP ASVS 5.0, 6.2.4, 6.2.11 and 6.2.12).</summary>
internal sealed class ForbiddenPasswords(ClubStore clubs) : IPasswordValidator<ClubUser>
{
    public const int Shortest = 12;
    public const int Longest = 256;

    // Codes of what is refused; AccountProblems has the words.
    public const string TooLong = "password.too-long";
    public const string Repeats = "password.repeats";
    public const string InUse = "password.in-use";
    public const string Easy = "password.easy-to-guess";

    /// <summary>What must be left of a password once the parts that are easy to guess are taken out.</summary>
    private const int Enough = Shortest - 4;

    private static readonly string[] Words = ["hockey", "clubcycle", "training", "season"];

    public async Task<IdentityResult> ValidateAsync(UserManager<ClubUser> manager, ClubUser user, string? password) =>
        Fault(password ?? "", [.. Words, .. WordsOf(user), .. (await clubs.NameOfAsync(user.ClubId)).Split(' ').Where(IsLong)]) is { } code
            ? IdentityResult.Failed(new IdentityError { Code = code })
            : IdentityResult.Success;

    private static string? Fault(string password, IReadOnlyList<string> words) =>
        password.Length > Longest ? TooLong
        : password.Distinct().Count() < 5 ? Repeats
        : PasswordsInUse.Has(password) ? InUse
        : EasyToGuess.Left(password, words) < Enough ? Easy
        : null;

    private static IEnumerable<string> WordsOf(ClubUser user) => user.DisplayName.Split(' ').Concat((user.Email ?? "").Split('@', '.')).Where(IsLong);

    private static bool IsLong(string word) => word.Length >= 4;
}
