using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Squads;
using static ClubCycle.Planning.Phases.PhaseKind;

namespace ClubCycle.Planning.Templates;

/// <summary>
/// The templates every club starts with. Chains, mixes and minutes are editorial, shaped on common practice in the trade and kept inside the
/// rule book's limits for each age.
/// </summary>
public static class BuiltInTemplates
{
    private static readonly Chain Break = new("break", 1, 6, [new(PhaseKind.Break, 1, 1, 6)]);

    private static readonly IReadOnlyList<Chain> AdultChains =
    [
        Break,
        new("short", 7, 15, [new(Recovery, 1, 0.15, 2), new(AerobicBuild, 2, 0.40, 6), new(Mixed, 1, 0.15, 3), new(PreSeason, 3, 0.30, 5)]),
        new("long", 16, 40, [new(Recovery, 3, 0.145, 5), new(AerobicBuild, 5, 0.425, 16), new(Mixed, 3, 0.145, 9), new(PreSeason, 5, 0.285, 10)]),
        new("two-waves", 41, 52,
        [
            new(Recovery, 3, 0.11, 5), new(AerobicBuild, 8, 0.26, 13), new(Mixed, 3, 0.09, 5), new(Restore, 2, 0.06, 3),
            new(AerobicBuild, 6, 0.18, 10), new(Mixed, 3, 0.09, 6), new(PreSeason, 6, 0.21, 10),
        ]),
    ];

    // Children need at least four weeks without hockey, and eight in the year: recovery, build and mixed weeks have no practice, pre-season stays short.
    private static readonly IReadOnlyList<Chain> YouthChains =
    [
        Break,
        new("short", 7, 15, [new(Recovery, 4, 0.30, 7), new(AerobicBuild, 1, 0.36, 4), new(Mixed, 1, 0.14, 2), new(PreSeason, 1, 0.20, 3)]),
        new("long", 16, 40, [new(Recovery, 4, 0.22, 9), new(AerobicBuild, 5, 0.38, 15), new(Mixed, 2, 0.15, 7), new(PreSeason, 4, 0.25, 9)]),
        new("two-waves", 41, 52,
        [
            new(Recovery, 4, 0.13, 7), new(AerobicBuild, 8, 0.25, 13), new(Mixed, 2, 0.08, 5), new(Restore, 4, 0.09, 5),
            new(AerobicBuild, 6, 0.18, 11), new(Mixed, 2, 0.08, 5), new(PreSeason, 4, 0.19, 9),
        ]),
    ];

    private static readonly LoadingPattern AdultLoading = new(4, 0.6, 0.8, 0.08);
    private static readonly LoadingPattern YouthLoading = new(3, 0.6, 0.8, 0.08);

