using System.Text;
using ClubCycle.Planning;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Templates;
using Ical.Net;
using NodaTime;

namespace ClubCycle.Calendars.Tests;

public sealed class WholeYearTests
{
    /// <summary>Web calendars are known to refuse feeds of about 1 MB (from memory, common practice).</summary>
    private const int MostBytes = 900_000;

    [Theory]
    [InlineData("U10")]
    [InlineData("U14")]
    [InlineData("U18")]
    [InlineData("Senior")]
    [InlineData("Masters")]
    public void A_squads_year_fits_into_a_feed_that_every_client_takes(string age)
    {
        var group = AgeGroup.Find(age)!.Value;
        var practices = new[] { IsoDayOfWeek.Tuesday, IsoDayOfWeek.Thursday }.Select(day => new Practice(day, new LocalTime(18, 0), 75, Practice.UsualPhases)).ToList();
        var squad = new Squad(NamedId.From("test", age), age, group, TrainingAge.Some, practices, IsoDayOfWeek.Saturday, null, []);
        var season = Season.Create(new LocalDate(2026, 2, 28), [new Stint(new LocalDate(2026, 10, 1), new LocalDate(2026, 11, 30)), new Stint(new LocalDate(2027, 1, 1), new LocalDate(2027, 2, 28))]).OrThrow();
        var plan = AnnualPlanner.Plan(new PlanRequest(A.Zone("Europe/Dublin"), IsoDayOfWeek.Monday, squad, season, null, [], BuiltInTemplates.For(group))).OrThrow();

        var text = IcsWriter.Write(FeedBuilder.From(plan, A.Zone("Europe/Dublin"), age, _ => (0, A.Changed)));

        Assert.InRange(Encoding.UTF8.GetByteCount(text), 1, MostBytes);
        Assert.Equal(
            plan.Sessions.Where(FeedBuilder.IsInFeed).Select(s => (s.Uid.ToString(), s.StartsAt.InZoneLeniently(A.Zone("Europe/Dublin")).ToInstant())).Order(),
            Calendar.Load(text)!.Events.Select(e => (e.Uid!, Instant.FromDateTimeUtc(e.DtStart!.AsUtc))).Order());
    }
}
