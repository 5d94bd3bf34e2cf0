using System.Buffers.Binary;
using System.Text;

namespace ClubCycle.TestKit.Live;

/// <param name="Attributes">Names and values; of a handler of events, its number.</param>
/// <param name="Text">All that stands inside, one piece after the other.</param>
public sealed record DrawnElement(string Name, IReadOnlyDictionary<string, string> Attributes, string Text);

/// <summary>The elements that an update of a live page draws anew, as the framework's own script reads them (RenderBatchWriter of ASP.NET Core, 20 bytes a frame).</summary>
internal static class DrawnElements
{
    private const int FrameBytes = 20;

    public static IReadOnlyList<DrawnElement> Of(byte[] batch)
    {
        var (frames, strings) = (Number(batch, batch.Length - 16), Number(batch, batch.Length - 4));
        var count = Number(batch, frames);
        List<DrawnElement> drawn = [];
        for (var i = 0; i < count; i++)
        {
            if (Kind(i) == FrameKind.Element)
            {
                drawn.Add(Element(i));
            }
        }

        return drawn;

        FrameKind Kind(int frame) => (FrameKind)Field(frame, 0);

        int Field(int frame, int offset) => Number(batch, frames + 4 + (frame * FrameBytes) + offset);

        DrawnElement Element(int element)
        {
            var end = element + Field(element, 4);
            Dictionary<string, string> attributes = new(StringComparer.Ordinal);
            var at = element + 1;
            for (; at < end && Kind(at) == FrameKind.Attribute; at++)
            {
                var handler = BinaryPrimitives.ReadUInt64LittleEndian(batch.AsSpan(frames + 4 + (at * FrameBytes) + 12));
                attributes[String(Field(at, 4))] = handler > 0 ? handler.ToString(System.Globalization.CultureInfo.InvariantCulture) : String(Field(at, 8));
            }

            var text = new StringBuilder();
            for (; at < end; at++)
            {
                if (Kind(at) is FrameKind.Text or FrameKind.Markup)
                {
                    text.Append(String(Field(at, 4)));
                }
            }

            return new DrawnElement(String(Field(element, 8)), attributes, text.ToString());
        }

        string String(int number)
        {
            if (number < 0)
            {
                return "";
            }

            var at = Number(batch, strings + (4 * number));
            var (length, shift) = (0, 0);
            byte part;
            do
            {
                part = batch[at++];
                length |= (part & 0x7F) << shift;
                shift += 7;
            }
            while (part >= 0x80);

            return Encoding.UTF8.GetString(batch, at, length);
        }
    }

    private static int Number(byte[] batch, int at) => BinaryPrimitives.ReadInt32LittleEndian(batch.AsSpan(at));

    private enum FrameKind
    {
        Element = 1,
        Text = 2,
        Attribute = 3,
        Markup = 8,
    }
}
