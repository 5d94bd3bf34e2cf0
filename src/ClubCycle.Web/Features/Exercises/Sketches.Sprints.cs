using static ClubCycle.Web.Features.Exercises.Role;
using static ClubCycle.Web.Features.Exercises.SketchItem;

namespace ClubCycle.Web.Features.Exercises;

public static partial class Sketches
{
    private static IEnumerable<Sketch> Sprints =>
    [
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
        new("Side-on sprint", 36, 10.7,
            "The runner stands side-on behind the start line, opens the hip, sprints 10 to 40 m over the end line and slows down gently beyond it, to both sides in turn.",
            [.. Lined("10 to 40 m"), new Person(Runner, (2.4, 5)), new Run((2.4, 5), (24, 5)), new Label((13.5, 3.3), "side-on, open the hip")]),
        new("Back-to-front sprint", 36, 10.7,
            "The runner stands behind the start line with the back to it, turns over the shoulder that was chosen, sprints 10 to 40 m over the end line and slows down gently beyond it.",
            [.. Lined("10 to 40 m"), new Person(Runner, (2.4, 5)), new Run((2.4, 5), (24, 5)), new Label((13.5, 3.3), "back first, then turn")]),
        new("Kneeling-start sprint", 36, 10.7,
            "The runner half-kneels behind the start line, rises over the front foot, sprints 10 to 40 m over the end line and slows down gently beyond it.",
            [.. Lined("10 to 40 m"), new Person(Runner, (2.4, 5)), new Run((2.4, 5), (24, 5)), new Label((13.5, 3.3), "from half-kneeling")]),
        new("Lying-start sprint", 36, 10.7,
            "The runner lies on the front behind the start line, hands beside the chest, pushes up, sprints 10 to 40 m over the end line and slows down gently beyond it.",
            [.. Lined("10 to 40 m"), new Person(Runner, (2.4, 5)), new Run((2.4, 5), (24, 5)), new Label((13.5, 3.3), "from lying, push up")]),
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
        new("Flying sprint with stick", 64, 18.5,
            "The runner builds up speed over about 30 m with the stick in both hands, takes it in one hand, runs from a gate 20 m at top speed to a second gate, and coasts out beyond it.",
            [
                new Person(Runner, (2.5, 8.6)), new Gate((32.5, 5.9), (32.5, 11.3)), new Gate((52.5, 5.9), (52.5, 11.3)),
                new Run((2.5, 8.6), (32.5, 8.6), Easy: true), new Run((32.5, 8.6), (52.5, 8.6)), new Run((52.5, 8.6), (62.5, 8.6), Easy: true),
                new Label((16, 2.6), "stick in both hands"), new Label((42.5, 2.6), "one hand"), new Label((57.4, 2.6), "coast out"),
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
        new("Hill sprint with stick", 36, 16.4,
            "From a line on an even slope of 5 to 7 in 100 the runner sprints 15 to 40 m uphill with the stick in one hand to the end mark, a gate, slows down beyond it and walks back down.",
            [.. Lane("15 to 40 m"), new Person(Runner, (2.4, 5)), new Run((2.4, 5), (24, 5)), new Label((13.5, 3.3), "stick in one hand"), Uphill]),
        new("Split-stance hill sprint", 36, 16.4,
            "From a line on an even slope of 5 to 7 in 100 the runner starts in a long split stance, chest low, sprints 15 to 40 m uphill to the end mark, a gate, slows down beyond it and walks back down.",
            [.. Lane("15 to 40 m"), new Person(Runner, (2.4, 5)), new Run((2.4, 5), (24, 5)), new Label((13.5, 3.3), "long split stance"), Uphill]),
        new("Rolling hill sprint", 40, 18,
            "The runner jogs the last 8 m on the flat to the foot of an even slope of 5 to 7 in 100, a line, sprints from there 15 to 40 m uphill to the end mark, a gate, slows down beyond it and walks back down.",
            [
                new Person(Runner, (2, 5.7)), new Line((10, 3.7), (10, 7.7)), new Gate((30, 3.9), (30, 7.5)),
                new Run((2, 5.7), (10, 5.7), Easy: true), new Run((10, 5.7), (30, 5.7)), new Run((30, 5.7), (38.5, 5.7), Easy: true),
                new Label((10, 1.5), "foot of the hill"), new Label((30, 1.5), "end mark"), new Label((5, 7.3), "jog"), new Label((20, 7.3), "sprint"),
                new Distance((10, 10.2), (30, 10.2), "15 to 40 m"), new Distance((2, 10.2), (10, 10.2)),
                new Slope((10, 14.8), (30, 14.8), "uphill, 5 to 7 in 100"),
            ]),
    ];

    private static SketchItem Uphill => new Slope((4, 13), (24, 13), "uphill, 5 to 7 in 100");

    /// <summary>A start line, an end mark and room to slow down.</summary>
    private static SketchItem[] Lane(string distance) => Lane(distance, new Gate((24, 3.3), (24, 6.7)), "end mark");

    /// <summary>A start line, an end line and room to slow down.</summary>
    private static SketchItem[] Lined(string distance) => Lane(distance, new Line((24, 3.2), (24, 6.8)), "end line");

    private static SketchItem[] Lane(string distance, SketchItem end, string name) =>
    [
        new Line((4, 3.2), (4, 6.8)), end, new Run((24, 5), (34.5, 5), Easy: true),
        new Label((4, 1.4), "start"), new Label((24, 1.4), name), new Label((31, 7), "slow down"), new Distance((4, 9.1), (24, 9.1), distance),
    ];
}
