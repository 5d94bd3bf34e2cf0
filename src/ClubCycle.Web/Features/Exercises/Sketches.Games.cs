using static ClubCycle.Web.Features.Exercises.Role;
using static ClubCycle.Web.Features.Exercises.SketchItem;

namespace ClubCycle.Web.Features.Exercises;

public static partial class Sketches
{
    private static IEnumerable<Sketch> Games =>
    [
        // Small-sided games of hockey
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
        new("Four-goal game", 21, 14.6,
            "Two attackers with a ball and two defenders play on an area of 16 m by 10 m with a small goal of 2 m, a gate, in each corner; one goal is shut, so the attacker turns and passes to the other, who runs to the free one.",
            [
                new Area((2, 2), (18, 12)), new Gate((2, 2.8), (2, 4.8)), new Gate((2, 9.2), (2, 11.2)), new Gate((18, 2.8), (18, 4.8)), new Gate((18, 9.2), (18, 11.2)),
                new Person(Attacker, (10.4, 3.8)), new Ball((10.4, 5)), new Person(Attacker, (10.8, 9.4)), new Person(Defender, (14, 3.8)), new Person(Defender, (7, 7)),
                new Pass((10.4, 5), (10.8, 9.4)), new Run((10.8, 9.4), (18, 10.2)),
                new Distance((2, 13.3), (18, 13.3)), new Distance((19.6, 2), (19.6, 12)), new Label((2.6, 1.1), "goals 2 m"), new Label((18, 1.1), "goals 2 m"), new Label((16.2, 3.8), "shut"), new Label((16, 8.8), "free"),
            ]),
        new("Outnumbered game", 21, 14.6,
            "On an area of 16 m by 10 m three attackers keep a ball from two defenders and pass it to the spare player between them; a defender who wins it plays to the line at one end.",
            [
                new Area((2, 2), (18, 12)), new Line((2, 2), (2, 12)),
                new Person(Attacker, (6.4, 4)), new Ball((7.6, 4.4)), new Person(Attacker, (13, 10.6)), new Person(Attacker, (15.4, 7)), new Person(Defender, (12, 4)), new Person(Defender, (9.6, 8.6)),
                new Pass((7.6, 4.4), (15.4, 7)), new Run((9.6, 8.6), (2, 8.6)),
                new Distance((2, 13.3), (18, 13.3)), new Distance((19.6, 2), (19.6, 12)), new Label((2, 1.1), "line"), new Label((5.8, 10), "if they win it"), new Label((15.4, 5.6), "spare"),
            ]),

        // Movement games and jumps that need more than a line
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
}
