using System.Net;
using ClubCycle.Web.Account;

namespace ClubCycle.Web.Tests.Account;

/// <summary>ASVS 6.3.1: the brake for an address, as docs/operations.md has it.</summary>
public sealed class SignInLimitTests : IAsyncLifetime
{
    private readonly TestApp _app = new();

    public async ValueTask InitializeAsync()
    {
        await _app.InitializeAsync();
        _app.Settings["SignIn:TriesPerMinute"] = "30";
    }

    public ValueTask DisposeAsync() => _app.DisposeAsync();

    [Fact]
    public async Task The_thirty_first_try_of_an_address_within_a_minute_is_refused_even_with_the_right_password()
    {
        Assert.Equal(30, SignInLimit.DefaultTriesPerMinute);
        var club = await _app.NewClubAsync();
        var answers = new List<HttpStatusCode>();
        for (var i = 0; i < 31; i++)
        {
            answers.Add((await TestApp.SendFormAsync(_app.Browser(), "/account/sign-in", $"/account/sign-in-link/guess{i}")).StatusCode);
        }

        var right = await TestApp.SendFormAsync(_app.Browser(), "/account/sign-in", "/account/sign-in", ("email", $"{club.Head:N}@example.org"), ("password", TestApp.Password));

        Assert.All(answers.Take(30), answer => Assert.Equal(HttpStatusCode.NotFound, answer));
        Assert.Equal((HttpStatusCode.TooManyRequests, HttpStatusCode.TooManyRequests), (answers[30], right.StatusCode));
    }
}
