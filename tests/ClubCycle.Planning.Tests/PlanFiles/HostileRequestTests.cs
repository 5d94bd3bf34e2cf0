using System.Globalization;
using System.Text.Json;
using ClubCycle.Planning.PlanFiles;

namespace ClubCycle.Planning.Tests.PlanFiles;

/// <summary>Requests that are wrong in one place: each is refused with its code and its path, and nothing throws.</summary>
public class HostileRequestTests
{
    /// <summary>Every property a request may carry.</summary>
    internal const string Valid = """
        {
          "club": { "timeZone": "Europe/Lisbon", "firstWeekday": "monday" },
          "squad": {
            "id": "0f8fad5b-d9cb-469f-a165-70867728950e", "name": "Women 1", "ageGroup": "Senior", "trainingAge": "trained",
            "practices": [ { "day": "tuesday", "start": "19:30", "minutes": 90 }, { "day": "thursday", "start": "19:45", "minutes": 75, "phases": ["pre-season", "in-season"] } ],
            "matchDay": "saturday", "matchStart": "14:00",
            "windows": [ { "days": ["monday", "wednesday", "friday"], "from": "18:00", "to": "21:00" } ]
          },
          "season": {
            "previousLastDay": "2026-02-28",
            "stints": [ { "first": "2026-10-01", "last": "2026-11-30" }, { "first": "2027-01-01", "last": "2027-02-28" } ]
          },
          "fixtures": [
            { "date": "2026-10-03", "start": "14:00", "opponent": "Reds", "id": "7c9e6679-7425-40de-944b-e07fc1f90ae7" },
            { "date": "2026-10-10", "opponent": "Blues", "id": "7c9e6679-7425-40de-944b-e07fc1f90ae8" }
          ],
          "closed": [ { "first": "2026-07-20", "last": "2026-08-02", "why": "club closed" } ],
          "template": "senior-standard",
          "planFrom": "2026-03-01",
          "published": null,
          "pins": [
            { "weekFirst": "2026-07-06", "slot": "mixed.speed.1", "date": "2026-07-09", "start": "18:00", "skipped": false },
            { "weekFirst": "2026-08-03", "slot": "added.1", "date": "2026-08-05", "workout": "easy-run", "minutes": 40, "note": "Bring a bike\nand a helmet." }
          ],
          "lengths": [ { "gap": 0, "chain": "long", "phase": 1, "weeks": 12 } ]
        }
        """;

    [Fact]
    public void The_request_that_the_others_spoil_is_planned() => Assert.Empty(ProblemsOf(Valid));

