using System.Security.Cryptography;
using System.Text;
using ClubCycle.Data.Embedded;
using Microsoft.Extensions.Options;

namespace ClubCycle.Web.Account;

/// <summary>The key that seals the key ring of sessions: in a file, so that neither the database nor a backup of it opens a session.</summary>
internal sealed class KeyFile
{
    /// <summary>Setting <c>Keys:File</c>.</summary>
    public const string Setting = "Keys:File";

    /// <summary>Hexadecimal digits of 24 random bytes or more.</summary>
    private const int Shortest = 48;

    private KeyFile(byte[] key) => Key = key;

    /// <summary>256 bits.</summary>
    public byte[] Key { get; }

    /// <summary>The file that is named; beside a private PostgreSQL one that is made. Null where a database of one's own has no file: the ring then lies open in it.</summary>
    public static KeyFile? Choose(IConfiguration settings) =>
        settings[Setting] is { Length: > 0 } named ? Read(named)
        : string.IsNullOrWhiteSpace(settings.GetConnectionString(DatabaseChoice.ConnectionName)) ? ReadOrMake(Path.Combine(PrivatePostgresSettings.DefaultDataFolder(), "session-key"))
        : null;

    public static KeyFile ReadOrMake(string path)
    {
        if (!File.Exists(path))
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            FileStreamOptions options = new() { Mode = FileMode.CreateNew, Access = FileAccess.Write };
            if (!OperatingSystem.IsWindows())
            {
                options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
            }

            using StreamWriter writer = new(path, options);
            writer.Write(RandomNumberGenerator.GetHexString(64, lowercase: true));
        }

        return Read(path);
    }

    private static KeyFile Read(string path)
    {
        string text;
        try
        {
            text = File.ReadAllText(path).Trim();
        }
        catch (Exception unreadable) when (unreadable is IOException or UnauthorizedAccessException)
        {
            throw Wrong($"{Setting} names {path}, which cannot be read: {unreadable.Message} Check that it is there and that this user may read it.");
        }

        return text.Length >= Shortest
            ? new KeyFile(HKDF.DeriveKey(HashAlgorithmName.SHA256, Encoding.UTF8.GetBytes(text), SealedKey.KeyBytes, info: "ClubCycle key ring"u8.ToArray()))
            : throw Wrong($"{path} must hold at least {Shortest} random characters. Make one with: openssl rand -hex 32");
    }

    private static OptionsValidationException Wrong(string what) => new(Setting, typeof(KeyFile), [what]);
}
