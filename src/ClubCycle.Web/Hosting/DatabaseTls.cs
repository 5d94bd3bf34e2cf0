using System.Net;
using ClubCycle.Data.Embedded;
using Microsoft.Extensions.Options;
using Npgsql;

namespace ClubCycle.Web.Hosting;

/// <summary>A database on another machine is spoken to over TLS with a certificate that is checked: what the driver does unasked falls back to plain text without a word.</summary>
internal static class DatabaseTls
{
    /// <summary>Setting <c>Database:AllowUnencrypted</c>: for a network that nobody else is on, such as that of containers.</summary>
    public const string Allow = "Database:AllowUnencrypted";

    public static string Checked(string connectionString, bool allowed, string name = DatabaseChoice.ConnectionName)
    {
        NpgsqlConnectionStringBuilder address;
        try
        {
            address = new NpgsqlConnectionStringBuilder(connectionString);
        }
        catch (Exception malformed) when (malformed is ArgumentException or FormatException)
        {
            // Told, without its text, by whoever opens it.
            return connectionString;
        }

        var far = (address.Host ?? "").Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).FirstOrDefault(host => !IsThisMachine(host));
        return far is null || address.SslMode == SslMode.VerifyFull || allowed
            ? connectionString
            : throw new OptionsValidationException(Allow, typeof(DatabaseTls),
                [$"The database on {far} would be spoken to without checking who it is, perhaps in the clear. Write SSL Mode=VerifyFull into ConnectionStrings__{name} (Root Certificate=FILE names an authority of your own), or set Database__AllowUnencrypted=true if nobody else is on that network."]);
    }

    private static bool IsThisMachine(string host) =>
        host[0] is '/' or '@'
        || NameOf(host) is var name && (name.Equals("localhost", StringComparison.OrdinalIgnoreCase) || (IPAddress.TryParse(name, out var address) && IPAddress.IsLoopback(address)));

    /// <summary>Without the port that may stand behind each host.</summary>
    private static string NameOf(string host) =>
        host.StartsWith('[') ? host[1..host.IndexOf(']', StringComparison.Ordinal)]
        : host.Count(sign => sign == ':') == 1 ? host[..host.IndexOf(':', StringComparison.Ordinal)]
        : host;
}
