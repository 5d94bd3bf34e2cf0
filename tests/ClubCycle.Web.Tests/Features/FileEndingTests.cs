using System.Text;
using Bunit;
using ClubCycle.Web.Features.Matches;
using ClubCycle.Web.Features.Seasons;
using ClubCycle.Web.Features.Templates;
using ClubCycle.Web.Tests.Shell;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Forms;
using Microsoft.Extensions.DependencyInjection;

namespace ClubCycle.Web.Tests.Features;

/// <summary>ASVS 5.2.2: the ending of a file's name, wherever a file is taken. What is in it is checked after that.</summary>
public sealed class FileEndingTests(TestApp app) : IClassFixture<TestApp>
{
    [Theory]
    [InlineData("matches.xlsx")]
    [InlineData("matches.csv.exe")]
    [InlineData("matches.json")]
    [InlineData("csv")]
    [InlineData("")]
    public async Task A_file_of_matches_with_another_ending_is_refused_unread(string name) => AssertRefused(await ChooseMatchesAsync(name));

    [Theory]
    [InlineData("matches.csv")]
    [InlineData("MATCHES.TXT")]
    [InlineData("matches.ics")]
    [InlineData("matches.ical")]
    public async Task A_file_of_matches_with_its_ending_is_read(string name) => AssertRead(await ChooseMatchesAsync(name));

    [Theory]
    [InlineData("holidays.ics")]
    [InlineData("holidays.xlsx")]
    [InlineData("holidays.csv ")]
    [InlineData("")]
    public async Task A_file_of_closed_days_with_another_ending_is_refused_unread(string name) => AssertRefused(await ChooseClosedDaysAsync(name));

    [Theory]
    [InlineData("holidays.csv")]
    [InlineData("holidays.Txt")]
    public async Task A_file_of_closed_days_with_its_ending_is_read(string name) => AssertRead(await ChooseClosedDaysAsync(name));

    [Theory]
    [InlineData("template.csv")]
    [InlineData("template.json.html")]
    [InlineData("")]
    public async Task A_file_of_a_template_with_another_ending_is_refused_unread(string name) => AssertRefused(await ChooseTemplateAsync(name));

    [Fact]
    public async Task A_file_of_a_template_with_its_ending_is_read() => AssertRead(await ChooseTemplateAsync("template.JSON"));

    /// <summary>A screen that takes files and is not tried above fails here.</summary>
    [Fact]
    public void There_are_no_other_places_that_take_a_file()
    {
        var source = Path.GetFullPath(Path.Combine(Path.GetDirectoryName(StyleSheet.PathOf("screens.css"))!, "..", ".."));
        var places = Directory.EnumerateFiles(source, "*.*", SearchOption.AllDirectories).Where(file => Path.GetExtension(file) is ".razor" or ".cs")
            .Where(file => File.ReadAllText(file) is var text && (text.Contains("<InputFile", StringComparison.Ordinal) || text.Contains("type=\"file\"", StringComparison.Ordinal) || text.Contains("IFormFile", StringComparison.Ordinal) || text.Contains("Form.Files", StringComparison.Ordinal)));

        Assert.Equal(["ClosedDayFilePicker.razor", "MatchFilePage.razor", "TemplatesPage.razor"], places.Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    private static void AssertRefused((ChosenFile File, string Said) chosen)
    {
        Assert.Contains("The name of this file", chosen.Said, StringComparison.Ordinal);
        Assert.False(chosen.File.IsRead);
    }

    private static void AssertRead((ChosenFile File, string Said) chosen)
    {
        Assert.True(chosen.File.IsRead);
        Assert.DoesNotContain("The name of this file", chosen.Said, StringComparison.Ordinal);
    }

    private async Task<(ChosenFile File, string Said)> ChooseMatchesAsync(string name)
    {
        var club = await app.NewClubAsync();
        return await ChooseAsync<MatchFilePage>(club, name, page => page.Add(p => p.Squad, club.OwnSquad));
    }

    private async Task<(ChosenFile File, string Said)> ChooseClosedDaysAsync(string name) =>
        await ChooseAsync<ClosedDayFilePicker>(await app.NewClubAsync(), name, picker => picker.Add(p => p.Closed, []).Add(p => p.OnChosen, _ => { }));

    private async Task<(ChosenFile File, string Said)> ChooseTemplateAsync(string name) => await ChooseAsync<TemplatesPage>(await app.NewClubAsync(), name, _ => { });

    /// <summary>What the screen says after a head coach chose a file of this name, in which nothing of use stands.</summary>
    private Task<(ChosenFile File, string Said)> ChooseAsync<TScreen>(TestClub club, string name, Action<ComponentParameterCollectionBuilder<TScreen>> parameters)
        where TScreen : class, IComponent => app.AsAsync(club.Head, async services =>
    {
        await using var context = new BunitContext();
        context.JSInterop.Mode = JSRuntimeMode.Loose;
        context.SetRendererInfo(new RendererInfo("Static", false));
        context.Services.AddFallbackServiceProvider(services);
        var screen = context.Render(parameters);
        screen.WaitForElement("input[type=file]", TimeSpan.FromSeconds(60));
        ChosenFile file = new(name);

        await screen.InvokeAsync(() => screen.FindComponent<InputFile>().Instance.OnChange.InvokeAsync(new InputFileChangeEventArgs([file])));

        return (file, screen.Markup);
    });

    private sealed class ChosenFile(string name) : IBrowserFile
    {
        private readonly byte[] bytes = Encoding.UTF8.GetBytes("nothing");

        public bool IsRead { get; private set; }

        public string Name => name;

        public DateTimeOffset LastModified => default;

        public long Size => bytes.Length;

        public string ContentType => "text/csv";

        public Stream OpenReadStream(long maxAllowedSize = 512000, CancellationToken cancellationToken = default)
        {
            IsRead = true;
            return new MemoryStream(bytes);
        }
    }
}
