using ClubCycle.Planning.Measures;
using CsCheck;

namespace ClubCycle.Planning.Tests.Measures;

public sealed class LiftingLoadTests
{
    /// <summary>By hand.</summary>
    [Theory]
    [InlineData(100, 85, 2.5, 85)]
    [InlineData(101.3, 85, 2.5, 85)]
    [InlineData(99.9, 85, 2.5, 82.5)]
    [InlineData(91.16, 70, 1, 63)]
    [InlineData(7, 70, 0.7, 4.9)]
    [InlineData(60, 100, 20, 60)]
    public void A_load_is_rounded_down_to_the_plates(double maximum, double percent, double step, double load) =>
        Assert.Equal(load, LiftingLoad.AtPercent(maximum, percent, step, age: 25).Value(), 1e-9);

    /// <summary>Haff and Triplett 2016, ch. 17; 11, 12 and 15 repetitions from memory; 13 and 14 take the row of 15.</summary>
    [Theory]
    [InlineData(1, 100)]
    [InlineData(2, 95)]
    [InlineData(3, 93)]
    [InlineData(4, 90)]
    [InlineData(5, 87)]
    [InlineData(6, 85)]
    [InlineData(7, 83)]
    [InlineData(8, 80)]
    [InlineData(9, 77)]
    [InlineData(10, 75)]
    [InlineData(11, 70)]
    [InlineData(12, 67)]
    [InlineData(13, 65)]
    [InlineData(14, 65)]
    [InlineData(15, 65)]
    public void Repetitions_take_the_load_of_the_table(int repetitions, double load) =>
        Assert.Equal(load, LiftingLoad.ForRepetitions(100, repetitions, plateStep: 1, age: 25).Value());

    /// <summary>Australian Strength and Conditioning Association, from memory.</summary>
    [Theory]
    [InlineData(10, 60)]
    [InlineData(13, 70)]
    [InlineData(16, 80)]
    [InlineData(18, 93)]
    public void Minors_stop_at_the_ceiling_of_their_age(int age, double load) =>
        Assert.Equal(load, LiftingLoad.ForRepetitions(100, 3, plateStep: 1, age).Value());

    [Theory]
    [InlineData(11, 61, "1 to 60 percent")]
    [InlineData(14, 71, "1 to 70 percent")]
    [InlineData(17, 81, "1 to 80 percent")]
    [InlineData(18, 101, "1 to 100 percent")]
    [InlineData(18, 0, "1 to 100 percent")]
    public void A_share_above_the_ceiling_of_the_age_is_refused(int age, double percent, string range) =>
        LiftingLoad.AtPercent(100, percent, 2.5, age).Refused("measure.load-percent", range);

    [Theory]
    [InlineData(8)]
    [InlineData(0)]
    [InlineData(91)]
    public void Children_under_9_lift_nothing_but_themselves(int age)
    {
        LiftingLoad.AtPercent(20, 10, 1, age).Refused("measure.load-age", "9 to 90 years");
        LiftingLoad.ForRepetitions(20, 15, 1, age).Refused("measure.load-age", "9 to 90 years");
    }

    [Fact]
    public void A_load_is_a_number_of_steps_and_less_than_a_step_below_its_share() =>
        Gen.Select(Gen.Int[50, 900], Gen.Int[20, 100], Gen.Int[1, 20].Select(quarters => quarters * 0.25)).Sample((maximum, percent, step) =>
        {
            var (load, share) = (LiftingLoad.AtPercent(maximum, percent, step, 30).Value(), maximum * percent / 100.0);
            return load % step == 0 && load <= share && share - load < step;
        });

    [Fact]
    public void More_repetitions_never_mean_a_heavier_load() => Gen.Select(Gen.Double[50, 300], Gen.Int[1, 14], Gen.Int[9, 60]).Sample((maximum, repetitions, age) =>
        LiftingLoad.ForRepetitions(maximum, repetitions + 1, 1, age).Value() <= LiftingLoad.ForRepetitions(maximum, repetitions, 1, age).Value());

    [Fact]
    public void Less_than_one_step_is_refused() => LiftingLoad.AtPercent(10, 20, 2.5, 30).Refused("measure.load-too-light", "at least one plate step of 2.5 kg");

    [Theory]
    [InlineData(0, 2.5, 5, "measure.maximum-load", "0.5 to 900 kg")]
    [InlineData(901, 2.5, 5, "measure.maximum-load", "0.5 to 900 kg")]
    [InlineData(100, 0, 5, "measure.plate-step", "0.25 to 25 kg")]
    [InlineData(100, 26, 5, "measure.plate-step", "0.25 to 25 kg")]
    [InlineData(100, 2.5, 0, "measure.table-repetitions", "1 to 15.")]
    [InlineData(100, 2.5, 16, "measure.table-repetitions", "1 to 15.")]
    public void What_the_table_cannot_answer_is_refused(double maximum, double step, int repetitions, string code, string range) =>
        LiftingLoad.ForRepetitions(maximum, repetitions, step, 30).Refused(code, range);
}
