using ClubCycle.Planning.Loads;
using CsCheck;

namespace ClubCycle.Planning.Tests.Loads;

public class WeekMinutesTests
{
    private static readonly Gen<(int Full, int Effort, int Least)> AnySlot =
        from full in Gen.Int[2, 24]
        from effort in Gen.Int[1, 9]
        from least in Gen.OneOf(Gen.Const(15), Gen.Const(25))
        select (full * 5, effort, least);

    [Fact]
    public void Any_week_comes_as_close_to_its_target_as_steps_of_five_minutes_allow() => Gen.Select(AnySlot.Array[1, 7], Gen.Int[0, 20], Gen.Int[0, 3_000]).Sample((slots, share, target) =>
    {
        var floor = share / 20.0;
        var minutes = WeekMinutes.Fill([.. slots.Select(s => s.Full)], [.. slots.Select(s => s.Effort)], [.. slots.Select(s => s.Least)], floor, target);

        var load = minutes.Zip(slots, (m, s) => m * s.Effort).Sum();
        var floors = slots.Select(s => Math.Min(s.Full, Math.Max(s.Least, (int)Math.Floor(s.Full * floor / 5) * 5))).ToArray();
        Assert.All(minutes.Zip(slots), m => Assert.True(m.First <= m.Second.Full && m.First % 5 == 0));
        Assert.All(minutes.Zip(floors), m => Assert.True(m.First >= m.Second));
        Assert.True(load <= target || minutes.SequenceEqual(floors));
        Assert.All(minutes.Zip(slots), m => Assert.True(m.First == m.Second.Full || load + (5 * m.Second.Effort) > target));
    }, iter: 2_000, threads: 1);

    [Fact]
    public void Sessions_shrink_together() => Assert.Equal([30, 30, 40], WeekMinutes.Fill([45, 45, 60], [3, 3, 4], [15, 15, 15], 0.3, 340));

    [Fact]
    public void What_is_left_over_goes_to_the_most_valuable_of_equal_sessions() => Assert.Equal([35, 30], WeekMinutes.Fill([50, 50], [3, 3], [15, 15], 0.3, 195));

    [Fact]
    public void A_target_that_is_too_small_leaves_every_session_at_its_shortest() => Assert.Equal([15, 25], WeekMinutes.Fill([45, 50], [3, 8], [15, 25], 0.3, 0));

    [Fact]
    public void A_target_that_is_too_large_leaves_every_session_at_its_full_length() => Assert.Equal([45, 50], WeekMinutes.Fill([45, 50], [3, 8], [15, 25], 0.3, 9_999));
}
