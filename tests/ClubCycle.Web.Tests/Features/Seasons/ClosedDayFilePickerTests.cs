using Bunit;
using ClubCycle.Planning.Seasons;
using ClubCycle.Web.Features.Seasons;
using Microsoft.AspNetCore.Components.Forms;

namespace ClubCycle.Web.Tests.Features.Seasons;

public sealed class ClosedDayFilePickerTests
{
    private const string Good = "First day;Last day;Why\n2027-03-22;2027-04-02;Easter\n2027-05-17;2027-05-21;Spring\n";

    private static readonly ClosedDays Spring = new(new(2027, 5, 17), new(2027, 5, 21), "Spring");

    private IReadOnlyList<ClosedDays>? _chosen;

    [Fact]
    public async Task A_file_shows_what_it_holds_and_chooses_it()
    {
        await using var context = new BunitContext();

        var picker = Upload(context, Good);

        Assert.Equal([new(new(2027, 3, 22), new(2027, 4, 2), "Easter"), Spring], _chosen);
        Assert.Equal(2, picker.FindAll("ul[aria-label='Closed days in the file'] li").Count);
    }

    [Fact]
    public async Task What_is_closed_already_is_said_and_not_chosen()
    {
        await using var context = new BunitContext();

        var picker = Upload(context, Good, new ClosedDays(new(2027, 3, 1), new(2027, 4, 30), "Flooded"));

        Assert.Equal([Spring], _chosen);
        Assert.Contains("Easter · closed already", picker.Find("ul[aria-label='Closed days in the file'] li").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Good_rows_beside_bad_ones_wait_for_the_coach()
    {
        await using var context = new BunitContext();

        var picker = Upload(context, Good + "2027-02-30;;Never\n");
        Assert.Empty(_chosen!);
        Assert.Contains("Line 4: 30 Feb 2027 does not exist. Correct the date.", picker.Markup, StringComparison.Ordinal);

        picker.Find("label.check input").Change(true);
        Assert.Equal(2, _chosen!.Count);
    }

    [Fact]
    public async Task Another_column_can_be_chosen()
    {
        await using var context = new BunitContext();
        var picker = Upload(context, Good);

        picker.Find("#closed-column-last").Change("");

        Assert.All(_chosen!, days => Assert.Equal(days.First, days.Last));
    }

    [Fact]
    public async Task What_is_no_table_gives_a_problem_and_nothing()
    {
        await using var context = new BunitContext();

        var picker = Upload(context, "PK\u0003\u0004 no table");

        Assert.Contains("spreadsheet workbook", picker.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        Assert.Empty(_chosen!);
    }

    private IRenderedComponent<ClosedDayFilePicker> Upload(BunitContext context, string text, params ClosedDays[] closed)
    {
        context.JSInterop.Mode = JSRuntimeMode.Loose;
        var picker = context.Render<ClosedDayFilePicker>(p => p.Add(c => c.Closed, closed).Add(c => c.OnChosen, chosen => _chosen = chosen));
        picker.FindComponent<InputFile>().UploadFiles(InputFileContent.CreateFromText(text, "holidays.csv"));
        picker.WaitForState(() => _chosen is not null);
        return picker;
    }
}
