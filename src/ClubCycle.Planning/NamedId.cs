using System.Security.Cryptography;
using System.Text;

namespace ClubCycle.Planning;

/// <summary>Ids that follow from what they name, so that the same plan always carries the same ids.</summary>
public static class NamedId
{
    /// <summary>A version 8 UUID (RFC 9562, section 5.8) from the SHA-256 of the parts. Not a secret.</summary>
    public static Guid From(params IReadOnlyList<string> parts)
    {
        var hash = SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\u001F', parts)));
        hash[6] = (byte)((hash[6] & 0x0F) | 0x80);
        hash[8] = (byte)((hash[8] & 0x3F) | 0x80);
        return new Guid(hash.AsSpan(0, 16), bigEndian: true);
    }
}
