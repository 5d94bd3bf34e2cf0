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
        new("Side-step at a mark", 15, 9,
            "The runner runs 6 m towards a mark, plants the outside foot one step before it and leaves past it to the one of two end marks, left and right, that was chosen beforehand.",
            [
                new Person(Runner, (1.5, 4.5)), new Mark((8.5, 4.5)), new Mark((11.5, 1.2)), new Mark((11.5, 7.8)),
                new Run((1.5, 4.5), (7.5, 4.5)), new Run((7.5, 4.5), (11.5, 1.2)), new Run((7.5, 4.5), (11.5, 7.8)),
                new Distance((1.5, 6.3), (7.5, 6.3)), new Label((5.4, 3.4), "plant the foot"), new Label((11.9, 4.5), "chosen before"),
            ]),
        new("Curve in, straight out", 14, 10,
            "The runner runs a wide half circle, 6 m across, around the outside of a row of four marks, straightens and runs 5 m on to an end mark, to the left and right in turn.",
            [
                new Person(Runner, (7, 8)), new Mark((7.9, 6.5)), new Mark((8.6, 5.6)), new Mark((8.6, 4.4)), new Mark((7.9, 3.5)), new Mark((2, 2)),
                new Run((7, 8), (10, 5), (10, 8)), new Run((10, 5), (7, 2), (10, 2)), new Run((7, 2), (2, 2)),
                new Distance((2, 0.9), (7, 0.9)), new Distance((11.6, 2), (11.6, 8)), new Label((4.8, 3.1), "straight out"), new Label((5.2, 5), "around the marks"), new Label((10.6, 8.7), "curve in"),
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
        new("Clock face call", 12, 12.4,
            "The runner stands in the middle of a clock face of twelve marks, each 4 m away; the caller outside names one hour at any moment, and the runner touches that mark and comes back under control.",
            [
                new Person(Runner, (6, 5.8)), new Person(Caller, (1.5, 11)), .. Hours.Select(hour => new Mark(hour)),
                new Choice((6, 5.8), (6.6, 3.56), [.. Hours]),
                new Distance((6, 11.6), (10, 11.6)), new Label((6, 0.95), "12"), new Label((10.8, 5.8), "3"), new Label((6, 10.6), "6"), new Label((1.2, 5.8), "9"),
            ]),
        new("Odd or even call", 14, 10,
            "The runner runs 5 m towards a caller, who without warning shows some fingers at the last moment: odd means cut left, even means cut right, to the line on that side.",
            [
                new Person(Runner, (1.4, 5)), new Person(Caller, (9.6, 5)), new Line((7, 1.2), (12.5, 1.2)), new Line((7, 8.8), (12.5, 8.8)),
                new Run((1.4, 5), (6.4, 5)), new Choice((6.4, 5), (7.5, 5), (9.6, 1.2), (9.6, 8.8)),
                new Distance((1.4, 6.6), (6.4, 6.6)), new Label((11, 2.4), "odd: left"), new Label((11.2, 7.6), "even: right"), new Label((11.8, 5), "fingers"),
            ]),
        new("Late point", 14, 10,
            "The runner runs 5 m at a partner, who points to either side when the runner is two steps, about 2 m, away; the runner cuts past on that side and out over a line.",
            [
                new Person(Runner, (1.4, 4.6)), new Person(Partner, (8.4, 4.6)), new Line((12.8, 0.8), (12.8, 8.4)),
                new Run((1.4, 4.6), (6.4, 4.6)), new Choice((6.4, 4.6), (7.45, 4.6), (12.8, 1.2), (12.8, 8)),
                new Distance((1.4, 9), (6.4, 9)), new Distance((6.4, 9), (8.4, 9)), new Label((10.8, 4.6), "points late"),
            ]),
        new("Turn on the clap", 12, 10.4,
            "The runner jogs or shuffles with the back to the caller, turns on the clap, which comes without warning, sees which arm is up and sprints 5 m to the line on that side.",
            [
                new Person(Runner, (6, 5.8)), new Person(Caller, (6, 8.2)), new Line((1, 1.4), (1, 7)), new Line((11, 1.4), (11, 7)),
                new Run((6, 5.8), (6, 3.2), Easy: true), new Choice((6, 3.2), (6, 2.2), (1, 4.2), (11, 4.2)),
                new Distance((6, 9.6), (11, 9.6)), new Label((6, 1), "turn"), new Label((8.4, 5.8), "back to caller"), new Label((8.7, 8.2), "clap, one arm up"),
            ]),
        new("Chase on the call", 18, 11,
            "Two lines of three runners sit, kneel or lie back to back, 2 m apart; the caller at their end names one line, which flees to its end line, 7 m away, and the other chases.",
            [
                new Person(Caller, (9, 1.4)), new Line((1, 2), (1, 9)), new Line((17, 2), (17, 9)),
                new Person(Runner, (8, 3.5)), new Person(Runner, (8, 5.5)), new Person(Runner, (8, 7.5)), new Person(Runner, (10, 3.5)), new Person(Runner, (10, 5.5)), new Person(Runner, (10, 7.5)),
                new Choice((8, 5.5), (4.5, 4.4), (1, 5.5)), new Choice((10, 5.5), (13.5, 4.4), (17, 5.5)),
                new Distance((1, 10.1), (8, 10.1)), new Distance((8, 10.1), (10, 10.1)), new Distance((10, 10.1), (17, 10.1)),
                new Label((2, 1), "end line"), new Label((16, 1), "end line"), new Label((4.5, 6.6), "flee, if called"), new Label((13.5, 6.6), "flee, if called"),
            ]),
        new("Shadow the runner", 12, 7.6,
            "In a channel 9 m long and about 5 m wide, the attacker moves to the left or right at will and the defender, facing from about 2 m away, stays level.",
            [
                new Area((1.5, 0.9), (10.5, 5.9)), new Person(Attacker, (6, 2.3)), new Person(Defender, (6, 4.5)),
                new Choice((6, 2.3), (6, 1.4), (1.5, 2.3), (10.5, 2.3)), new Run((6, 4.5), (1.5, 4.5)), new Run((6, 4.5), (10.5, 4.5)),
                new Distance((1.5, 6.8), (10.5, 6.8)), new Label((6, 5.4), "stays level"),
            ]),
        new("Mirror and break", 12, 8.2,
            "Face to face across a line of 8 m, the runner mirrors the side steps of the partner, who leads and without warning breaks to a short line at either end; the runner tries to be there as early.",
            [
                new Line((2, 3.7), (10, 3.7)), new Line((2, 1.6), (2, 5.8)), new Line((10, 1.6), (10, 5.8)), new Person(Partner, (6, 2.7)), new Person(Runner, (6, 4.7)),
                new Choice((6, 2.7), (6, 1.8), (2, 2.7), (10, 2.7)), new Run((6, 4.7), (2, 4.7)), new Run((6, 4.7), (10, 4.7)),
                new Distance((2, 7.2), (10, 7.2)), new Label((6, 0.9), "leads and breaks"), new Label((6, 5.8), "mirrors"),
            ]),
        new("One against one to two gates", 12, 11.5,
            "The attacker starts 8 m in front of two gates, each 2 m wide and 5 m apart, runs at the defender, who stands between them, and breaks through either gate.",
            [
                new Gate((1.5, 2), (3.5, 2)), new Gate((8.5, 2), (10.5, 2)), new Person(Defender, (6, 3.6)), new Person(Attacker, (6, 10)),
                new Run((6, 10), (6, 7)), new Choice((6, 7), (6, 5.6), (2.5, 2), (9.5, 2)),
                new Distance((1.5, 0.9), (3.5, 0.9)), new Distance((3.5, 0.9), (8.5, 0.9)), new Distance((11.2, 2), (11.2, 10)),
            ]),
        new("Guard two gates", 12.4, 11,
            "The runner guards two gates, each 2 m wide and 4 m apart, from the middle; a partner with a ball rolls it from 6 m away through either at will, and the runner gets there, stops it and comes back.",
            [
                new Gate((2, 2), (4, 2)), new Gate((8, 2), (10, 2)), new Person(Runner, (6, 3.2)), new Person(Partner, (6, 9.2)), new Ball((6, 8)),
                new Choice((6, 8), (6, 6), (3, 2), (9, 2)), new Run((6, 3.2), (3.6, 3.2)), new Run((6, 3.2), (8.4, 3.2)),
                new Distance((2, 0.9), (4, 0.9)), new Distance((4, 0.9), (8, 0.9)), new Distance((8, 0.9), (10, 0.9)), new Distance((11.4, 2), (11.4, 8)), new Label((7.7, 9.2), "rolls it"),
            ]),
        new("Rolling ball cut-off", 15, 10,
            "A partner 4 m behind the runner rolls a ball past on either side; the runner sees it, runs round to meet it from the front and stops it before a line 8 m ahead.",
            [
                new Person(Partner, (1.2, 5)), new Ball((2.2, 5)), new Person(Runner, (5.2, 5)), new Line((13.2, 1.2), (13.2, 8.8)),
                new Choice((2.2, 5), (3.9, 5), (13.2, 1.7), (13.2, 8.3)), new Run((5.2, 5), (10.6, 2.48), (12, 5)),
                new Distance((1.2, 9.2), (5.2, 9.2)), new Distance((5.2, 9.2), (13.2, 9.2)), new Label((6, 1.7), "meet it from the front"),
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
        new("Shield the runner", 8, 7,
            "Two partners and the one named runner hold hands in a ring, drawn as lines, that turns and slides as a shield; the attacker outside tries to touch the runner and goes round on either side.",
            [
                new Line((4, 1.7), (3, 3.4)), new Line((4, 1.7), (5, 3.4)), new Line((3, 3.4), (5, 3.4)),
                new Person(Runner, (4, 1.7)), new Person(Partner, (3, 3.4)), new Person(Partner, (5, 3.4)), new Person(Attacker, (4, 6)),
                new Run((4, 6), (4, 1.7), (0, 3)), new Run((4, 6), (4, 1.7), (8, 3)),
                new Label((4, 1), "named runner"), new Label((4, 4.1), "ring turns"), new Label((4, 6.65), "tries to touch"),
            ]),
    ];

    /// <summary>The hours of a clock face, from one to twelve.</summary>
    private static IEnumerable<Spot> Hours => Enumerable.Range(1, 12).Select(hour => new Spot(6 + (4 * Math.Sin(hour * Math.PI / 6)), 5.8 - (4 * Math.Cos(hour * Math.PI / 6))));
}