    public static IReadOnlyList<Template> All { get; } =
    [
        new("senior-standard", "Senior standard", [AgeGroup.Senior], AdultChains,
        [
            new(InSeason,
            [
                new("core-and-easy-run.1", ["core-and-easy-run"], 35, WhenContactsAtMost: 3),
                new("core-and-circuit.1", ["core-and-circuit"], 35, WhenContactsAtMost: 3),
                new("core-in-turn.1", ["core-and-easy-run", "core-and-circuit"], 35, WhenContactsAtLeast: 4),
                new("easy-run.1", ["easy-run"], 40, WhenContactsAtMost: 2),
            ], 5),
            new(PhaseKind.Break,
            [
                new("muscular-endurance.1", ["strength-circuit"], 40),
                new("muscular-endurance.2", ["strength-circuit"], 40),
                new("in-turn.1", ["strides", "reactive-agility"], 35),
                new("aerobic-endurance.1", ["easy-run"], 35),
            ], 4),
            new(Recovery, [new("muscular-endurance.1", ["strength-circuit"], 35), new("muscular-endurance.2", ["strength-circuit"], 35), new("aerobic-endurance.1", ["core-and-easy-run"], 35)], 3),
            new(AerobicBuild,
            [
                new("aerobic-endurance.1", ["easy-run"], 45),
                new("aerobic-endurance.2", ["easy-run"], 45),
                new("muscular-endurance.1", ["core-and-circuit"], 45),
                new("aerobic-endurance.3", ["easy-run"], 45),
                new("aerobic-endurance.4", ["easy-run"], 45),
            ], 5),
            new(Mixed,
            [
                new("speed.1", ["heavy-lift", "jumps"], 50),
                new("speed.2", ["jumps", "heavy-lift"], 50),
                new("aerobic-endurance.1", ["easy-run"], 45),
                new("aerobic-endurance.2", ["easy-run"], 45),
            ], 4),
            new(PreSeason,
            [
                new("speed.1", ["lift-and-jump"], 55),
                new("speed.2", ["sprint-intervals"], 50),
                new("agility.1", ["reactive-agility"], 35),
                new("speed.3", ["hill-sprints", "sprint-intervals"], 50),
            ], 6),
            new(Restore, [new("muscular-endurance.1", ["strength-circuit"], 35), new("muscular-endurance.2", ["strength-circuit"], 35), new("aerobic-endurance.1", ["core-and-easy-run"], 35)], 3),
        ], AdultLoading),

        new("masters-standard", "Masters standard", [AgeGroup.Masters], AdultChains,
        [
            new(InSeason,
            [
                new("core-in-turn.1", ["core-and-easy-run", "core-and-circuit"], 35),
                new("easy-run.1", ["easy-run"], 35, WhenContactsAtMost: 1),
            ], 5, 72),
            new(PhaseKind.Break, [new("muscular-endurance.1", ["strength-circuit"], 35), new("aerobic-endurance.1", ["easy-run"], 35), new("in-turn.1", ["strides", "reactive-agility"], 30)], 3, 72),
            new(Recovery, [new("muscular-endurance.1", ["strength-circuit"], 35), new("aerobic-endurance.1", ["core-and-easy-run"], 35)], 2, 72),
            new(AerobicBuild,
            [
                new("aerobic-endurance.1", ["easy-run"], 45),
                new("muscular-endurance.1", ["core-and-circuit"], 40),
                new("aerobic-endurance.2", ["easy-run"], 40),
                new("aerobic-endurance.3", ["easy-run"], 40),
            ], 4, 72),
            new(Mixed, [new("speed.1", ["heavy-lift", "low-jumps"], 45), new("aerobic-endurance.1", ["easy-run"], 40), new("aerobic-endurance.2", ["easy-run"], 40)], 3, 72),
            new(PreSeason, [new("speed.1", ["heavy-lift", "low-jumps"], 45), new("speed.2", ["sprint-intervals", "hill-sprints"], 45), new("agility.1", ["reactive-agility"], 30)], 5, 72),
            new(Restore, [new("muscular-endurance.1", ["strength-circuit"], 35), new("aerobic-endurance.1", ["core-and-easy-run"], 35)], 2, 72),
        ], AdultLoading),

        new("youth-u17-u18", "Youth U17–U18", [AgeGroup.Youth(17), AgeGroup.Youth(18)], YouthChains,
        [
            new(InSeason,
            [
                new("core-in-turn.1", ["core-and-circuit", "core-and-easy-run"], 35),
                new("aerobic-endurance.1", ["easy-run"], 30, WhenContactsAtMost: 1),
            ], 5),
            new(PhaseKind.Break, [new("muscular-endurance.1", ["strength-circuit"], 40), new("aerobic-endurance.1", ["easy-run"], 35), new("in-turn.1", ["easy-run", "strides", "easy-run", "reactive-agility"], 35)], 3),
            new(Recovery, [new("muscular-endurance.1", ["strength-circuit"], 35), new("aerobic-endurance.1", ["core-and-easy-run"], 35)], 2),
            new(AerobicBuild,
            [
                new("aerobic-endurance.1", ["easy-run"], 45),
                new("muscular-endurance.1", ["core-and-circuit"], 45),
                new("aerobic-endurance.2", ["easy-run"], 40),
                new("aerobic-endurance.3", ["easy-run"], 40),
            ], 4),
            new(Mixed, [new("speed.1", ["heavy-lift", "jumps"], 45), new("aerobic-endurance.1", ["easy-run"], 40), new("aerobic-endurance.2", ["easy-run"], 40)], 3),
            new(PreSeason, [new("speed.1", ["lift-and-jump"], 50), new("speed.2", ["sprint-intervals", "hill-sprints"], 45), new("agility.1", ["reactive-agility"], 30)], 5),
            new(Restore, [new("muscular-endurance.1", ["strength-circuit"], 35), new("aerobic-endurance.1", ["core-and-easy-run"], 35)], 2),
        ], YouthLoading with { UnloadEvery = 4 }),

        new("youth-u15-u16", "Youth U15–U16", [AgeGroup.Youth(15), AgeGroup.Youth(16)], YouthChains,
        [
            new(InSeason,
            [
                new("strength.1", ["technique-lifting"], 40),
                new("agility.1", ["reactive-agility"], 20, WhenContactsAtMost: 3),
                new("aerobic-endurance.1", ["easy-run"], 30, WhenContactsAtMost: 1),
            ], 5),
            new(PhaseKind.Break, [new("strength.1", ["technique-lifting"], 40), new("aerobic-endurance.1", ["easy-run"], 30), new("in-turn.1", ["reactive-agility", "easy-run"], 30)], 3),
            new(Recovery, [new("strength.1", ["technique-lifting"], 40), new("aerobic-endurance.1", ["core-and-easy-run"], 40)], 2),
            new(AerobicBuild, [new("aerobic-endurance.1", ["easy-run"], 40), new("strength.1", ["technique-lifting"], 45), new("aerobic-endurance.2", ["easy-run"], 40)], 3),
            new(Mixed, [new("strength.1", ["technique-lifting"], 45), new("speed.1", ["low-jumps", "jumps"], 40), new("aerobic-endurance.1", ["easy-run"], 40)], 3),
            new(PreSeason, [new("speed.1", ["sprint-intervals"], 40), new("strength.1", ["technique-lifting"], 45), new("agility.1", ["reactive-agility"], 20)], 5),
            new(Restore, [new("strength.1", ["technique-lifting"], 40), new("aerobic-endurance.1", ["core-and-easy-run"], 40)], 2),
        ], YouthLoading),

        new("youth-u13-u14", "Youth U13–U14", [AgeGroup.Youth(13), AgeGroup.Youth(14)], YouthChains,
        [
            new(InSeason,
            [
                new("strength.1", ["technique-lifting"], 30),
                new("agility.1", ["reactive-agility"], 15, WhenContactsAtMost: 3),
                new("aerobic-endurance.1", ["easy-run"], 25, WhenContactsAtMost: 1),
            ], 5),
            new(PhaseKind.Break, [new("strength.1", ["body-weight"], 30), new("aerobic-endurance.1", ["easy-run"], 25), new("in-turn.1", ["tag-and-mirror", "easy-run"], 25)], 3),
            new(Recovery, [new("strength.1", ["body-weight"], 30), new("aerobic-endurance.1", ["easy-run"], 25)], 2),
            new(AerobicBuild, [new("aerobic-endurance.1", ["easy-run"], 25), new("strength.1", ["technique-lifting"], 35), new("aerobic-endurance.2", ["easy-run"], 25)], 3),
            new(Mixed, [new("strength.1", ["technique-lifting"], 35), new("speed.1", ["low-jumps"], 30), new("aerobic-endurance.1", ["easy-run"], 25)], 3),
            new(PreSeason, [new("speed.1", ["sprint-intervals"], 35), new("strength.1", ["technique-lifting"], 35), new("agility.1", ["reactive-agility"], 20)], 5),
            new(Restore, [new("strength.1", ["body-weight"], 30), new("aerobic-endurance.1", ["easy-run"], 25)], 2),
        ], YouthLoading),

        new("youth-u11-u12", "Youth U11–U12", [AgeGroup.Youth(11), AgeGroup.Youth(12)], YouthChains,
        [
            new(InSeason, [new("games.1", ["tag-and-mirror"], 20, WhenContactsAtMost: 3), new("strength.1", ["body-weight"], 20, WhenContactsAtMost: 2)], 4),
            new(PhaseKind.Break, [new("in-turn.1", ["body-weight", "tag-and-mirror"], 25)], 1),
            new(Recovery, [new("in-turn.1", ["tag-and-mirror", "body-weight"], 25)], 1),
            new(AerobicBuild, [new("strength.1", ["body-weight"], 25), new("games.1", ["tag-and-mirror"], 30)], 2),
            new(Mixed, [new("in-turn.1", ["low-jumps", "body-weight"], 25), new("games.1", ["tag-and-mirror"], 30)], 2),
            new(PreSeason, [new("strength.1", ["body-weight"], 25), new("games.1", ["tag-and-mirror"], 20)], 4),
            new(Restore, [new("in-turn.1", ["tag-and-mirror", "body-weight"], 25)], 1),
        ], YouthLoading),

        new("youth-u8-u10", "Youth U8–U10", [AgeGroup.Youth(8), AgeGroup.Youth(9), AgeGroup.Youth(10)], YouthChains,
        [
            new(InSeason, [new("games.1", ["movement-games"], 15)], 3),
            new(PhaseKind.Break, [], 1),
            new(Recovery, [], 1),
            new(AerobicBuild, [], 1),
            new(Mixed, [], 1),
            new(PreSeason, [new("games.1", ["movement-games"], 15)], 3),
            new(Restore, [], 1),
        ], YouthLoading),
    ];

    public static Template For(AgeGroup group) => All.First(t => t.AgeGroups.Contains(group));

    public static Template? Find(string name) => All.FirstOrDefault(t => string.Equals(t.Name, name, StringComparison.Ordinal));
}
