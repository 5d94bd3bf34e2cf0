using System.Buffers.Binary;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using NodaTime;

namespace ClubCycle.Web.Account;

/// <summary>The codes of authenticator apps: RFC 6238 with the apps' usual choices of 30 seconds, six digits and SHA-1 (from memory).</summary>
internal static class AppCode
{
    /// <summary>How long a code counts after the app has stopped showing it: for the way here, and for a phone whose clock is late. ASVS 6.5.5 asks for 30 seconds, RFC 6238 allows a whole step more (from memory).</summary>
    public static readonly Duration Late = Duration.FromSeconds(10);

    private const string Base32 = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";
    private const long StepSeconds = 30;

    public static bool Counts(string key, string code, Instant now) => Is(key, code, now) | Is(key, code, now - Late);

    private static bool Is(string key, string code, Instant at) =>
        CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(code), Encoding.UTF8.GetBytes(Shown(Bytes(key), at.ToUnixTimeSeconds() / StepSeconds)));

    private static string Shown(byte[] key, long step)
    {
        var counter = new byte[sizeof(long)];
        BinaryPrimitives.WriteInt64BigEndian(counter, step);
#pragma warning disable CA5350 // The apps know no other; a keyed hash, which the weakness of SHA-1 does not touch.
        var hash = HMACSHA1.HashData(key, counter);
#pragma warning restore CA5350
        var number = BinaryPrimitives.ReadInt32BigEndian(hash.AsSpan(hash[^1] & 15)) & int.MaxValue;
        return (number % 1_000_000).ToString("D6", CultureInfo.InvariantCulture);
    }

    private static byte[] Bytes(string key)
    {
        var bytes = new byte[key.Length * 5 / 8];
        for (var bit = 0; bit < bytes.Length * 8; bit++)
        {
            var value = Base32.IndexOf(key[bit / 5], StringComparison.Ordinal);
            bytes[bit / 8] |= (byte)(((value >> (4 - (bit % 5))) & 1) << (7 - (bit % 8)));
        }

        return bytes;
    }
}
