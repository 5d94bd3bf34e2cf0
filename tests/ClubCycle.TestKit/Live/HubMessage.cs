using System.Buffers.Binary;
using System.Text;

namespace ClubCycle.TestKit.Live;

/// <summary>As much of MessagePack as the messages of a live page take: numbers, texts, bytes, lists, truth and nothing, each message behind its length.</summary>
internal static class HubMessage
{
    public static byte[] Call(string? id, string method, params object?[] arguments)
    {
        using var body = new MemoryStream();
        Write(body, (object?[])[1, new Dictionary<string, string>(), id, method, arguments, Array.Empty<object?>()]);
        using var message = new MemoryStream();
        var length = (uint)body.Length;
        for (; length >= 0x80; length >>= 7)
        {
            message.WriteByte((byte)(length | 0x80));
        }

        message.WriteByte((byte)length);
        body.WriteTo(message);
        return message.ToArray();
    }

    /// <summary>The messages that came together.</summary>
    public static IEnumerable<IReadOnlyList<object?>> Read(ReadOnlyMemory<byte> bytes)
    {
        for (var at = 0; at < bytes.Length;)
        {
            var (length, shift) = (0, 0);
            byte part;
            do
            {
                part = bytes.Span[at++];
                length |= (part & 0x7F) << shift;
                shift += 7;
            }
            while (part >= 0x80);

            var from = at;
            yield return (IReadOnlyList<object?>)Read(bytes.Span, ref from)!;
            at += length;
        }
    }

    private static void Write(MemoryStream to, object? value)
    {
        switch (value)
        {
            case null:
                to.WriteByte(0xC0);
                break;
            case bool truth:
                to.WriteByte(truth ? (byte)0xC3 : (byte)0xC2);
                break;
            case int or long:
                to.WriteByte(0xD3);
                Span<byte> number = stackalloc byte[8];
                BinaryPrimitives.WriteInt64BigEndian(number, Convert.ToInt64(value, System.Globalization.CultureInfo.InvariantCulture));
                to.Write(number);
                break;
            case string text:
                var bytes = Encoding.UTF8.GetBytes(text);
                to.WriteByte(0xDB);
                WriteLength(to, bytes.Length);
                to.Write(bytes);
                break;
            case object?[] list:
                to.WriteByte(0xDD);
                WriteLength(to, list.Length);
                Array.ForEach(list, v => Write(to, v));
                break;
            case Dictionary<string, string> { Count: 0 }:
                to.WriteByte(0x80);
                break;
            default:
                throw new ArgumentException($"A message holds no {value.GetType()}.", nameof(value));
        }
    }

    private static void WriteLength(MemoryStream to, int length)
    {
        Span<byte> bytes = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(bytes, length);
        to.Write(bytes);
    }

    private static object? Read(ReadOnlySpan<byte> bytes, ref int at)
    {
        var kind = bytes[at++];
        switch (kind)
        {
            case < 0x80:
                return (long)kind;
            case >= 0xE0:
                return (long)(sbyte)kind;
            case < 0x90:
                return Map(bytes, ref at, kind & 0x0F);
            case < 0xA0:
                return List(bytes, ref at, kind & 0x0F);
            case < 0xC0:
                return Text(bytes, ref at, kind & 0x1F);
            case 0xC0:
                return null;
            case 0xC2 or 0xC3:
                return kind == 0xC3;
            case 0xC4 or 0xC5 or 0xC6:
                return Taken(bytes, ref at, (int)Number(bytes, ref at, 1 << (kind - 0xC4))).ToArray();
            case 0xCB:
                return BitConverter.Int64BitsToDouble(Number(bytes, ref at, 8));
            case >= 0xCC and <= 0xCF:
                return Number(bytes, ref at, 1 << (kind - 0xCC));
            case >= 0xD0 and <= 0xD3:
                var size = 1 << (kind - 0xD0);
                return Number(bytes, ref at, size) << (64 - (8 * size)) >> (64 - (8 * size));
            case 0xD9 or 0xDA or 0xDB:
                return Text(bytes, ref at, (int)Number(bytes, ref at, 1 << (kind - 0xD9)));
            case 0xDC or 0xDD:
                return List(bytes, ref at, (int)Number(bytes, ref at, 2 << (kind - 0xDC)));
            default:
                throw new InvalidDataException($"A message holds a value of kind {kind:X2}.");
        }
    }

    private static long Number(ReadOnlySpan<byte> bytes, ref int at, int size)
    {
        var number = 0L;
        foreach (var part in Taken(bytes, ref at, size))
        {
            number = (number << 8) | part;
        }

        return number;
    }

    private static string Text(ReadOnlySpan<byte> bytes, ref int at, int length) => Encoding.UTF8.GetString(Taken(bytes, ref at, length));

    private static object?[] List(ReadOnlySpan<byte> bytes, ref int at, int count)
    {
        var list = new object?[count];
        for (var i = 0; i < count; i++)
        {
            list[i] = Read(bytes, ref at);
        }

        return list;
    }

    private static object? Map(ReadOnlySpan<byte> bytes, ref int at, int count)
    {
        _ = List(bytes, ref at, 2 * count);
        return null;
    }

    private static ReadOnlySpan<byte> Taken(ReadOnlySpan<byte> bytes, ref int at, int length)
    {
        at += length;
        return bytes[(at - length)..at];
    }
}
