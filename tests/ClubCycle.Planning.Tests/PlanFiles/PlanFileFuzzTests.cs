using System.Diagnostics;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Templates;
using CsCheck;

namespace ClubCycle.Planning.Tests.PlanFiles;

/// <summary>
/// Requests spoiled at random, in their text and in their structure: answered with a plan or with problems, never with an exception.
/// <c>CLUBCYCLE_FUZZ_MINUTES</c> goes on for so long and holds every answer to a second.
/// </summary>
public class PlanFileFuzzTests
{
    private const int Texts = 1000;
    private const int Structures = 500;
    private const int Tests = 3;

    /// <summary>For each of the tests; -1 without the variable.</summary>
    private static readonly int Seconds = int.TryParse(Environment.GetEnvironmentVariable("CLUBCYCLE_FUZZ_MINUTES"), out var minutes) ? minutes * 60 / Tests : -1;

    private static long _answers;

    private static readonly string[] Fragments =
    [
        "{", "}", "[", "]", ",", ":", "\"", "\\", "\\u0000", "\\ud800", "\u0000", "\ud800", "\udc00", "\u202e", "😀", "é", "null", "true", "-", "1e400", "0", "9999999999", "\n", "\r\n", "//", "/*", " ",
    ];

    private static readonly string[] Values =
    [
        "null", "true", "0", "-1", "1.5", "1e308", "2147483648", "\"\"", "\" \"", "\"\\u0000\"", "\"\\ud800\"", "\"2026-02-30\"", "\"1900-01-01\"", "\"2200-12-31\"", "\"2026-10-10\"", "\"2027-02-28\"",
        "\"23:59\"", "\"00:00\"", "\"monday\"", "\"U8\"", "\"Masters\"", "\"new\"", "\"break\"", "\"senior-standard\"", "\"youth-u8-u10\"", "\"easy-run\"", "\"UTC\"", "\"Pacific/Apia\"",
        "[]", "{}", "[null]", "[[]]", "{\"x\":1}", "15", "240", "60", "7", "\"7c9e6679-7425-40de-944b-e07fc1f90ae7\"",
    ];

    /// <summary>With a whole template and the first weeks of a published plan, so that those are spoiled too.</summary>
    private static readonly string Request = Rich();

    [Fact]
    public void Spoiled_text_is_answered()
    {
        var cut = Gen.Select(Gen.Int[0, Request.Length], Gen.Int[0, 40], Gen.Int[0, 4], Gen.Int[0, Fragments.Length - 1]);
        cut.Array[1, 3].Sample(
            cuts =>
            {
                var text = new StringBuilder(Request);
                foreach (var (at, length, copies, fragment) in cuts)
                {
                    var start = Math.Min(at, text.Length);
                    text.Remove(start, Math.Min(length, text.Length - start)).Insert(start, string.Concat(Enumerable.Repeat(Fragments[fragment], copies)));
                }

                Answered(text.ToString());
            },
            iter: Texts, time: Seconds);
    }

    [Fact]
    public void Spoiled_structure_is_answered()
    {
        var change = Gen.Select(Gen.Int[0, int.MaxValue - 1], Gen.Int[0, 3], Gen.Int[0, Values.Length - 1]);
        change.Array[1, 3].Sample(
            changes =>
            {
                var root = JsonNode.Parse(Request)!;
                foreach (var (pick, kind, value) in changes)
                {
                    Spoil(root, pick, kind, Values[value]);
                }

                Answered(root.ToJsonString());
            },
            iter: Structures, time: Seconds);
    }

    [Fact]
    public void Spoiled_templates_are_answered()
    {
        var template = TemplateFile.Write(BuiltInTemplates.Find("youth-u15-u16")!);
        var change = Gen.Select(Gen.Int[0, int.MaxValue - 1], Gen.Int[0, 3], Gen.Int[0, Values.Length - 1]);
        change.Array[1, 2].Sample(
            changes =>
            {
                var root = JsonNode.Parse(template)!;
                foreach (var (pick, kind, value) in changes)
                {
                    Spoil(root, pick, kind, Values[value]);
                }

                if (TemplateFile.Read(root.ToJsonString()) is Result<Template>.Ok(var read))
                {
                    var text = TemplateFile.Write(read);
                    Assert.Equal(text, TemplateFile.Write(TemplateFile.Read(text).OrThrow()));
                }
            },
            iter: Structures, time: Seconds);
    }

    /// <summary>Problems that are JSON, or a plan that reads back.</summary>
    private static void Answered(string text)
    {
        var from = Stopwatch.GetTimestamp();
        Read(text);
        var took = Stopwatch.GetElapsedTime(from);
        Assert.True(Seconds < 0 || took < TimeSpan.FromSeconds(1), $"{took} for {text}");
        if (Interlocked.Increment(ref _answers) % 10_000 == 0)
        {
            TestContext.Current.SendDiagnosticMessage($"{_answers} spoiled requests answered");
        }
    }

    private static void Read(string text)
    {
        var problems = HostileRequestTests.ProblemsOf(text);
        if (problems.Count > 0)
        {
            using var answer = JsonDocument.Parse(PlanFile.WriteProblems(problems));
            Assert.All(problems, p => Assert.Matches("^[a-z]+[.][a-z-]+$", p.Code));
            return;
        }

        var plan = PlanFile.WritePlan(A.Plan(PlanFile.ReadRequest(text).OrThrow()));
        Assert.Equal(plan, PlanFile.WritePlan(PlanFile.ReadPlan(plan).OrThrow()));
    }

    /// <summary>Replaces, removes or doubles one value somewhere below the root.</summary>
    private static void Spoil(JsonNode root, int pick, int kind, string value)
    {
        List<JsonNode> parents = [.. Below(root).Where(n => n is JsonObject { Count: > 0 } or JsonArray { Count: > 0 })];
        switch (parents[pick % parents.Count])
        {
            case JsonObject holder:
                var name = holder.ElementAt(pick / 7 % holder.Count).Key;
                if (kind == 0)
                {
                    holder.Remove(name);
                }
                else
                {
                    holder[name] = JsonNode.Parse(value.Contains("\\ud800", StringComparison.Ordinal) ? "\"?\"" : value);
                }

                break;
            case JsonArray list:
                var i = pick / 7 % list.Count;
                if (kind == 0)
                {
                    list.RemoveAt(i);
                }
                else if (kind == 1)
                {
                    list.Add(list[i]?.DeepClone());
                }
                else
                {
                    list[i] = JsonNode.Parse(value.Contains("\\ud800", StringComparison.Ordinal) ? "\"?\"" : value);
                }

                break;
        }
    }

    private static IEnumerable<JsonNode> Below(JsonNode node) => node switch
    {
        JsonObject holder => holder.Select(p => p.Value).OfType<JsonNode>().SelectMany(Below).Prepend(node),
        JsonArray list => list.OfType<JsonNode>().SelectMany(Below).Prepend(node),
        _ => [node],
    };

    private static string Rich()
    {
        var request = PlanFile.ReadRequest(HostileRequestTests.Valid).OrThrow();
        var plan = A.Plan(request);
        var from = A.Date("2026-10-05");
        return PlanFile.WriteRequest(request with
        {
            PlanFrom = from,
            Published = plan with
            {
                Weeks = [.. plan.Weeks.Take(2)],
                Sessions = [.. plan.Sessions.Where(s => s.Date >= from.PlusDays(-7) && s.Date < from.PlusDays(14))],
                Findings = [.. plan.Findings.Take(2)],
            },
        });
    }
}
