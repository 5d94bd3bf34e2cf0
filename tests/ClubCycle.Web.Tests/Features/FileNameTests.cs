using System.Net.Http.Headers;
using ClubCycle.Data.Templates;
using Microsoft.Extensions.DependencyInjection;

namespace ClubCycle.Web.Tests.Features;

public sealed class FileNameTests(TestApp app) : IClassFixture<TestApp>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>ASVS 5.4.1 and 5.4.2 (RFC 6266).</summary>
    [Theory]
    [InlineData("Été \"Ü16\"; filename=x.exe")]
    [InlineData("../../etc/passwd")]
    [InlineData("Winter plan")]
    public async Task The_name_of_a_file_that_goes_out_is_encoded_and_is_one(string title)
    {
        var club = await app.NewClubAsync();
        var id = await app.InClubAsync(club.Id, async s =>
        {
            var templates = s.GetRequiredService<TemplateStore>();
            return (await templates.CloneAsync((await templates.ListAsync(Cancel))[0].Id, null, title, club.Head, Cancel)).OrThrow();
        });

        var answer = await (await club.SignedInAsync(club.Head)).GetAsync($"/templates/{id}/file", Cancel);

        var raw = Assert.Single(answer.Content.Headers.NonValidated["Content-Disposition"]);
        var named = ContentDispositionHeaderValue.Parse(raw);
        Assert.Equal("attachment", named.DispositionType);
        Assert.Equal(["filename", "filename*"], named.Parameters.Select(p => p.Name).Order(StringComparer.Ordinal));
        Assert.All(raw, sign => Assert.InRange(sign, ' ', '~'));
        Assert.Matches("^[a-z0-9-]+-1[.]json$", named.FileNameStar);
    }
}
