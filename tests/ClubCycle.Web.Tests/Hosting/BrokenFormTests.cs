using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.RegularExpressions;

namespace ClubCycle.Web.Tests.Hosting;

/// <summary>Forms that no browser sends.</summary>
public sealed partial class BrokenFormTests(TestApp app) : IClassFixture<TestApp>, IAsyncLifetime
{
    private static readonly Dictionary<string, Func<HttpContent>> Broken = new()
    {
        ["no end"] = () => Content("--x\r\nContent-Disposition: form-data; name=\"password\"\r\n\r\nsecret", "multipart/form-data; boundary=x"),
        ["headers only"] = () => Content("--x\r\nContent-Disposition: form-data; name=\"email\"\r\n", "multipart/form-data; boundary=x"),
        ["another boundary"] = () => Content("--y\r\nContent-Disposition: form-data; name=\"email\"\r\n\r\na\r\n--y--\r\n", "multipart/form-data; boundary=x"),
        ["no boundary"] = () => Content("--x--\r\n", "multipart/form-data"),
        ["a boundary of 200 letters"] = () => Content("--x--\r\n", "multipart/form-data; boundary=" + new string('b', 200)),
        ["a header of 64 KB"] = () => Content($"--x\r\nContent-Disposition: form-data; name=\"{new string('n', 65_536)}\"\r\n\r\na\r\n--x--\r\n", "multipart/form-data; boundary=x"),
        ["100,000 fields"] = () => Content(string.Join('&', Enumerable.Range(0, 100_000).Select(i => $"f{i}=1")), "application/x-www-form-urlencoded"),
        ["a name of 1 MB"] = () => Content(new string('n', 1_000_000) + "=1", "application/x-www-form-urlencoded"),
        ["JSON"] = () => Content("{\"email\":\"a\"}", "application/json"),
        ["plain text"] = () => Content("email=a", "text/plain"),
        ["no type"] = () => Content("email=a", null),
    };

    /// <summary>Read as forms that lack what was asked for.</summary>
    private static readonly Dictionary<string, Func<HttpContent>> Odd = new()
    {
        ["nothing"] = () => Content("", "multipart/form-data; boundary=x"),
        ["half an escape and a NUL"] = () => Content("email=%&password=%00&%zz", "application/x-www-form-urlencoded"),
        ["bytes that are no text"] = () => Content([0xFF, 0xFE, 0x00, 0xC3, 0x28], "application/x-www-form-urlencoded"),
        ["no such charset"] = () => Content("email=a", "application/x-www-form-urlencoded; charset=nowhere"),
    };

    private HttpClient _coach = null!;
    private string _token = "";
    private string _player = "";

    public static TheoryData<string> BrokenNames => [.. Broken.Keys];

    public static TheoryData<string> OddNames => [.. Odd.Keys];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        var club = await app.NewClubAsync();
        _player = (await club.NewLinkAsync()).Token;
        _coach = await club.SignedInAsync(club.Head);
        _token = AntiforgeryToken().Match(await _coach.GetStringAsync("/account/password", Cancel)).Groups[1].Value;
    }

    public ValueTask DisposeAsync()
    {
        _coach.Dispose();
        return ValueTask.CompletedTask;
    }

    [Theory]
    [MemberData(nameof(BrokenNames))]
    public async Task A_broken_form_is_answered_with_what_the_sender_did_wrong(string body) =>
        Assert.All(await AnswersAsync(Broken[body]), a => Assert.InRange(a.Status, 400, 499));

    [Theory]
    [MemberData(nameof(OddNames))]
    public async Task A_form_that_can_just_be_read_breaks_nothing(string body) =>
        Assert.All(await AnswersAsync(Odd[body]), a => Assert.InRange(a.Status, 200, 499));

    [Theory]
    [InlineData("no end")]
    [InlineData("no boundary")]
    [InlineData("100,000 fields")]
    [InlineData("JSON")]
    public async Task A_player_who_sends_a_broken_form_gets_the_page_with_the_questions(string body)
    {
        using var answer = await SendAsync($"/p/{_player}/health", Broken[body], trusted: false);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal("text/html", answer.Content.Headers.ContentType?.MediaType);
        Assert.Contains("Hello Ines", await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
    }

    /// <summary>Of every address that takes forms, and of pages, which take none: with and without the token of a signed-in coach.</summary>
    private async Task<List<(string Address, bool Trusted, int Status)>> AnswersAsync(Func<HttpContent> body)
    {
        List<(string, bool, int)> answers = [];
        foreach (var address in (string[])["/setup", "/account/sign-in", "/account/sign-in-link/x", "/account/password", $"/p/{_player}/health", "/p/x/health", $"/p/{_player}", "/", "/squads", "/nowhere", "/account/sign-out"])
        {
            foreach (var trusted in (bool[])[false, true])
            {
                using var answer = await SendAsync(address, body, trusted);
                answers.Add((address, trusted, (int)answer.StatusCode));
            }
        }

        return answers;
    }

    private async Task<HttpResponseMessage> SendAsync(string address, Func<HttpContent> body, bool trusted)
    {
        using HttpRequestMessage request = new(HttpMethod.Post, address) { Content = body() };
        if (trusted)
        {
            request.Headers.Add("RequestVerificationToken", _token);
        }

        return await _coach.SendAsync(request, Cancel);
    }

    private static ByteArrayContent Content(string body, string? type) => Content(Encoding.UTF8.GetBytes(body), type);

    private static ByteArrayContent Content(byte[] body, string? type)
    {
        ByteArrayContent content = new(body);
        content.Headers.ContentType = type is null ? null : MediaTypeHeaderValue.Parse(type);
        return content;
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex AntiforgeryToken();
}