    [Theory]
    // The text.
    [InlineData("\"club\":", ", \"club\":", "request.not-json", "")]
    [InlineData("\"published\": null,", "\"published\": null, // later", "request.not-json", "")]
    [InlineData("\"published\": null,", "\"published\": NaN,", "request.not-json", "")]
    // Properties.
    [InlineData("\"planFrom\"", "\"planfrom\"", "request.unknown-property", "planfrom")]
    [InlineData("\"matchDay\"", "\"match_day\"", "request.unknown-property", "squad.match_day")]
    [InlineData("\"minutes\": 75", "\"minutes\": 75, \"ground\": \"pitch 2\"", "request.unknown-property", "squad.practices[1].ground")]
    [InlineData("\"why\": \"club closed\"", "\"__proto__\": {}", "request.unknown-property", "closed[0].__proto__")]
    [InlineData("\"timeZone\":", "\"timeZone\": \"Europe/Paris\", \"timeZone\":", "request.duplicate-property", "club.timeZone")]
    [InlineData("\"why\": \"club closed\"", "\"\\ud800\": 1", "request.bad-text", "closed[0]")]
    [InlineData("\"timeZone\": \"Europe/Lisbon\",", "", "request.missing-property", "club.timeZone")]
    [InlineData("\"name\": \"Women 1\",", "", "request.missing-property", "squad.name")]
    [InlineData("\"name\": \"Women 1\",", "\"name\": null,", "request.missing-property", "squad.name")]
    [InlineData("\"matchDay\": \"saturday\",", "", "request.missing-property", "squad.matchDay")]
    [InlineData("{ \"first\": \"2026-10-01\", \"last\": \"2026-11-30\" }", "{ \"first\": \"2026-10-01\" }", "request.missing-property", "season.stints[0].last")]
    [InlineData("\"slot\": \"mixed.speed.1\",", "", "request.missing-property", "pins[0].slot")]
    // Kinds of value.
    [InlineData("\"club\": { \"timeZone\": \"Europe/Lisbon\", \"firstWeekday\": \"monday\" }", "\"club\": []", "request.wrong-type", "club")]
    [InlineData("{ \"day\": \"tuesday\", \"start\": \"19:30\", \"minutes\": 90 }", "null", "request.wrong-type", "squad.practices[0]")]
    [InlineData("{ \"days\": [\"monday\", \"wednesday\", \"friday\"], \"from\": \"18:00\", \"to\": \"21:00\" }", "\"evenings\"", "request.wrong-type", "squad.windows[0]")]
    [InlineData("{ \"first\": \"2026-10-01\", \"last\": \"2026-11-30\" }", "\"2026-10-01\"", "request.wrong-type", "season.stints[0]")]
    [InlineData("{ \"date\": \"2026-10-10\", \"opponent\": \"Blues\", \"id\": \"7c9e6679-7425-40de-944b-e07fc1f90ae8\" }", "[]", "request.wrong-type", "fixtures[1]")]
    [InlineData("{ \"weekFirst\": \"2026-07-06\", \"slot\": \"mixed.speed.1\", \"date\": \"2026-07-09\", \"start\": \"18:00\", \"skipped\": false }", "true", "request.wrong-type", "pins[0]")]
    [InlineData("\"squad\": {", "\"squad\": \"Women 1\", \"before\": {", "request.wrong-type", "squad")]
    [InlineData("\"season\": {", "\"season\": 2026, \"before\": {", "request.wrong-type", "season")]
    [InlineData("\"ageGroup\": \"Senior\"", "\"ageGroup\": 19", "request.wrong-type", "squad.ageGroup")]
    [InlineData("\"name\": \"Women 1\"", "\"name\": 1", "request.wrong-type", "squad.name")]
    [InlineData("\"minutes\": 90", "\"minutes\": \"90\"", "request.wrong-type", "squad.practices[0].minutes")]
    [InlineData("\"minutes\": 90", "\"minutes\": 90.5", "request.wrong-type", "squad.practices[0].minutes")]
    [InlineData("\"minutes\": 90", "\"minutes\": 1e999", "request.wrong-type", "squad.practices[0].minutes")]
    [InlineData("\"skipped\": false", "\"skipped\": 0", "request.wrong-type", "pins[0].skipped")]
    [InlineData("\"closed\": [ { \"first\": \"2026-07-20\", \"last\": \"2026-08-02\", \"why\": \"club closed\" } ]", "\"closed\": \"2026-07-20\"", "request.wrong-type", "closed")]
    [InlineData("\"minutes\": 40", "\"minutes\": \"long\"", "request.wrong-type", "pins[1].minutes")]
    [InlineData("\"minutes\": 40", "\"minutes\": 9", "request.out-of-range", "pins[1].minutes")]
    [InlineData("\"minutes\": 40", "\"minutes\": 121", "request.out-of-range", "pins[1].minutes")]
    [InlineData("\"minutes\": 40, ", "", "pin.minutes", "pins[1].minutes")]
    [InlineData("\"workout\": \"easy-run\", ", "", "pin.workout", "pins[1].workout")]
    [InlineData("\"workout\": \"easy-run\"", "\"workout\": \"handstand\"", "pin.workout", "pins[1].workout")]
    [InlineData("\"date\": \"2026-08-05\", ", "", "pin.date", "pins[1].date")]
    [InlineData("\"date\": \"2026-08-05\"", "\"date\": \"2026-08-10\"", "pin.outside-week", "pins[1].date")]
    [InlineData("\"added.1\"", "\"added.01\"", "pin.slot", "pins[1].slot")]
    [InlineData("\"added.1\"", "\"added.0\"", "pin.slot", "pins[1].slot")]
    [InlineData("\"added.1\"", "\"added.\"", "pin.slot", "pins[1].slot")]
    [InlineData("bike\\nand", "bike\\u0000and", "request.bad-text", "pins[1].note")]
    [InlineData("bike\\nand", "bike\\r\\nand", "request.bad-text", "pins[1].note")]
    [InlineData("\"gap\": 0", "\"gap\": -1", "request.out-of-range", "lengths[0].gap")]
    [InlineData("\"weeks\": 12", "\"weeks\": 61", "request.out-of-range", "lengths[0].weeks")]
    [InlineData("\"chain\": \"long\", ", "", "request.missing-property", "lengths[0].chain")]
    [InlineData("\"weeks\": 12 }", "\"weeks\": 12 }, { \"gap\": 0, \"chain\": \"long\", \"phase\": 1, \"weeks\": 9 }", "length.duplicate", "lengths[1]")]
    // Text.
    [InlineData("\"Reds\"", "\"\\ud83d\"", "request.bad-text", "fixtures[0].opponent")]
    [InlineData("\"Reds\"", "\"Re\\u0000ds\"", "request.bad-text", "fixtures[0].opponent")]
    [InlineData("\"club closed\"", "\"closed\\r\\nATTENDEE:mailto:x\"", "request.bad-text", "closed[0].why")]
    [InlineData("\"Women 1\"", "\"   \"", "squad.name-missing", "squad.name")]
    // Dates and times, strict and in ASCII digits.
    [InlineData("\"planFrom\": \"2026-03-01\"", "\"planFrom\": \"2026-02-30\"", "request.bad-date", "planFrom")]
    [InlineData("\"planFrom\": \"2026-03-01\"", "\"planFrom\": \"01/02/2026\"", "request.bad-date", "planFrom")]
    [InlineData("\"planFrom\": \"2026-03-01\"", "\"planFrom\": \"2026-3-1\"", "request.bad-date", "planFrom")]
    [InlineData("\"planFrom\": \"2026-03-01\"", "\"planFrom\": \" 2026-03-01\"", "request.bad-date", "planFrom")]
    [InlineData("\"planFrom\": \"2026-03-01\"", "\"planFrom\": \"2026-W10-1\"", "request.bad-date", "planFrom")]
    [InlineData("\"planFrom\": \"2026-03-01\"", "\"planFrom\": \"2026-03-01T00:00:00Z\"", "request.bad-date", "planFrom")]
    [InlineData("\"planFrom\": \"2026-03-01\"", "\"planFrom\": \"٢٠٢٦-٠٣-٠١\"", "request.bad-date", "planFrom")]
    [InlineData("\"planFrom\": \"2026-03-01\"", "\"planFrom\": \"\"", "request.bad-date", "planFrom")]
    [InlineData("\"planFrom\": \"2026-03-01\"", "\"planFrom\": \"1899-12-31\"", "request.date-out-of-range", "planFrom")]
    [InlineData("\"planFrom\": \"2026-03-01\"", "\"planFrom\": \"2201-01-01\"", "request.date-out-of-range", "planFrom")]
    [InlineData("\"first\": \"2026-10-01\"", "\"first\": \"2100-02-29\"", "request.bad-date", "season.stints[0].first")]
    [InlineData("\"matchStart\": \"14:00\"", "\"matchStart\": \"24:00\"", "request.bad-time", "squad.matchStart")]
    [InlineData("\"matchStart\": \"14:00\"", "\"matchStart\": \"2 pm\"", "request.bad-time", "squad.matchStart")]
    [InlineData("\"matchStart\": \"14:00\"", "\"matchStart\": \"14:00:00\"", "request.bad-time", "squad.matchStart")]
    // Names that must be known.
    [InlineData("Europe/Lisbon", "Europe/Lisboa", "club.time-zone-unknown", "club.timeZone")]
    [InlineData("Europe/Lisbon", "GMT Standard Time", "club.time-zone-unknown", "club.timeZone")]
    [InlineData("\"firstWeekday\": \"monday\"", "\"firstWeekday\": \"Monday\"", "request.unknown-value", "club.firstWeekday")]
    [InlineData("\"day\": \"thursday\"", "\"day\": \"thu\"", "request.unknown-value", "squad.practices[1].day")]
    [InlineData("\"wednesday\"", "\"3\"", "request.unknown-value", "squad.windows[0].days[1]")]
    [InlineData("\"Senior\"", "\"senior\"", "squad.age-group-unknown", "squad.ageGroup")]
    [InlineData("\"Senior\"", "\"U19\"", "squad.age-group-unknown", "squad.ageGroup")]
    [InlineData("\"trained\"", "\"veteran\"", "request.unknown-value", "squad.trainingAge")]
    [InlineData("\"trained\"", "\"2\"", "request.unknown-value", "squad.trainingAge")]
    [InlineData("[\"pre-season\", \"in-season\"]", "[\"pre-season\", \"PreSeason\"]", "request.unknown-value", "squad.practices[1].phases[1]")]
    [InlineData("\"senior-standard\"", "\"Senior standard\"", "template.unknown", "template")]
    [InlineData("\"senior-standard\"", "7", "request.wrong-type", "template")]
    [InlineData("0f8fad5b-d9cb-469f-a165-70867728950e", "0f8fad5bd9cb469fa16570867728950e", "request.bad-id", "squad.id")]
    // What the domain refuses.
    [InlineData("\"minutes\": 90", "\"minutes\": 14", "squad.practice-minutes", "squad.practices[0].minutes")]
    [InlineData("\"minutes\": 90", "\"minutes\": -2147483648", "squad.practice-minutes", "squad.practices[0].minutes")]
    [InlineData("\"from\": \"18:00\"", "\"from\": \"21:00\"", "squad.window-reversed", "squad.windows[0].to")]
    [InlineData("\"stints\": [ { \"first\": \"2026-10-01\", \"last\": \"2026-11-30\" }, { \"first\": \"2027-01-01\", \"last\": \"2027-02-28\" } ]", "\"stints\": []", "season.no-stints", "season.stints")]
    [InlineData("\"last\": \"2026-11-30\"", "\"last\": \"2026-09-30\"", "season.stint-reversed", "season.stints[0].last")]
    [InlineData("\"last\": \"2026-11-30\"", "\"last\": \"2027-01-01\"", "season.stints-overlap", "season.stints[1].first")]
    [InlineData("\"previousLastDay\": \"2026-02-28\"", "\"previousLastDay\": \"2026-10-01\"", "season.starts-before-cycle", "season.stints[0].first")]
    [InlineData("\"previousLastDay\": \"2026-02-28\"", "\"previousLastDay\": \"2025-12-31\"", "season.cycle-too-long", "season.previousLastDay")]
    [InlineData("\"date\": \"2026-10-03\"", "\"date\": \"2027-03-01\"", "fixture.outside-cycle", "fixtures[0].date")]
    [InlineData("e07fc1f90ae8", "e07fc1f90ae7", "fixture.duplicate-id", "fixtures[1].id")]
    [InlineData("\"last\": \"2026-08-02\"", "\"last\": \"2026-07-19\"", "closed.reversed", "closed[0].last")]
    // A published plan is read as strictly.
    [InlineData("\"published\": null", "\"published\": {}", "request.missing-property", "published.cycle")]
    [InlineData("\"published\": null", "\"published\": { \"cycle\": { \"first\": \"2026-03-01\", \"last\": \"2026-02-28\" }, \"phases\": [], \"weeks\": [], \"sessions\": [] }", "published.cycle-reversed", "published")]
    [InlineData("\"published\": null", "\"published\": { \"cycle\": { \"first\": \"2026-03-01\", \"last\": \"2027-02-28\" }, \"phases\": [ { \"kind\": \"rest\", \"first\": \"2026-03-01\", \"last\": \"2026-03-02\", \"weeks\": 1 } ], \"weeks\": [], \"sessions\": [] }", "request.unknown-value", "published.phases[0].kind")]
    public void Is_refused_at_its_place(string find, string put, string code, string at)
    {
        var problem = Assert.Single(ProblemsOf(Spoil(find, put)), p => p.Code == code && p.At == at);

        Assert.True(problem.Message.Length is > 20 and < 2000, problem.Message);
    }

