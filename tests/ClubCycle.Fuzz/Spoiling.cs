using System.Text;

namespace ClubCycle.Fuzz;

/// <summary>Changes files at random, as editors, mail programs and enemies do.</summary>
internal sealed class Spoiling(Random random, IReadOnlyList<string> words)
{
    /// <summary>Files that are small: the limits of size have tests of their own.</summary>
    public const int Most = 32 * 1024;

    private readonly byte[][] _words = [.. words.Select(Encoding.UTF8.GetBytes)];

    /// <param name="others">Files that pieces may come from.</param>
    public byte[] Spoil(byte[] file, IReadOnlyList<byte[]> others)
    {
        List<byte> bytes = [.. file];
        for (var changes = 1 + random.Next(6); changes > 0; changes--)
        {
            Change(bytes, others);
        }

        return [.. bytes.Take(Most)];
    }

    private void Change(List<byte> bytes, IReadOnlyList<byte[]> others)
    {
        var at = random.Next(bytes.Count + 1);
        switch (random.Next(10))
        {
            case 0 when at < bytes.Count:
                bytes[at] ^= (byte)(1 << random.Next(8));
                break;
            case 1 when at < bytes.Count:
                bytes[at] = (byte)random.Next(256);
                break;
            case 2:
                bytes.RemoveRange(at, Math.Min(Length(), bytes.Count - at));
                break;
            case 3:
                bytes.InsertRange(at, Piece(bytes));
                break;
            case 4:
                bytes.InsertRange(at, Piece(others[random.Next(others.Count)]));
                break;
            case 5:
                bytes.InsertRange(at, Enumerable.Repeat(Piece(bytes), 1 << random.Next(10)).SelectMany(p => p).Take(Most));
                break;
            case 6:
                Put(bytes, at, Encoding.ASCII.GetBytes(random.NextInt64(-10, 1L << random.Next(1, 62)).ToString(System.Globalization.CultureInfo.InvariantCulture)));
                break;
            case 7 when random.Next(20) == 0:
                bytes.RemoveRange(at, bytes.Count - at);
                break;
            default:
                Put(bytes, at, _words[random.Next(_words.Length)]);
                break;
        }
    }

    private void Put(List<byte> bytes, int at, byte[] word)
    {
        if (random.Next(2) == 0)
        {
            bytes.RemoveRange(at, Math.Min(word.Length, bytes.Count - at));
        }

        bytes.InsertRange(at, word);
    }

    private byte[] Piece(IReadOnlyList<byte> of)
    {
        var from = random.Next(of.Count + 1);
        return [.. of.Skip(from).Take(Length())];
    }

    private int Length() => 1 + random.Next(1 << random.Next(1, 9));
}
