using System.Security.Cryptography;
using System.Text;

namespace ClubCycle.Planning;

/// <summary>Ids that follow from what they name, so that the same plan always carries the same ids.</summary>
public static class NamedId
{
    private const byte Separator = 0x1F;

    /// <summary>A version 8 UUID (RFC 9562, section 5.8) from the SHA-256 of the parts. Not a secret.</summary>
    public static Guid From(params ReadOnlySpan<string> parts)
    {
        var length = parts.Length;
        foreach (var part in parts)
        {
            length += Encoding.UTF8.GetMaxByteCount(part.Length);
        }

        var text = length <= 1024 ? stackalloc byte[1024] : new byte[length];
        var used = 0;
        foreach (var part in parts)
        {
            if (used > 0)
            {
                text[used++] = Separator;
            }

            used += Encoding.UTF8.GetBytes(part, text[used..]);
        }

        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(text[..used], hash);
        hash[6] = (byte)((hash[6] & 0x0F) | 0x80);
        hash[8] = (byte)((hash[8] & 0x3F) | 0x80);
        return new Guid(hash[..16], bigEndian: true);
    }
}