    [Theory]
    [InlineData("Europe/Lisboa", "such as Europe/Lisbon")]
    [InlineData("europe/lisbon", "Europe/Lisbon?")]
    [InlineData("Lisbon", "Europe/Lisbon?")]
    [InlineData("GMT Standard Time", "Write Europe/London.")]
    public void A_wrong_zone_names_a_right_one(string zone, string hint) =>
        Assert.Contains(hint, Assert.Single(ProblemsOf(Spoil("Europe/Lisbon", zone))).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("Europe/Kyiv")]
    [InlineData("Asia/Kathmandu")]
    [InlineData("Australia/Lord_Howe")]
    [InlineData("US/Eastern")]
    [InlineData("UTC")]
    public void Renamed_and_odd_zones_are_known(string zone) => Assert.Empty(ProblemsOf(Spoil("Europe/Lisbon", zone)));

    [Fact]
    public void All_problems_are_said_at_once()
    {
        var text = Spoil("\"monday\" },", "\"noday\" },").Replace("\"minutes\": 90", "\"minutes\": true", StringComparison.Ordinal).Replace("2026-08-02", "2026-08-32", StringComparison.Ordinal);

        Assert.Equal(["club.firstWeekday", "squad.practices[0].minutes", "closed[0].last"], ProblemsOf(text).Select(p => p.At));
    }

