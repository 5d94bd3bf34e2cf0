using ClubCycle.Planning.Measures;

namespace ClubCycle.Planning.Tests.Measures;

/// <summary>Garber et al. 2011, Med Sci Sports Exerc 43:1334–1359: first and last printed value of each band.</summary>
public sealed class IntensityTests
{
    [Theory]
    [InlineData(0, IntensityBand.VeryLight)]
    [InlineData(29.9, IntensityBand.VeryLight)]
    [InlineData(30, IntensityBand.Light)]
    [InlineData(39, IntensityBand.Light)]
    [InlineData(40, IntensityBand.Moderate)]
    [InlineData(59, IntensityBand.Moderate)]
    [InlineData(60, IntensityBand.Vigorous)]
    [InlineData(89, IntensityBand.Vigorous)]
    [InlineData(90, IntensityBand.NearMaximal)]
    [InlineData(100, IntensityBand.NearMaximal)]
    public void Bands_of_the_heart_rate_reserve(double percent, IntensityBand band) => Assert.Equal(band, Intensity.OfReserve(percent).OrThrow());

    [Theory]
    [InlineData(56.9, IntensityBand.VeryLight)]
    [InlineData(57, IntensityBand.Light)]
    [InlineData(63, IntensityBand.Light)]
    [InlineData(64, IntensityBand.Moderate)]
    [InlineData(76, IntensityBand.Moderate)]
    [InlineData(77, IntensityBand.Vigorous)]
    [InlineData(95, IntensityBand.Vigorous)]
    [InlineData(96, IntensityBand.NearMaximal)]
    public void Bands_of_the_maximum_heart_rate(double percent, IntensityBand band) => Assert.Equal(band, Intensity.OfMaximum(percent).OrThrow());

    [Theory]
    [InlineData(36.9, IntensityBand.VeryLight)]
    [InlineData(37, IntensityBand.Light)]
    [InlineData(45, IntensityBand.Light)]
    [InlineData(46, IntensityBand.Moderate)]
    [InlineData(63, IntensityBand.Moderate)]
    [InlineData(64, IntensityBand.Vigorous)]
    [InlineData(90, IntensityBand.Vigorous)]
    [InlineData(91, IntensityBand.NearMaximal)]
    public void Bands_of_the_oxygen_uptake(double percent, IntensityBand band) => Assert.Equal(band, Intensity.OfOxygenUptake(percent).OrThrow());

    [Theory]
    [InlineData(6, IntensityBand.VeryLight)]
    [InlineData(8, IntensityBand.VeryLight)]
    [InlineData(9, IntensityBand.Light)]
    [InlineData(11, IntensityBand.Light)]
    [InlineData(12, IntensityBand.Moderate)]
    [InlineData(13, IntensityBand.Moderate)]
    [InlineData(14, IntensityBand.Vigorous)]
    [InlineData(17, IntensityBand.Vigorous)]
    [InlineData(18, IntensityBand.NearMaximal)]
    [InlineData(20, IntensityBand.NearMaximal)]
    public void Bands_of_perceived_exertion(double rating, IntensityBand band) => Assert.Equal(band, Intensity.OfPerceivedExertion(rating).OrThrow());

    [Theory]
    [InlineData(-0.1)]
    [InlineData(100.1)]
    public void A_share_out_of_range_is_refused(double percent)
    {
        Intensity.OfReserve(percent).Refused("measure.intensity-percent", "0 to 100 percent");
        Intensity.OfMaximum(percent).Refused("measure.intensity-percent", "0 to 100 percent");
        Intensity.OfOxygenUptake(percent).Refused("measure.intensity-percent", "0 to 100 percent");
    }

    [Theory]
    [InlineData(5)]
    [InlineData(0)]
    [InlineData(21)]
    public void A_rating_of_another_scale_is_refused(double rating) =>
        Intensity.OfPerceivedExertion(rating).Refused("measure.intensity-rating", "6 to 20");
}
