using System.Buffers.Binary;
using System.Globalization;
using System.Security.Cryptography;
using NodaTime;

namespace ClubCycle.Web.Tests.Account;

/// <summary>What an authenticator app on a phone does: RFC 6238 with 30 seconds, six digits and SHA-1 (from memory).</summary>
internal static class Authenticator
{
    private const string Base32 = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";

    public static string Code(string key, Instant now) => Code(Bytes(key), now.ToUnixTimeSeconds() / 30);

    internal static string Code(byte[] key, long step)
    {
        var counter = new byte[8];
        BinaryPrimitives.WriteInt64BigEndian(counter, step);
#pragma warning disable CA5350 // The apps' algorithm, not our choice.
        var hash = HMACSHA1.HashData(key, counter);
#pragma warning restore CA5350
        var number = BinaryPrimitives.ReadInt32BigEndian(hash.AsSpan(hash[^1] & 15)) & 0x7FFFFFFF;
        return (number % 1_000_000).ToString("D6", CultureInfo.InvariantCulture);
    }

    private static byte[] Bytes(string key)
    {
        var bits = string.Concat(key.Select(sign => Convert.ToString(Base32.IndexOf(sign, StringComparison.Ordinal), 2).PadLeft(5, '0')));
        return [.. bits.Chunk(8).Where(b => b.Length == 8).Select(b => Convert.ToByte(new string(b), 2))];
    }
}
