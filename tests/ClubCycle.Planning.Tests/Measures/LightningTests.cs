using ClubCycle.Planning.Measures;
using CsCheck;
using NodaTime;

namespace ClubCycle.Planning.Tests.Measures;

/// <summary>R49; Walsh et al. 2013, J Athl Train 48:258–270.</summary>
public sealed class LightningTests
{
    private static readonly Instant Six = Instant.FromUtc(2026, 6, 1, 18, 0);

    /// <summary>Computed from 343 m/s.</summary>
    [Theory]
    [InlineData(30, 10.3)]
    [InlineData(3, 1.0)]
    [InlineData(0, 0)]
    public void Three_seconds_are_about_a_kilometre(double seconds, double km) => Assert.Equal(km, Lightning.Distance(seconds).Value(), 0.05);

    [Theory]
    [InlineData(false, null, false)]
    [InlineData(true, null, true)]
    [InlineData(true, 60.0, true)]
    [InlineData(false, 30.0, true)]
    [InlineData(false, 30.1, false)]
    [InlineData(false, 0.0, true)]
    public void Thunder_or_thirty_seconds_stop_play(bool thunder, double? seconds, bool stop) => Assert.Equal(stop, Lightning.MustStop(thunder, seconds).OrThrow());

    [Fact]
    public void Every_flash_or_thunder_starts_the_wait_again() => Assert.Equal(
        Six + Duration.FromMinutes(42),
        Lightning.EarliestRestart([Six, Six + Duration.FromMinutes(12), Six + Duration.FromMinutes(5)]).OrThrow());

    [Fact]
    public void One_more_flash_never_brings_the_restart_forward() => Gen.Select(Gen.Int[0, 100].Array[1, 10], Gen.Int[0, 100]).Sample((minutes, next) =>
        Lightning.EarliestRestart([.. minutes.Append(next).Select(At)]).OrThrow() >= Lightning.EarliestRestart([.. minutes.Select(At)]).OrThrow());

    [Fact]
    public void Without_a_flash_there_is_no_restart() =>
        Assert.Equal("measure.lightning-none", Assert.IsType<Result<Instant>.Failed>(Lightning.EarliestRestart([])).First.Code);

    [Theory]
    [InlineData(-1)]
    [InlineData(121)]
    public void Seconds_out_of_range_are_refused(double seconds)
    {
        Lightning.Distance(seconds).Refused("measure.lightning-seconds", "0 to 120 s");
        Lightning.MustStop(false, seconds).Refused("measure.lightning-seconds", "0 to 120 s");
    }

    private static Instant At(int minutes) => Six + Duration.FromMinutes(minutes);
}
