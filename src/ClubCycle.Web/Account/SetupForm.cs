using System.Net.Mail;
using ClubCycle.Data.Accounts;
using ClubCycle.Planning;
using NodaTime;

namespace ClubCycle.Web.Account;

/// <summary>What a person typed into the set-up page.</summary>
public sealed record SetupForm(string Club, string TimeZone, IsoDayOfWeek FirstWeekday, string Name, string Email, string Password, bool AsksSecondFactor)
{
    public static SetupForm Empty { get; } = new("", "", IsoDayOfWeek.Monday, "", "", "", true);

    public static IReadOnlyList<IsoDayOfWeek> Weekdays { get; } =
    [
        IsoDayOfWeek.Monday, IsoDayOfWeek.Tuesday, IsoDayOfWeek.Wednesday, IsoDayOfWeek.Thursday, IsoDayOfWeek.Friday, IsoDayOfWeek.Saturday, IsoDayOfWeek.Sunday,
    ];

    /// <summary>Area and city; the short and outdated ids of the database are accepted but not offered.</summary>
    public static IReadOnlyList<string> TimeZones { get; } = [.. DateTimeZoneProviders.Tzdb.Ids.Where(id => id.Contains('/') && !id.StartsWith("Etc/", StringComparison.Ordinal))];

    /// <summary>What concerns the person; the club is checked where it is made, the password by the account rules.</summary>
    public IEnumerable<Problem> CheckPerson()
    {
        if (TypedText.NameProblem(Name, ClubUser.LongestName, "account.name", "name", "name") is { } unreadable)
        {
            yield return unreadable with { Message = $"{unreadable.Message} It is shown beside what you publish." };
        }

        if (Email.Length > 254 || !MailAddress.TryCreate(Email.Trim(), out _))
        {
            yield return new Problem("account.email-wrong", "Write an e-mail address such as coach@example.org. You sign in with it.", "email");
        }
    }
}
