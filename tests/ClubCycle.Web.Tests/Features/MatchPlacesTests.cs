using System.Text;
using ClubCycle.Calendars.FixtureFiles;
using ClubCycle.Data.Fixtures;
using ClubCycle.Data.Links;
using ClubCycle.Planning.Feeds;
using ClubCycle.Web.Features.Plans;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace ClubCycle.Web.Tests.Features;

/// <summary>Where a match is played, from the league's file into the phones.</summary>
public sealed class MatchPlacesTests(TestApp app) : IClassFixture<TestApp>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_place_of_a_file_s_match_comes_into_calendars_that_show_places_and_a_newer_file_changes_it()
    {
        var club = await app.NewClubAsync();
        var with = await LinkAsync(club, new FeedOptions(Places: true));
        var without = await LinkAsync(club, new FeedOptions());

        await TakeAsync(club, @"North pitch\, gate 2");
        await club.PublishAsync();
        Assert.Equal(["North pitch\\, gate 2"], await PlacesAsync(with));

        await TakeAsync(club, "South pitch");
        await club.PublishAsync();
        Assert.Equal(["South pitch"], await PlacesAsync(with));
        Assert.Empty(await PlacesAsync(without));
    }

    [Theory]
    [InlineData("Pitch \u202Eeno", "fixture.place-direction")]
    [InlineData("Pitch\u0007", "fixture.place-control-character")]
    [InlineData("Pitch one hundred and one letters long, which is one more than there is room for in any place of a match", "fixture.place-too-long")]
    public async Task A_place_that_cannot_be_kept_is_refused_whoever_sends_it(string place, string problem)
    {
        var club = await app.NewClubAsync();

        var taken = await app.AsAsync(club.Head, s => s.GetRequiredService<PlanActions>().TakeFileAsync(
            club.OwnSquad, [new FixtureFromFile(null, new LocalDate(2026, 10, 10), null, "Riverside", place, "one")], [], Cancel));

        Assert.False(taken.TryGet(out _, out var problems));
        Assert.Equal(problem, problems[0].Code);
    }

    /// <summary>Reads a calendar file with one match and takes what it brings or changes.</summary>
    private Task<int> TakeAsync(TestClub club, string location) => app.AsAsync(club.Head, async services =>
    {
        var plans = services.GetRequiredService<PlanActions>();
        var entered = (await plans.EnteredMatchesAsync(club.OwnSquad, Cancel)).OrThrow();
        var file = $"BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nUID:one\r\nSUMMARY:Riverside\r\nLOCATION:{location}\r\nDTSTART:20261010T140000\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n";
        var read = (await FixtureIcs.ReadAsync(Encoding.UTF8.GetBytes(file), DateTimeZone.Utc, Cancel)).OrThrow().Good;
        var match = FixtureMatch.Against([.. entered.Select(e => new KnownFixture(e.Match.Id, e.Match.Fixture.Date, e.Match.Fixture.Start, e.Match.Fixture.Opponent, e.SourceKey, e.Match.Fixture.Place))], read).Read.Single();
        var taken = match switch
        {
            MatchedFixture.New { Read: var one } => new FixtureFromFile(null, one.Date, one.Start, one.Opponent, one.Place, one.SourceKey),
            MatchedFixture.Changed { To: var to } => new FixtureFromFile((to.Id, entered.Single().Match.Version), to.Date, to.Start, to.Opponent, to.Place, to.SourceKey),
            _ => throw new InvalidOperationException($"The file changes nothing: {match}"),
        };
        return (await plans.TakeFileAsync(club.OwnSquad, [taken], [], Cancel)).OrThrow();
    });

    private Task<string> LinkAsync(TestClub club, FeedOptions options) => app.InClubAsync(club.Id, async services =>
        (await services.GetRequiredService<LinkStore>().CreateAsync(club.OwnSquad, club.Player, options.Code, options, club.Head, Cancel)).OrThrow().Token);

    private async Task<IEnumerable<string>> PlacesAsync(string token)
    {
        var feed = (await app.Browser().GetStringAsync($"/calendar/{token}.ics", Cancel)).Replace("\r\n ", "", StringComparison.Ordinal);
        Assert.Contains("SUMMARY:Match: Riverside", feed, StringComparison.Ordinal);
        return feed.Split("\r\n").Where(line => line.StartsWith("LOCATION:", StringComparison.Ordinal)).Select(line => line["LOCATION:".Length..]);
    }
}