    [Fact]
    public void An_unknown_property_is_told_with_the_known_ones() =>
        Assert.Equal(
            "'zone' is not known here. Known: timeZone, firstWeekday. Correct or remove it.",
            ProblemsOf(Spoil("\"timeZone\"", "\"zone\"")).First(p => p.Code == "request.unknown-property").Message);

    [Fact]
    public void Broken_text_is_told_with_its_line() =>
        Assert.Contains("line 2, position 3", Assert.Single(ProblemsOf("{\n  oops }")).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("")]
    [InlineData(" ")]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("\"text\"")]
    [InlineData("{} {}")]
    [InlineData("{}")]
    [InlineData("\ufeff{}")]
    public void What_is_no_request_is_refused(string text)
    {
        Assert.NotEmpty(ProblemsOf(text));
        Assert.IsType<Result<SquadPlan>.Failed>(PlanFile.ReadPlan(text));
        Assert.IsType<Result<Planning.Templates.Template>.Failed>(TemplateFile.Read(text));
    }

    [Fact]
    public void Half_a_surrogate_pair_in_the_text_itself_is_refused_and_not_replaced() => Assert.All(
        new[] { "\ud800", "{ \"\udc00\": 1 }", Spoil("\"Reds\"", "\"\ud83d\"") }, text => Assert.Equal("request.bad-text", Assert.Single(ProblemsOf(text)).Code));

    [Fact]
    public void Nesting_without_end_is_refused() =>
        Assert.Equal("request.not-json", Assert.Single(ProblemsOf(Spoil("\"published\": null", $"\"published\": {new string('[', 100_000)}"))).Code);

    [Fact]
    public void A_text_beyond_the_cap_is_refused_unread() =>
        Assert.Equal("request.too-large", Assert.Single(ProblemsOf(new string('{', 5 * 1024 * 1024))).Code);

    [Fact]
    public void A_list_beyond_its_cap_is_refused() =>
        Assert.Equal("request.too-many", Assert.Single(ProblemsOf(Spoil("\"closed\": [", $"\"closed\": [{string.Concat(Enumerable.Repeat("null,", 300))}"))).Code);

    [Fact]
    public void A_flood_of_mistakes_is_answered_briefly()
    {
        var flood = string.Concat(Enumerable.Range(0, 200_000).Select(i => string.Create(CultureInfo.InvariantCulture, $"\"x{i}\":1,")));

        Assert.InRange(PlanFile.WriteProblems(ProblemsOf(Spoil("{\n", "{" + flood))).Length, 1, 100_000);
    }

    [Fact]
    public void Very_long_text_is_not_repeated_in_the_answer() =>
        Assert.All(
            [Spoil("\"Reds\"", $"\"{new string('x', 100_000)}\""), Spoil("\"planFrom\"", $"\"{string.Concat(Enumerable.Repeat("😀", 50_000))}\""), Spoil("\"Women 1\"", $"\"{new string('x', 101)}\"")],
            text => Assert.InRange(PlanFile.WriteProblems(ProblemsOf(text)).Length, 1, 2000));

    [Fact]
    public void The_answer_is_JSON_whatever_the_request_held()
    {
        using var answer = JsonDocument.Parse(PlanFile.WriteProblems(ProblemsOf(Spoil("\"senior-standard\"", "\"</script>\\\"\u202e é 😀\""))));
        var problem = answer.RootElement.GetProperty("problems")[0];

        Assert.Equal(["code", "at", "message"], problem.EnumerateObject().Select(p => p.Name));
        Assert.Contains("</script>\"\u202e é 😀", problem.GetProperty("message").GetString(), StringComparison.Ordinal);
    }

    /// <summary>The problems of reading and planning, as the command and the interface answer them.</summary>
    internal static IReadOnlyList<Problem> ProblemsOf(string json) => PlanFile.ReadRequest(json) switch
    {
        Result<PlanRequest>.Ok(var request) => AnnualPlanner.Plan(request) is Result<SquadPlan>.Failed failed ? failed.Problems : [],
        Result<PlanRequest>.Failed failed => failed.Problems,
        var other => throw new InvalidOperationException($"Unknown result {other.GetType()}"),
    };

    private static string Spoil(string find, string put)
    {
        Assert.Contains(find, Valid, StringComparison.Ordinal);
        return Valid.Replace(find, put, StringComparison.Ordinal);
    }
}
