using System.Net;
using System.Text.RegularExpressions;
using ClubCycle.Data;
using ClubCycle.Data.Demo;
using ClubCycle.Data.Links;
using ClubCycle.Data.Players;
using ClubCycle.Planning.Feeds;
using ClubCycle.Web.Commands;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace ClubCycle.Web.Tests.Feeds;

/// <summary>All feeds of the demo club, with everything ticked, searched for people.</summary>
public sealed class FeedPrivacyTests(TestApp app) : IClassFixture<TestApp>
{
    private static readonly string[] NeverInAFeed = ["\nATTENDEE", "\nORGANIZER", "\nCONTACT", "mailto:", "@", "effort logged", "logged effort", "attended", "attendance", "injur", "birth"];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task No_feed_of_the_demo_club_names_a_person_or_tells_anything_about_one()
    {
        Assert.True(await DemoStart.FillAsync(app.Services, Cancel));
        var (people, feeds) = await app.InClubAsync(DemoClub.ClubId, async services =>
        {
            await using var db = await services.GetRequiredService<IClubDbFactory>().OpenAsync(Cancel);
            var players = await db.Players.Select(p => new { p.Id, p.SquadId, p.Name }).ToListAsync(Cancel);
            var coaches = await db.Users.Select(u => new { u.Id, u.DisplayName }).ToListAsync(Cancel);
            var links = services.GetRequiredService<LinkStore>();
            List<string> addresses = [];
            foreach (var player in players.DistinctBy(p => p.SquadId))
            {
                (await services.GetRequiredService<GuardianStore>().AgreedOnPaperAsync(player.SquadId, [player.Id], new LocalDate(2026, 2, 1), coaches[0].Id, Cancel)).OrThrow();
                foreach (var options in new[] { new FeedOptions(Places: true, ReminderMinutes: 60), new FeedOptions(Places: true, DayOnly: true) })
                {
                    addresses.Add($"/calendar/{(await links.CreateAsync(player.SquadId, player.Id, "test", options, coaches[0].Id, Cancel)).OrThrow().Token}.ics");
                }
            }

            string[] names = [.. players.Select(p => p.Name), .. coaches.Select(c => c.DisplayName)];
            return (names.Concat(names.SelectMany(n => n.Split(' ')).Where(word => word.Length > 2)).Distinct().ToList(), addresses);
        });

        List<string> told = [];
        foreach (var address in feeds)
        {
            var text = await FilledAsync(address);
            Assert.Contains("BEGIN:VEVENT", text, StringComparison.Ordinal);
            told.AddRange(people.Where(name => Regex.IsMatch(text, $@"(?<!\w){Regex.Escape(name)}(?!\w)")));
            told.AddRange(NeverInAFeed.Where(words => text.Contains(words, StringComparison.OrdinalIgnoreCase)));
        }

        Assert.Equal(20, feeds.Count);
        Assert.Empty(told.Distinct());
    }

    /// <summary>Without folds, once the worker has rendered it.</summary>
    private async Task<string> FilledAsync(string address)
    {
        for (var i = 0; i < 600; i++)
        {
            using var answer = await app.Browser().GetAsync(address, Cancel);
            if (answer.StatusCode != HttpStatusCode.ServiceUnavailable)
            {
                return (await answer.EnsureSuccessStatusCode().Content.ReadAsStringAsync(Cancel)).Replace("\r\n ", "", StringComparison.Ordinal);
            }

            await Task.Delay(100, Cancel);
        }

        throw new InvalidOperationException("The feed was never rendered.");
    }
}
