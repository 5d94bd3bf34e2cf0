using System.Buffers.Binary;
using System.Globalization;
using System.Text;

namespace ClubCycle.TestKit.Live;

/// <param name="Attributes">Names and values; of a handler of events, its number.</param>
/// <param name="Text">All that stands inside, one piece after the other.</param>
public sealed record DrawnElement(string Name, IReadOnlyDictionary<string, string> Attributes, string Text);

/// <summary>What an update of a live page draws, as the framework's own script reads it (RenderBatchWriter of ASP.NET Core: 16 bytes an edit, 20 a frame).</summary>
internal static class DrawnElements
{
    private const int EditBytes = 16;
    private const int FrameBytes = 20;

    /// <summary>Component by component, each element that is drawn anew; and of one that stays the new number of its handler of presses.</summary>
    public static IEnumerable<(int Component, DrawnElement? Drawn, string? OnClick)> Of(byte[] batch)
    {
        var (updates, frames, strings) = (Number(batch, batch.Length - 20), Number(batch, batch.Length - 16), Number(batch, batch.Length - 4));
        for (var update = 0; update < Number(batch, updates); update++)
        {
            var at = Number(batch, updates + 4 + (4 * update));
            var component = Number(batch, at);
            for (var edit = 0; edit < Number(batch, at + 4); edit++)
            {
                var from = at + 8 + (edit * EditBytes);
                var frame = Number(batch, from + 8);
                switch ((EditKind)Number(batch, from))
                {
                    case EditKind.PrependFrame:
                        var end = Kind(frame) is FrameKind.Element or FrameKind.Region ? frame + Field(frame, 4) : frame;
                        for (var i = frame; i < end; i++)
                        {
                            if (Kind(i) == FrameKind.Element)
                            {
                                yield return (component, Element(i), null);
                            }
                        }

                        break;
                    case EditKind.SetAttribute when String(Field(frame, 4)) == "onclick":
                        yield return (component, null, Handler(frame).ToString(CultureInfo.InvariantCulture));
                        break;
                }
            }
        }

        FrameKind Kind(int frame) => (FrameKind)Field(frame, 0);

        int Field(int frame, int offset) => Number(batch, frames + 4 + (frame * FrameBytes) + offset);

        ulong Handler(int attribute) => BinaryPrimitives.ReadUInt64LittleEndian(batch.AsSpan(frames + 4 + (attribute * FrameBytes) + 12));

        DrawnElement Element(int element)
        {
            var end = element + Field(element, 4);
            Dictionary<string, string> attributes = new(StringComparer.Ordinal);
            var at = element + 1;
            for (; at < end && Kind(at) == FrameKind.Attribute; at++)
            {
                attributes[String(Field(at, 4))] = Handler(at) is > 0 and var handler ? handler.ToString(CultureInfo.InvariantCulture) : String(Field(at, 8));
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

    private enum EditKind
    {
        PrependFrame = 1,
        SetAttribute = 3,
    }

    private enum FrameKind
    {
        Element = 1,
        Text = 2,
        Attribute = 3,
        Region = 5,
        Markup = 8,
    }
}
