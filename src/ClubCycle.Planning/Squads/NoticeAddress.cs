using System.Text.RegularExpressions;

namespace ClubCycle.Planning.Squads;

/// <summary>The one e-mail address that a squad's notices go to.</summary>
public static partial class NoticeAddress
{
    /// <summary>RFC 5321, 4.5.3.1.3, less its angle brackets.</summary>
    public const int Longest = 254;

    /// <summary>The address without spaces around it; null when none is wanted.</summary>
    public static Result<string?> Create(string? typed) => typed?.Trim(' ') switch
    {
        null or "" => new Result<string?>.Ok(null),
        { Length: <= Longest } address when Plausible().IsMatch(address) => new Result<string?>.Ok(address),
        _ => new Problem("squad.notice-address", "Write one e-mail address such as list@example.org, or leave it empty.", "squad.noticeAddress"),
    };

    /// <summary>A dot-atom of 64 characters at most (RFC 5322, 3.2.3; RFC 5321, 4.5.3.1.1), an at sign, and a host name with a dot: nothing that could end a header or name a second address.</summary>
    [GeneratedRegex(@"\A(?=[^@]{1,64}@)[A-Za-z0-9!#$%&'*+/=?^_`{|}~-]+(?:\.[A-Za-z0-9!#$%&'*+/=?^_`{|}~-]+)*@(?:[A-Za-z0-9](?:[A-Za-z0-9-]{0,61}[A-Za-z0-9])?\.)+[A-Za-z0-9](?:[A-Za-z0-9-]{0,61}[A-Za-z0-9])?\z", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Plausible();
}
