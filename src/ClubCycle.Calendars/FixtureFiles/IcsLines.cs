using ClubCycle.Calendars.Sheets;
using ClubCycle.Planning;

namespace ClubCycle.Calendars.FixtureFiles;

/// <summary>The lines of an iCalendar file.</summary>
internal static class IcsLines
{
    private const byte Return = (byte)'\r';
    private const byte Feed = (byte)'\n';

    /// <summary>The lines that are not blank. Folds are undone before decoding, since they may cut a character in two.</summary>
    public static Result<IReadOnlyList<IcsLine>> Read(byte[] bytes)
    {
        if (!FileText.Read(bytes).TryGet(out _, out var problems))
        {
            return new Result<IReadOnlyList<IcsLine>>.Failed(problems);
        }

        var (unfolded, numbers) = Unfold(FileText.Narrow(bytes));
        if (!FileText.Read(unfolded).TryGet(out var file, out problems))
        {
            return new Result<IReadOnlyList<IcsLine>>.Failed(problems);
        }

        return new Result<IReadOnlyList<IcsLine>>.Ok([.. file.Text.Split('\n').Select((text, at) => new IcsLine(numbers[at], text)).Where(line => !string.IsNullOrWhiteSpace(line.Text))]);
    }

    /// <summary>Lines end in LF afterwards; each has the number of its first line in the file.</summary>
    private static (byte[] Bytes, List<int> Numbers) Unfold(byte[] bytes)
    {
        // A lone CR ends a line in files that know no LF; elsewhere it stays, and its line is refused.
        var end = bytes.AsSpan().Contains(Feed) ? Feed : Return;
        using var unfolded = new MemoryStream(bytes.Length);
        var numbers = new List<int>();
        var number = 1;
        for (var at = 0; at < bytes.Length; number++)
        {
            var length = bytes.AsSpan(at).IndexOf(end) is var found and >= 0 ? found : bytes.Length - at;
            var line = bytes.AsSpan(at, length);
            line = line.EndsWith("\r"u8) ? line[..^1] : line;
            if (numbers.Count > 0 && !line.IsEmpty && line[0] is (byte)' ' or (byte)'\t')
            {
                unfolded.Write(line[1..]);
            }
            else
            {
                if (numbers.Count > 0)
                {
                    unfolded.WriteByte(Feed);
                }

                unfolded.Write(line);
                numbers.Add(number);
            }

            at += length + 1;
        }

        return (unfolded.ToArray(), numbers);
    }
}
