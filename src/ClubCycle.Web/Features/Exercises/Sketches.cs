using System.Collections.Frozen;
using static ClubCycle.Web.Features.Exercises.Role;
using static ClubCycle.Web.Features.Exercises.SketchItem;

namespace ClubCycle.Web.Features.Exercises;

/// <summary>Set-ups of the exercise library's drills. Measures of agility drills and games are our suggestions (editorial); those of sprints span what session sheets ask for.</summary>
public static class Sketches
{
    public static IReadOnlyList<Sketch> All { get; } =
    [
        // Change of direction, known beforehand
        new("Braking and re-start", 14, 9,
            "The runner runs 5 m to a mark, stops there and pushes off to one of two marks, 5 m on to the left and right, that was chosen beforehand.",
            [
                new Person(Runner, (1.5, 4.5)), new Mark((6.5, 4.5)), new Mark((10.5, 1.5)), new Mark((10.5, 7.5)),
                new Run((1.5, 4.5), (6.5, 4.5)), new Run((6.5, 4.5), (10.5, 1.5)), new Run((6.5, 4.5), (10.5, 7.5)),
                new Distance((1.5, 6.3), (6.5, 6.3)), new Label((6.3, 3.5), "stop"), new Label((11, 4.5), "chosen before"),
            ]),
        new("Half turn technique", 14, 7,
            "The runner runs 8 m from the start line to a second line, turns on it and runs back to the start line.",
            [
                new Person(Runner, (1.6, 2.6)), new Line((3.2, 1.4), (3.2, 5)), new Line((11.2, 1.4), (11.2, 5)),
                new Run((1.6, 2.6), (11.2, 2.6)), new Run((11.2, 4), (3.2, 4)),
                new Distance((3.2, 6.1), (11.2, 6.1)), new Label((3.2, 0.8), "start"), new Label((11.2, 0.8), "turn"),
            ]),

        // Agility: answers a cue
        new("Caller's colour", 12, 12,
            "The runner moves on the spot between four marks, red and blue in front and green and yellow behind, that form a square of 8 m; the caller stands outside and names one of them.",
            [
                new Person(Runner, (6, 6)), new Person(Caller, (6, 10.6)),
                new Mark((2, 2)), new Mark((10, 2)), new Mark((2, 10)), new Mark((10, 10)),
                new Choice((6, 6), (6, 4.4), (2, 2), (10, 2), (2, 10), (10, 10)),
                new Distance((2, 1), (10, 1)), new Label((1.3, 3.1), "red"), new Label((10.7, 3.1), "blue"), new Label((1.5, 11.2), "green"), new Label((10.5, 11.2), "yellow"),
            ]),
        new("Shadow the runner", 12, 7.6,
            "In a channel 9 m long and about 5 m wide, the attacker moves to the left or right at will and the defender, facing from about 2 m away, stays level.",
            [
                new Area((1.5, 0.9), (10.5, 5.9)), new Person(Attacker, (6, 2.3)), new Person(Defender, (6, 4.5)),
                new Choice((6, 2.3), (6, 1.4), (1.5, 2.3), (10.5, 2.3)), new Run((6, 4.5), (1.5, 4.5)), new Run((6, 4.5), (10.5, 4.5)),
                new Distance((1.5, 6.8), (10.5, 6.8)), new Label((6, 5.4), "stays level"),
            ]),
        new("One against one to two gates", 12, 11.5,
            "The attacker starts 8 m in front of two gates, each 2 m wide and 5 m apart, runs at the defender, who stands between them, and breaks through either gate.",
            [
                new Gate((1.5, 2), (3.5, 2)), new Gate((8.5, 2), (10.5, 2)), new Person(Defender, (6, 3.6)), new Person(Attacker, (6, 10)),
                new Run((6, 10), (6, 7)), new Choice((6, 7), (6, 5.6), (2.5, 2), (9.5, 2)),
                new Distance((1.5, 0.9), (3.5, 0.9)), new Distance((3.5, 0.9), (8.5, 0.9)), new Distance((11.2, 2), (11.2, 10)),
            ]),
        new("Partner's drop", 8, 6,
            "The runner waits 4 m from a partner who holds a ball out to either side, and bursts to the one that the partner drops without warning.",
            [
                new Person(Runner, (1.4, 2.8)), new Person(Partner, (5.4, 2.8)), new Ball((5.4, 1.8)), new Ball((5.4, 3.8)),
                new Choice((1.4, 2.8), (3.7, 2.8), (5.4, 1.8), (5.4, 3.8)),
                new Distance((1.4, 5.2), (5.4, 5.2)), new Label((5.4, 1.1), "drops one"), new Label((6.7, 2.8), "holds both"),
            ]),
        new("Pass, read and chase", 14, 10,
            "The runner passes a ball 6 m to a partner, who carries it to a mark on the left or right at will, and chases to cut off that way.",
            [
                new Person(Runner, (1.2, 5)), new Ball((2, 5)), new Person(Partner, (8, 5)), new Mark((12, 1.6)), new Mark((12, 8.4)),
                new Pass((2, 5), (8, 5)), new Choice((8, 5), (10.2, 5), (12, 1.6), (12, 8.4)), new Run((1.2, 5), (10.8, 2.62), (6.2, 2.4)),
                new Distance((2, 6.6), (8, 6.6)), new Label((4.6, 2.4), "chase"),
            ]),
        new("Small-sided game", 21, 14.6,
            "Two attackers with a ball and two defenders play on an area of 16 m by 10 m with a small goal of 3 m, a gate of two marks, on each short side; one attacker passes and runs free towards the goal.",
            [
                new Area((2, 2), (18, 12)), new Gate((2, 5.5), (2, 8.5)), new Gate((18, 5.5), (18, 8.5)),
                new Person(Attacker, (7.6, 4.2)), new Ball((7.6, 5.4)), new Person(Attacker, (6.6, 10)), new Person(Defender, (11.2, 6.8)), new Person(Defender, (10.4, 10)),
                new Pass((7.6, 5.4), (6.6, 10)), new Run((7.6, 4.2), (18, 7), (14, 3.4)),
                new Distance((2, 13.3), (18, 13.3)), new Distance((19.6, 2), (19.6, 12)), new Label((2.2, 1.1), "goal 3 m"), new Label((18, 1.1), "goal 3 m"),
            ]),
        new("End-zone game", 23, 14.6,
            "On an area of 18 m by 10 m with an end zone of 3 m at each end and 12 m between them, two attackers face two defenders; one attacker runs into the far end zone to receive the ball that the other passes there.",
            [
                new Area((2, 2), (20, 12)), new Area((2, 2), (5, 12)), new Area((17, 2), (20, 12)),
                new Person(Attacker, (8, 4.6)), new Ball((9.3, 5.1)), new Person(Attacker, (9, 10)), new Person(Defender, (13.4, 4)), new Person(Defender, (13, 10.8)),
                new Pass((9.3, 5.1), (18.4, 7)), new Run((9, 10), (18.4, 8.2)),
                new Distance((2, 13.3), (5, 13.3)), new Distance((5, 13.3), (17, 13.3)), new Distance((17, 13.3), (20, 13.3)), new Distance((21.6, 2), (21.6, 12)),
                new Label((3.7, 1.1), "end zone"), new Label((18.3, 1.1), "end zone"),
            ]),

        // Sprints on the flat: as long as the session sheet says
        new("Standing-start sprint", 36, 10.7,
            "The runner stands in a staggered stance behind the start line, sprints 10 to 40 m through the end mark, a gate, and slows down gently beyond it.",
            [.. Lane("10 to 40 m"), new Person(Runner, (2.4, 5)), new Run((2.4, 5), (24, 5))]),
        new("Falling-start sprint", 36, 10.7,
            "The runner stands tall behind the start line, falls forward until a step must follow, sprints 10 to 40 m through the end mark, a gate, and slows down gently beyond it.",
            [.. Lane("10 to 40 m"), new Person(Runner, (2.4, 5)), new Run((2.4, 5), (24, 5)), new Label((13.5, 3.3), "fall, then sprint")]),
        new("Low-stance sprint with stick", 36, 10.7,
            "The runner starts low behind the start line with the stick on the ground, sprints 10 to 40 m with the stick in one hand through the end mark, a gate, and slows down gently beyond it.",
            [.. Lane("10 to 40 m"), new Person(Runner, (2.4, 5)), new Run((2.4, 5), (24, 5)), new Label((13.5, 3.3), "low, stick down")]),
        new("Rolling-start sprint", 40, 12,
            "The runner jogs about 8 m to the start mark, a gate, sprints from it 10 to 40 m through the end mark, a second gate, and slows down gently beyond it.",
            [
                new Person(Runner, (2, 5.7)), new Gate((10, 3.9), (10, 7.5)), new Gate((30, 3.9), (30, 7.5)),
                new Run((2, 5.7), (10, 5.7), Easy: true), new Run((10, 5.7), (30, 5.7)), new Run((30, 5.7), (38.5, 5.7), Easy: true),
                new Label((10, 1.5), "start mark"), new Label((30, 1.5), "end mark"), new Label((5, 7.3), "jog"), new Label((20, 7.3), "sprint"),
                new Distance((10, 10.2), (30, 10.2), "10 to 40 m"), new Distance((2, 10.2), (10, 10.2)),
            ]),
        new("Flying sprint", 64, 18.5,
            "The runner builds up speed over about 30 m to a gate, runs 20 m at top speed to a second gate, and coasts out beyond it.",
            [
                new Person(Runner, (2.5, 8.6)), new Gate((32.5, 5.9), (32.5, 11.3)), new Gate((52.5, 5.9), (52.5, 11.3)),
                new Run((2.5, 8.6), (32.5, 8.6), Easy: true), new Run((32.5, 8.6), (52.5, 8.6)), new Run((52.5, 8.6), (62.5, 8.6), Easy: true),
                new Label((17, 2.6), "build up"), new Label((42.5, 2.6), "top speed"), new Label((57.4, 2.6), "coast out"),
                new Distance((2.5, 15.2), (32.5, 15.2), "about 30 m"), new Distance((32.5, 15.2), (52.5, 15.2)),
            ]),
        new("Flying sprint off a curve", 64, 27.5,
            "The runner runs in on a gentle curve of about 30 m to a gate, straightens, holds top speed over 20 m to a second gate, and coasts out beyond it.",
            [
                new Person(Runner, (5, 23)), new Gate((32.5, 5.9), (32.5, 11.3)), new Gate((52.5, 5.9), (52.5, 11.3)),
                new Run((5, 23), (32.5, 8.6), (14, 8.6), Easy: true), new Run((32.5, 8.6), (52.5, 8.6)), new Run((52.5, 8.6), (62.5, 8.6), Easy: true),
                new Label((28, 20), "about 30 m run-in"), new Label((42.5, 2.6), "top speed"), new Label((57.4, 2.6), "coast out"),
                new Distance((32.5, 15.2), (52.5, 15.2)),
            ]),

        // Sprints up a hill
        new("Hill sprint", 36, 16.4,
            "From a line on an even slope of 5 to 7 in 100 the runner sprints 15 to 40 m uphill to the end mark, a gate, slows down beyond it and walks back down.",
            [.. Lane("15 to 40 m"), new Person(Runner, (2.4, 5)), new Run((2.4, 5), (24, 5)), Uphill]),
        new("Hill sprint from a low start", 36, 16.4,
            "From a line on an even slope of 5 to 7 in 100 the runner starts low with one hand on the ground, sprints 15 to 40 m uphill to the end mark, a gate, slows down beyond it and walks back down.",
            [.. Lane("15 to 40 m"), new Person(Runner, (2.4, 5)), new Run((2.4, 5), (24, 5)), new Label((13.5, 3.3), "low, one hand down"), Uphill]),
        new("Rolling hill sprint", 40, 18,
            "The runner jogs the last 8 m on the flat to the foot of an even slope of 5 to 7 in 100, a line, sprints from there 15 to 40 m uphill to the end mark, a gate, slows down beyond it and walks back down.",
            [
                new Person(Runner, (2, 5.7)), new Line((10, 3.7), (10, 7.7)), new Gate((30, 3.9), (30, 7.5)),
                new Run((2, 5.7), (10, 5.7), Easy: true), new Run((10, 5.7), (30, 5.7)), new Run((30, 5.7), (38.5, 5.7), Easy: true),
                new Label((10, 1.5), "foot of the hill"), new Label((30, 1.5), "end mark"), new Label((5, 7.3), "jog"), new Label((20, 7.3), "sprint"),
                new Distance((10, 10.2), (30, 10.2), "15 to 40 m"), new Distance((2, 10.2), (10, 10.2)),
                new Slope((10, 14.8), (30, 14.8), "uphill, 5 to 7 in 100"),
            ]),

        // Games and jumps that need more than a line
        new("Treasure hunt", 12, 10,
            "Balls lie in the middle between four homes, 9 m apart; from each home one runner at a time fetches one ball and brings it back.",
            [
                new Mark((1.5, 2)), new Mark((10.5, 2)), new Mark((1.5, 8)), new Mark((10.5, 8)),
                new Ball((5.6, 4.8)), new Ball((6.4, 4.7)), new Ball((5.7, 5.5)), new Ball((6.4, 5.4)),
                new Person(Runner, (2.6, 2.7)), new Person(Runner, (9.4, 2.7)), new Person(Runner, (2.6, 7.4)), new Person(Runner, (9.4, 7.4)),
                new Run((2.6, 2.7), (5.6, 4.8)), new Run((9.4, 2.7), (6.4, 4.7)), new Run((2.6, 7.4), (5.7, 5.5)), new Run((9.4, 7.4), (6.4, 5.4)),
                new Distance((1.5, 9.2), (10.5, 9.2)), new Label((1.5, 1.2), "home"), new Label((10.5, 1.2), "home"), new Label((1.5, 7), "home"), new Label((10.5, 7), "home"), new Label((6, 3.8), "treasure"),
            ]),
        new("Home bases", 16, 12,
            "Four bases stand in the corners, 10 m apart, and two defenders roam between them as catchers; the runner chooses the moment and the base to run to.",
            [
                new Area((0.8, 1.8), (3, 4)), new Area((13, 1.8), (15.2, 4)), new Area((0.8, 8.6), (3, 10.8)), new Area((13, 8.6), (15.2, 10.8)),
                new Person(Runner, (1.9, 2.9)), new Person(Defender, (8.5, 4.6)), new Person(Defender, (6, 9.4)),
                new Choice((1.9, 2.9), (3.6, 4.9), (13, 2.9), (13, 9.2), (1.9, 8.6)),
                new Distance((3, 1), (13, 1)), new Label((14.1, 2.9), "base"), new Label((14.1, 9.7), "base"), new Label((1.9, 9.7), "base"),
            ]),
        new("Forward barrier jumps", 9, 3.2,
            "Five low, soft barriers lie in a row, 1 m apart; the runner jumps forward over each with both feet, to the mark behind the last.",
            [
                new Person(Runner, (0.9, 1.5)), new Line((2.2, 0.9), (2.2, 2.1)), new Line((3.2, 0.9), (3.2, 2.1)), new Line((4.2, 0.9), (4.2, 2.1)), new Line((5.2, 0.9), (5.2, 2.1)), new Line((6.2, 0.9), (6.2, 2.1)),
                new Mark((7.9, 1.5)), new Run((0.9, 1.5), (7.9, 1.5)),
                new Distance((3.2, 2.7), (4.2, 2.7)), new Label((4.2, 0.45), "low barriers"),
            ]),
    ];

    private static readonly FrozenDictionary<string, Sketch> ByExercise = All.ToFrozenDictionary(sketch => sketch.Exercise, StringComparer.Ordinal);

    /// <summary>Null for an exercise without a sketch.</summary>
    public static Sketch? Find(string exercise) => ByExercise.GetValueOrDefault(exercise);

    private static SketchItem Uphill => new Slope((4, 13), (24, 13), "uphill, 5 to 7 in 100");

    /// <summary>A start line, an end mark and room to slow down.</summary>
    private static SketchItem[] Lane(string distance) =>
    [
        new Line((4, 3.2), (4, 6.8)), new Gate((24, 3.3), (24, 6.7)), new Run((24, 5), (34.5, 5), Easy: true),
        new Label((4, 1.4), "start"), new Label((24, 1.4), "end mark"), new Label((31, 7), "slow down"), new Distance((4, 9.1), (24, 9.1), distance),
    ];
}
