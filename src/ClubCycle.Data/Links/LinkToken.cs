using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace ClubCycle.Data.Links;

/// <summary>The secret part of a link: 32 random bytes as 43 characters that addresses may hold.</summary>
internal static class LinkToken
{
    public const int Bytes = 32;
    public const int Characters = 43;

    public static string Create() => Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(Bytes));

    /// <summary>What is stored of a token; null when the text cannot be one.</summary>
    /// <remarks>Of the text, not of the bytes it stands for: base64 can spell the same bytes in several ways, and only the one handed out may open the door.</remarks>
    public static byte[]? HashOf(string token) => token.Length == Characters ? SHA256.HashData(Encoding.UTF8.GetBytes(token)) : null;
}
