using ClubCycle.Planning;
using Microsoft.AspNetCore.Identity;

namespace ClubCycle.Web.Account;

/// <summary>What the account library refuses, in the words of this program.</summary>
internal static class AccountProblems
{
    public static Problem WrongSignIn { get; } = new("account.sign-in-refused", "E-mail and password do not belong together. Check both; the password knows capitals.");

    public static Problem LockedOut { get; } = new("account.locked", "There were too many wrong tries for this account. Wait five minutes, or use a sign-in link from your head coach.");

    public static Problem Busy { get; } = new("account.busy", "Very many people try to sign in just now. Wait half a minute and try again.");

    public static Problem WrongCode { get; } = new("account.code-refused", "This code does not count. Wait for the next one in your app, or use a recovery code that you have not used before.");

    public static Problem PasskeyRefused { get; } = new("account.passkey-refused", "This passkey does not count here. Try again, or sign in with your password.");

    public static Problem TooManyPasskeys { get; } = new("account.passkeys-full", $"There are {Passkeys.Most} passkeys already. Remove one that you no longer use.");

    public static Problem WrongPassword { get; } = new("account.password-wrong", "The password is not right. Try again.", "current");

    public static IReadOnlyList<Problem> Of(IdentityResult refused) => [.. refused.Errors.Select(Of)];

    private static Problem Of(IdentityError error) => error.Code switch
    {
        nameof(IdentityErrorDescriber.PasswordTooShort) => new("account.password-short", $"The password needs at least {ForbiddenPasswords.Shortest} characters.", "password"),
        ForbiddenPasswords.TooLong => new("account.password-long", $"A password has at most {ForbiddenPasswords.Longest} characters.", "password"),
        ForbiddenPasswords.Repeats => new("account.password-repeats", "The password repeats the same few characters. Take several words that do not belong together.", "password"),
        ForbiddenPasswords.InUse => new("account.password-in-use", "This password is on the lists that guessing programs try. Take several words that do not belong together.", "password"),
        ForbiddenPasswords.Easy => new("account.password-easy", "The password is made of words that are easy to guess here. Take several words that do not belong together.", "password"),
        nameof(IdentityErrorDescriber.PasswordMismatch) => new("account.password-wrong", "The current password is not right. Try again.", "current"),
        nameof(IdentityErrorDescriber.DuplicateUserName) or nameof(IdentityErrorDescriber.DuplicateEmail) =>
            new("account.email-taken", "There is an account with this e-mail already. Use another one.", "email"),
        nameof(IdentityErrorDescriber.InvalidEmail) or nameof(IdentityErrorDescriber.InvalidUserName) =>
            new("account.email-wrong", "Write an e-mail address such as coach@example.org.", "email"),
        _ => new("account.refused", error.Description),
    };
}
