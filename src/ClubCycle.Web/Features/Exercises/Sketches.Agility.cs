using static ClubCycle.Web.Features.Exercises.Role;
using static ClubCycle.Web.Features.Exercises.SketchItem;

namespace ClubCycle.Web.Features.Exercises;

public static partial class Sketches
{
    private static IEnumerable<Sketch> Agility =>
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
    ];
}
