using System.Security.Cryptography;
using System.Text;
using System.Xml.Linq;
using Microsoft.AspNetCore.DataProtection.XmlEncryption;

namespace ClubCycle.Web.Account;

/// <summary>Seals keys of the ring with AES-256-GCM before they go to the database.</summary>
internal sealed class SealedKey(KeyFile file) : IXmlEncryptor
{
    public const int KeyBytes = 32;

    private const int NonceBytes = 12;
    private const int TagBytes = 16;

    public EncryptedXmlInfo Encrypt(XElement plaintextElement)
    {
        var plain = Encoding.UTF8.GetBytes(plaintextElement.ToString(SaveOptions.DisableFormatting));
        var whole = new byte[NonceBytes + TagBytes + plain.Length];
        RandomNumberGenerator.Fill(whole.AsSpan(0, NonceBytes));
        using AesGcm aes = new(file.Key, TagBytes);
        aes.Encrypt(whole.AsSpan(0, NonceBytes), plain, whole.AsSpan(NonceBytes + TagBytes), whole.AsSpan(NonceBytes, TagBytes));
        CryptographicOperations.ZeroMemory(plain);
        return new EncryptedXmlInfo(new XElement("sealed", new XAttribute("with", "AES-256-GCM"), Convert.ToBase64String(whole)), typeof(Opened));
    }

    /// <summary>Found by its name, which stands in the database beside each sealed key: it must stay as it is.</summary>
    internal sealed class Opened(IServiceProvider services) : IXmlDecryptor
    {
        public XElement Decrypt(XElement encryptedElement)
        {
            var file = services.GetService<KeyFile>() ?? throw new CryptographicException($"The key ring is sealed, and {KeyFile.Setting} names no file to open it with.");
            var whole = Convert.FromBase64String(encryptedElement.Value);
            var plain = new byte[whole.Length - NonceBytes - TagBytes];
            using AesGcm aes = new(file.Key, TagBytes);
            aes.Decrypt(whole.AsSpan(0, NonceBytes), whole.AsSpan(NonceBytes + TagBytes), whole.AsSpan(NonceBytes, TagBytes), plain);
            return XElement.Parse(Encoding.UTF8.GetString(plain));
        }
    }
}
