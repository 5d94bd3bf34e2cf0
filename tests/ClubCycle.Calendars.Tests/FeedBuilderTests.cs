using ClubCycle.Planning;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Calendars.Tests;

public sealed class FeedBuilderTests
{
    [Fact]
    public void Active_recovery_stays_out_of_the_feed()
    {
        var plan = A.Plan(A.Session(), A.Session("active-recovery.1", kind: SessionKind.ActiveRecovery, title: "Easy walk"));

        var feed = FeedBuilder.From(plan, A.Zone("Europe/Lisbon"), "Women 1", _ => (0, A.Changed));

        Assert.Equal(["Strength circuit"], feed.Events.Select(e => e.Title));
    }

    [Fact]
    public void Each_event_carries_the_stored_sequence_and_last_change_of_its_session()
    {
        var session = A.Session();

        var feed = FeedBuilder.From(A.Plan(session), A.Zone("Europe/Lisbon"), "Women 1", s => s.Uid == session.Uid ? (7, A.Changed) : default);

        Assert.Equal((session.Uid, 7, A.Changed), (feed.Events[0].Uid, feed.Events[0].Sequence, feed.Events[0].LastChanged));
    }

    [Fact]
    public void The_description_says_how_hard_why_what_and_what_to_watch_in_that_order()
    {
        var text = SessionText.Describe(A.Session(
            why: ["Two days before the match."],
            steps: [new Step("main", "Plank", "Breathe.", Sets: 3, Seconds: 20, RestSeconds: 120)],
            cautions: ["Stop if it hurts."]));

        Assert.Equal(
            """
            How hard: moderate. You can talk, but only in short sentences.

            Why here: Two days before the match.

            Main
            - Plank: 3 × 20 s, rest 2 min. Breathe.

            Take care
            - Stop if it hurts.
            """.ReplaceLineEndings("\n"),
            text);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(9)]
    public void The_description_has_no_number_of_effort(int effort) =>
        Assert.Equal(SessionText.Describe(A.Session(effort: 4)), SessionText.Describe(A.Session(effort: effort)));

    [Fact]
    public void A_session_inside_a_practice_says_so() =>
        Assert.Contains("during practice", SessionText.Describe(A.Session(insidePractice: true)), StringComparison.Ordinal);

    [Theory]
    [InlineData(SessionKind.Practice)]
    [InlineData(SessionKind.Match)]
    public void Practices_and_matches_come_without_steps_but_with_cautions(SessionKind kind)
    {
        var text = SessionText.Describe(A.Session(kind: kind, steps: [new Step("main", "Plank", "")], cautions: ["Stop if it hurts."]));

        Assert.DoesNotContain("Plank", text, StringComparison.Ordinal);
        Assert.Contains("Stop if it hurts.", text, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Amounts))]
    public void The_amount_of_a_step_reads_like_a_coach_says_it(Step step, string amount) =>
        Assert.Equal(amount, SessionText.Amount(step));

    public static TheoryData<Step, string> Amounts => new()
    {
        { new Step("main", "x", "", Sets: 3, Reps: 12, RestSeconds: 30), "3 × 12, rest 30 s" },
        { new Step("main", "x", "", Reps: 10), "10 times" },
        { new Step("main", "x", "", Minutes: 20), "20 min" },
        { new Step("main", "x", "", Sets: 4, Reps: 2, Metres: 30, RestSeconds: 90), "4 × 2 × 30 m, rest 90 s" },
        { new Step("main", "x", "", Sets: 3, Reps: 5, PercentOfMaximum: 80), "3 × 5, 80 % of maximum" },
        { new Step("main", "x", "", Sets: 2), "2 rounds" },
        { new Step("main", "x", "", Sets: 2, Reps: 15, Minutes: 3, RestSeconds: 60), "2 × 15, rest 60 s" },
        { new Step("core", "x", "", Sets: 2, Reps: 5, Seconds: 8, Minutes: 3), "2 × 5 × 8 s" },
        { new Step("main", "x", "", Sets: 3, Reps: 6, FootContacts: 36), "3 × 6, 36 landings in all" },
        { new Step("main", "x", "", Sets: 1, Reps: 12), "12 times" },
        { new Step("main", "x", "", Sets: 1, Minutes: 20), "20 min" },
        { new Step("main", "x", "", Sets: 1), "1 round" },
        { new Step("core", "x", "", Reps: 5, Seconds: 8, RestSeconds: 0), "5 × 8 s" },
        { new Step("main", "x", ""), "" },
    };

    [Fact]
    public void The_coachs_note_comes_first_in_the_description()
    {
        var text = SessionText.Describe(A.Session() with { Note = "Bring a mat.\nIndoors." });

        Assert.StartsWith("Bring a mat.\nIndoors.\n\nHow hard:", text, StringComparison.Ordinal);
    }
}
