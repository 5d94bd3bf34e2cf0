using ClubCycle.Planning;
using ClubCycle.Planning.Phases;
using ClubCycle.Web.Features.Board;
using ClubCycle.Web.Features.Print;
using CsCheck;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;

namespace ClubCycle.Web.Tests.Features.Print;

[Trait("Beside", "screens")]
public sealed class PrintedPageTests
{
    private const double PointsPerMillimetre = 72 / 25.4;

    /// <summary>Nothing is printed so near to the edge, millimetres.</summary>
    private const double Bare = 5;

    private static readonly string[] Pages = ["club a3", "club a2", "squad a3", "squad a2", "week"];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public static TheoryData<string> EveryPage => [.. Pages];

    // ISO 216 (from memory), millimetres, landscape for the wall.
    [Theory]
    [InlineData("club a3", 420, 297)]
    [InlineData("club a2", 594, 420)]
    [InlineData("squad a3", 420, 297)]
    [InlineData("squad a2", 594, 420)]
    [InlineData("week", 210, 297)]
    public async Task A_page_is_one_sheet_of_its_size(string page, double width, double height)
    {
        using var pdf = Draw(page);

        var size = await pdf.SizeAsync();

        Assert.Equal("%PDF-"u8.ToArray(), pdf.Bytes[..5]);
        Assert.Equal(1, size.Pages);
        Assert.Equal(width * PointsPerMillimetre, size.Width, 0.1);
        Assert.Equal(height * PointsPerMillimetre, size.Height, 0.1);
    }

    [Theory]
    [MemberData(nameof(EveryPage))]
    public async Task Every_font_is_in_the_file(string page)
    {
        using var pdf = Draw(page);

        var fonts = await pdf.FontsAsync();

        Assert.Equal(2, fonts.Count);
        Assert.All(fonts, font => Assert.Matches(@"Source Sans 3.*\byes +yes +yes\b", font));
    }

    [Theory]
    [MemberData(nameof(EveryPage))]
    public async Task A_page_says_whose_it_is_when_it_was_printed_and_that_local_rules_come_first(string page)
    {
        using var pdf = Draw(page);

        var text = await pdf.TextAsync();

        Assert.Contains("Sandhaven", text, StringComparison.Ordinal);
        Assert.Contains(PrintText.Printed(PrintedClub.Head.Today), text, StringComparison.Ordinal);
        Assert.Contains("Local rules and licensed professionals come first", text, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(EveryPage))]
    public async Task A_page_is_drawn_on_and_only_inside_its_edges(string page)
    {
        using var pdf = Draw(page);

        await AssertInsideAsync(pdf);
    }

    [Theory]
    [MemberData(nameof(EveryPage))]
    public async Task No_word_lies_on_another(string page)
    {
        using var pdf = Draw(page);

        Assert.Empty(Overlaps(await pdf.WordsAsync()));
    }

    [Fact]
    public void Any_club_fits_on_its_wall_chart() => Gen.Select(PrintedClub.AnySquad.Array[1, PrintedClub.MostSquads], Gen.Bool).Sample(
        (squads, large) => FitsAsync(new PrintedPdf(ClubChart.Draw(large ? PaperSize.A2 : PaperSize.A3, PrintedClub.Head, squads, Cancel)), [.. squads.Select(s => s.Name)]).GetAwaiter().GetResult(),
        iter: 15, threads: 1, print: club => string.Join('\n', club.Item1.Select(s => s.Name)));

    [Fact]
    public void Any_squad_fits_on_its_wall_chart() => Gen.Select(PrintedClub.AnySquad, Gen.Bool).Sample(
        (squad, large) => FitsAsync(new PrintedPdf(SquadChart.Draw(large ? PaperSize.A2 : PaperSize.A3, PrintedClub.Head, squad, true, Cancel)), [squad.Name]).GetAwaiter().GetResult(),
        iter: 15, threads: 1, print: squad => squad.Item1.Name);

    [Fact]
    public void Any_name_fits_on_a_week_sheet() => PrintedClub.Name.Sample(
        name => FitsAsync(new PrintedPdf(WeekSheet.Draw(PrintedClub.Head with { Club = name }, PrintedClub.Draft(name), PrintedClub.FullestWeek, Cancel)), [name]).GetAwaiter().GetResult(),
        iter: 10, threads: 1);

