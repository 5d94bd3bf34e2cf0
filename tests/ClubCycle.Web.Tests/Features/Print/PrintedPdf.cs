using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using ClubCycle.TestKit;

namespace ClubCycle.Web.Tests.Features.Print;

/// <summary>A printed page as programs that are not ours read it (poppler-utils).</summary>
internal sealed partial class PrintedPdf : IDisposable
{
    private readonly TemporaryFolder _folder = TemporaryFolder.ReachableByAll("clubcycle-print-");

    public PrintedPdf(byte[] bytes)
    {
        Bytes = bytes;
        File.WriteAllBytes(Path, bytes);
    }

    public byte[] Bytes { get; }

    private string Path => System.IO.Path.Combine(_folder.Path, "page.pdf");

    /// <summary>Pages, and the points of the first.</summary>
    public async Task<(int Pages, double Width, double Height)> SizeAsync()
    {
        var info = await RunAsync("pdfinfo", Path);
        var size = PageSize().Match(info);
        return (int.Parse(Pages().Match(info).Groups[1].Value, CultureInfo.InvariantCulture), Number(size.Groups[1]), Number(size.Groups[2]));
    }

    /// <summary>A line a font: name, type, encoding, emb, sub, uni, object.</summary>
    public async Task<IReadOnlyList<string>> FontsAsync() => [.. (await RunAsync("pdffonts", Path)).Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(2)];

    /// <summary>In the order of drawing.</summary>
    public Task<string> TextAsync() => RunAsync("pdftotext", "-raw", "-nopgbrk", Path, "-");

    /// <summary>Points from the top left corner.</summary>
    public async Task<IReadOnlyList<PrintedWord>> WordsAsync() =>
        [.. Word().Matches(await RunAsync("pdftotext", "-bbox", Path, "-")).Select(m => new PrintedWord(m.Groups[5].Value, Number(m.Groups[1]), Number(m.Groups[2]), Number(m.Groups[3]), Number(m.Groups[4])))];

    public async Task<GrayPicture> PictureAsync(int dotsPerInch)
    {
        var picture = System.IO.Path.Combine(_folder.Path, "page");
        await RunAsync("pdftoppm", "-gray", "-singlefile", "-r", dotsPerInch.ToString(CultureInfo.InvariantCulture), Path, picture);
        return GrayPicture.Read(await File.ReadAllBytesAsync(picture + ".pgm", TestContext.Current.CancellationToken));
    }

    /// <summary>Without white space: lines break elsewhere on paper.</summary>
    public static string Packed(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c)));

    public void Dispose() => _folder.Dispose();

    private static async Task<string> RunAsync(string program, params IReadOnlyList<string> arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        var (text, errors) = (process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken), process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken));
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal("", await errors);
        return await text;
    }

    private static double Number(Group group) => double.Parse(group.Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"Pages:\s+(\d+)")]
    private static partial Regex Pages();

    [GeneratedRegex(@"Page size:\s+([\d.]+) x ([\d.]+) pts")]
    private static partial Regex PageSize();

    [GeneratedRegex("<word xMin=\"([-\\d.]+)\" yMin=\"([-\\d.]+)\" xMax=\"([-\\d.]+)\" yMax=\"([-\\d.]+)\">(.*?)</word>")]
    private static partial Regex Word();
}

internal sealed record PrintedWord(string Text, double Left, double Top, double Right, double Bottom)
{
    // A box is as tall as the font may ever be; letters leave a fifth of it free above and below.
    private double Air => Math.Min(Right - Left, Bottom - Top) * 0.22;

    public bool Overlaps(PrintedWord other) =>
        Left + Air < other.Right - other.Air && other.Left + other.Air < Right - Air && Top + Air < other.Bottom - other.Air && other.Top + other.Air < Bottom - Air;
}

/// <summary>0 is black, 255 is white.</summary>
internal sealed record GrayPicture(int Width, int Height, byte[] Pixels)
{
    public byte this[int x, int y] => Pixels[(y * Width) + x];

    /// <summary>Netpbm's binary graymap with 8 bits.</summary>
    public static GrayPicture Read(byte[] file)
    {
        List<string> head = [];
        var at = 0;
        while (head.Count < 4)
        {
            var start = at;
            while (!char.IsWhiteSpace((char)file[at]))
            {
                at++;
            }

            head.Add(System.Text.Encoding.ASCII.GetString(file, start, at - start));
            at++;
        }

        Assert.Equal(("P5", "255"), (head[0], head[3]));
        return new GrayPicture(int.Parse(head[1], CultureInfo.InvariantCulture), int.Parse(head[2], CultureInfo.InvariantCulture), file[at..]);
    }
}
