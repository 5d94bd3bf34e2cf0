using ClubCycle.Planning.Measures;
using CsCheck;

namespace ClubCycle.Planning.Tests.Measures;

public sealed class IntermittentTestsTests
{
    /// <summary>Bangsbo, Iaia and Krustrup 2008: equation from memory, values computed.</summary>
    [Theory]
    [InlineData(440, 40.1)]
    [InlineData(1000, 44.8)]
    [InlineData(1640, 50.2)]
    [InlineData(2000, 53.2)]
    [InlineData(2400, 56.6)]
    public void Metres_of_test_1_give_an_oxygen_uptake(int metres, double uptake) => Assert.Equal(uptake, IntermittentTests.Recovery1(metres).Value(), 0.05);

    /// <summary>Bangsbo, Iaia and Krustrup 2008: equation from memory, values computed.</summary>
    [Theory]
    [InlineData(440, 51.3)]
    [InlineData(800, 56.2)]
    [InlineData(1000, 58.9)]
    public void Metres_of_test_2_give_an_oxygen_uptake(int metres, double uptake) => Assert.Equal(uptake, IntermittentTests.Recovery2(metres).Value(), 0.05);

    /// <summary>Speeds and runs printed; metres computed.</summary>
    [Fact]
    public void Test_1_has_fifteen_levels() => Assert.Equal(
        [
            new(5, 10.0, 1, 40, 40),
            new(9, 12.0, 1, 80, 80),
            new(11, 13.0, 2, 120, 160),
            new(12, 13.5, 3, 200, 280),
            new(13, 14.0, 4, 320, 440),
            new(14, 14.5, 8, 480, 760),
            new(15, 15.0, 8, 800, 1080),
            new(16, 15.5, 8, 1120, 1400),
            new(17, 16.0, 8, 1440, 1720),
            new(18, 16.5, 8, 1760, 2040),
            new(19, 17.0, 8, 2080, 2360),
            new(20, 17.5, 8, 2400, 2680),
            new(21, 18.0, 8, 2720, 3000),
            new(22, 18.5, 8, 3040, 3320),
            new(23, 19.0, 8, 3360, 3640),
        ],
        IntermittentTests.Levels1);

    /// <summary>Speeds and runs printed; metres computed.</summary>
    [Fact]
    public void Test_2_has_twelve_levels() => Assert.Equal(
        [
            new(11, 13.0, 1, 40, 40),
            new(15, 15.0, 1, 80, 80),
            new(17, 16.0, 2, 120, 160),
            new(18, 16.5, 3, 200, 280),
            new(19, 17.0, 4, 320, 440),
            new(20, 17.5, 8, 480, 760),
            new(21, 18.0, 8, 800, 1080),
            new(22, 18.5, 8, 1120, 1400),
            new(23, 19.0, 8, 1440, 1720),
            new(24, 19.5, 8, 1760, 2040),
            new(25, 20.0, 8, 2080, 2360),
            new(26, 20.5, 8, 2400, 2680),
        ],
        IntermittentTests.Levels2);

    [Theory]
    [InlineData(40, 5, 11)]
    [InlineData(120, 11, 17)]
    [InlineData(440, 13, 19)]
    [InlineData(480, 14, 20)]
    [InlineData(2680, 20, 26)]
    public void A_distance_ends_in_a_level(int metres, int first, int second) =>
        Assert.Equal((first, second), (IntermittentTests.Level1(metres).OrThrow().Level, IntermittentTests.Level2(metres).OrThrow().Level));

    [Fact]
    public void More_metres_never_lower_the_oxygen_uptake() => Gen.Int[1, 66].Sample(runs =>
        IntermittentTests.Recovery1((runs + 1) * 40).Value() > IntermittentTests.Recovery1(runs * 40).Value()
        && IntermittentTests.Recovery2((runs + 1) * 40).Value() > IntermittentTests.Recovery2(runs * 40).Value());

    [Theory]
    [InlineData(0, "40 to 3640 m")]
    [InlineData(3680, "40 to 3640 m")]
    [InlineData(1650, "40 to 3640 m in steps of 40")]
    public void Metres_that_test_1_cannot_end_at_are_refused(int metres, string range)
    {
        IntermittentTests.Recovery1(metres).Refused("measure.recovery-metres", range);
        IntermittentTests.Level1(metres).Refused("measure.recovery-metres", range);
    }

    [Theory]
    [InlineData(0, "40 to 2680 m")]
    [InlineData(2720, "40 to 2680 m")]
    [InlineData(420, "40 to 2680 m in steps of 40")]
    public void Metres_that_test_2_cannot_end_at_are_refused(int metres, string range)
    {
        IntermittentTests.Recovery2(metres).Refused("measure.recovery-metres", range);
        IntermittentTests.Level2(metres).Refused("measure.recovery-metres", range);
    }

    /// <summary>Buchheit 2008, computed.</summary>
    [Theory]
    [InlineData(Sex.Male, 20, 75, 19.0, 50.49)]
    [InlineData(Sex.Female, 20, 62, 17.5, 45.50)]
    [InlineData(Sex.Male, 15, 58, 17.0, 45.42)]
    [InlineData(Sex.Female, 16, 55, 16.0, 41.66)]
    public void The_end_speed_of_the_30_15_test_gives_an_oxygen_uptake(Sex sex, double age, double mass, double speed, double uptake) =>
        Assert.Equal(uptake, IntermittentTests.ThirtyFifteen(sex, age, mass, speed).Value(), 0.005);

    [Fact]
    public void A_faster_end_speed_never_lowers_the_oxygen_uptake() => Gen.Select(Gen.Double[8, 50], Gen.Double[20, 150], Gen.Int[16, 49]).Sample((age, mass, halves) =>
        IntermittentTests.ThirtyFifteen(Sex.Female, age, mass, (halves + 1) / 2.0).Value() > IntermittentTests.ThirtyFifteen(Sex.Female, age, mass, halves / 2.0).Value());

    [Theory]
    [InlineData(7, 60, 17, "measure.intermittent-age", "8 to 50 years")]
    [InlineData(51, 60, 17, "measure.intermittent-age", "8 to 50 years")]
    [InlineData(20, 0, 17, "measure.intermittent-mass", "20 to 150 kg")]
    [InlineData(20, 151, 17, "measure.intermittent-mass", "20 to 150 kg")]
    [InlineData(20, 60, 7.5, "measure.intermittent-speed", "8 to 25 km/h")]
    [InlineData(20, 60, 25.5, "measure.intermittent-speed", "8 to 25 km/h")]
    [InlineData(20, 60, 17.3, "measure.intermittent-speed", "8 to 25 km/h in steps of 0.5")]
    public void What_the_30_15_equation_does_not_cover_is_refused(double age, double mass, double speed, string code, string range) =>
        IntermittentTests.ThirtyFifteen(Sex.Male, age, mass, speed).Refused(code, range);
}