    [Fact]
    public async Task The_fullest_chart_has_room_for_24_squads_with_the_longest_names_and_60_weeks()
    {
        var weeks = Enumerable.Range(0, BoardView.MostWeeks).Select(i => A.Week(new NodaTime.LocalDate(2026, 3, 2).PlusWeeks(i), (PhaseKind)(i % 7), 1)).ToList();
        var squads = Enumerable.Range(0, PrintedClub.MostSquads).Select(i => PrintedClub.Squad(new string((char)('A' + i), PrintedClub.LongestName), A.Plan(weeks))).ToList();

        Assert.True(await FitsAsync(new PrintedPdf(ClubChart.Draw(PaperSize.A3, PrintedClub.Head, squads, Cancel)), [.. squads.Select(s => s.Name)]));
    }

    [Fact]
    public async Task What_the_font_lacks_is_shown_as_a_sign_and_said()
    {
        using var pdf = new PrintedPdf(ClubChart.Draw(PaperSize.A3, PrintedClub.Head, [PrintedClub.Squad("Blue 👩‍👧 שלום", A.Year())], Cancel));

        var text = await pdf.TextAsync();

        Assert.Contains("Blue □ □□□□", text, StringComparison.Ordinal);
        Assert.Contains(PrintText.Lacking, text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_squad_without_a_plan_says_why()
    {
        using var pdf = new PrintedPdf(ClubChart.Draw(PaperSize.A3, PrintedClub.Head, [PrintedClub.Squad("Blue", null), PrintedClub.Squad("Red", A.Year())], Cancel));

        Assert.Contains("No plan. There are no season dates yet.", await pdf.TextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_club_without_squads_is_told_what_to_do_first()
    {
        using var pdf = new PrintedPdf(ClubChart.Draw(PaperSize.A3, PrintedClub.Head, [], Cancel));

        Assert.Contains(PrintText.NoSquads, await pdf.TextAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, true, "draft, nothing published")]
    [InlineData(3, true, "draft after revision 3")]
    [InlineData(3, false, "revision 3")]
    public async Task A_chart_says_what_of_it_is_published(int revision, bool changed, string words)
    {
        using var pdf = new PrintedPdf(ClubChart.Draw(PaperSize.A3, PrintedClub.Head, [PrintedClub.Squad("Blue", A.Year()) with { PublishedRevision = revision, HasUnpublishedChanges = changed }], Cancel));

        Assert.Contains($"Masters, {words}\n", await pdf.TextAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Children_are_shown_no_numbers_of_load(bool numbers)
    {
        using var pdf = new PrintedPdf(SquadChart.Draw(PaperSize.A3, PrintedClub.Head, PrintedClub.Squad("Blue", A.Year()), numbers, Cancel));

        Assert.Equal(numbers, (await pdf.TextAsync()).Contains(" AU", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_week_sheet_holds_every_step_of_every_session()
    {
        var week = PrintedClub.FullestWeek;
        using var pdf = Draw("week");

        var text = PrintedPdf.Packed(await pdf.TextAsync());

        Assert.All(
            A.Year().Sessions.Where(s => s.Date >= week.First && s.Date <= week.Last && s.Kind == SessionKind.Session).SelectMany(s => s.Steps),
            step => Assert.Contains(PrintedPdf.Packed(step.Name), text, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Phases_differ_by_pattern_when_colour_is_gone()
    {
        var phases = Enum.GetValues<PhaseKind>();
        using var sheet = new Sheet(PaperSize.A4, "phases", PrintedClub.Head.PrintedAt, Cancel);
        foreach (var (row, phase) in phases.Index())
        {
            Inks.Pattern(sheet, Swatch(row), phase);
        }

        using var pdf = new PrintedPdf(sheet.Save());
        var picture = await pdf.PictureAsync(254);
        var looks = phases.Select((phase, row) => (phase, Look: Look(picture, Swatch(row)))).ToList();

        Assert.All(
            from a in looks from b in looks where a.phase < b.phase select (a, b),
            pair => Assert.True(pair.a.Look.Still != pair.b.Look.Still || Math.Abs(pair.a.Look.Mean - pair.b.Look.Mean) > 100, $"{pair.a} looks like {pair.b}"));
    }

    [Fact]
    public void Drawing_stops_when_its_time_is_over() => Assert.Throws<OperationCanceledException>(
        () => ClubChart.Draw(PaperSize.A3, PrintedClub.Head, [PrintedClub.Squad("Blue", A.Year())], new CancellationToken(canceled: true)));

    [Fact]
    public async Task A_page_that_takes_too_long_is_given_up_and_says_to_try_again()
    {
        using var press = new PrintPress { Longest = TimeSpan.FromMilliseconds(50) };

        var answer = await press.RunAsync(
            async time =>
            {
                await Task.Delay(Timeout.InfiniteTimeSpan, time);
                return TypedResults.Ok();
            },
            Cancel);

        Assert.Equal(StatusCodes.Status503ServiceUnavailable, Assert.IsType<ContentHttpResult>(answer).StatusCode);
    }

    private static PrintedPdf Draw(string page) => new(page switch
    {
        "club a3" => ClubChart.Draw(PaperSize.A3, PrintedClub.Head, [PrintedClub.Squad("Blue", A.Year()), PrintedClub.Squad("Red", A.Year())], Cancel),
        "club a2" => ClubChart.Draw(PaperSize.A2, PrintedClub.Head, [PrintedClub.Squad("Blue", A.Year()), PrintedClub.Squad("Red", A.Year())], Cancel),
        "squad a3" => SquadChart.Draw(PaperSize.A3, PrintedClub.Head, PrintedClub.Squad("Blue", A.Year()), true, Cancel),
        "squad a2" => SquadChart.Draw(PaperSize.A2, PrintedClub.Head, PrintedClub.Squad("Blue", A.Year()), true, Cancel),
        "week" => WeekSheet.Draw(PrintedClub.Head, PrintedClub.Draft(), PrintedClub.FullestWeek, Cancel),
        _ => throw new ArgumentOutOfRangeException(nameof(page), page, "No such page"),
    });

    /// <summary>Throws with what is wrong; true when nothing is.</summary>
    private static async Task<bool> FitsAsync(PrintedPdf page, IReadOnlyList<string> names)
    {
        using var pdf = page;
        Assert.Equal(1, (await pdf.SizeAsync()).Pages);
        var text = PrintedPdf.Packed(await pdf.TextAsync());
        Assert.All(names, name => Assert.Contains(PrintedPdf.Packed(PrintFont.Semibold.Drawable(name)), text, StringComparison.Ordinal));
        Assert.Empty(Overlaps(await pdf.WordsAsync()));
        await AssertInsideAsync(pdf);
        return true;
    }

    private static async Task AssertInsideAsync(PrintedPdf pdf)
    {
        const int dotsPerInch = 50;
        var picture = await pdf.PictureAsync(dotsPerInch);
        var bare = (int)(Bare / 25.4 * dotsPerInch);
        var (ink, outside) = (0, 0);
        for (var y = 0; y < picture.Height; y++)
        {
            for (var x = 0; x < picture.Width; x++)
            {
                var edge = x < bare || y < bare || x >= picture.Width - bare || y >= picture.Height - bare;
                ink += picture[x, y] < 128 ? 1 : 0;
                outside += edge && picture[x, y] < 250 ? 1 : 0;
            }
        }

        Assert.Equal(0, outside);
        Assert.InRange(ink, picture.Pixels.Length / 500, picture.Pixels.Length / 2);
    }

    private static List<string> Overlaps(IReadOnlyList<PrintedWord> words)
    {
        Assert.NotEmpty(words);
        List<string> overlaps = [];
        for (var i = 0; i < words.Count; i++)
        {
            overlaps.AddRange(words.Skip(i + 1).Where(words[i].Overlaps).Select(other => $"{words[i]} and {other}"));
        }

        return overlaps;
    }


    private static Box Swatch(int row) => new(20, 20 + (row * 30), 80, 25);

    /// <summary>How dark a swatch is, and along which of the four directions nothing changes.</summary>
    private static (double Mean, string Still) Look(GrayPicture picture, Box swatch)
    {
        // 254 dots an inch are ten a millimetre.
        const int lag = 5;
        var (left, top, right, bottom) = ((int)(swatch.X * 10) + 20, (int)(swatch.Y * 10) + 20, (int)(swatch.Right * 10) - 20, (int)(swatch.Bottom * 10) - 20);
        var sum = 0.0;
        var change = new double[4];
        (int X, int Y)[] ways = [(lag, 0), (0, lag), (lag, lag), (lag, -lag)];
        for (var y = top; y < bottom; y++)
        {
            for (var x = left; x < right; x++)
            {
                sum += picture[x, y];
                foreach (var (i, way) in ways.Index())
                {
                    change[i] += Math.Abs(picture[x + way.X, y + way.Y] - picture[x, y]);
                }
            }
        }

        var area = (right - left) * (bottom - top);
        return (sum / area, string.Concat(change.Select(c => c / area < 4 ? '-' : 'x')));
    }
}
