namespace ClubCycle.Planning.Measures;

/// <summary>Vertical jumps without run-up.</summary>
public static class Jump
{
    private const double Gravity = 9.81;

    private static readonly Limits Flights = new("measure.flight-time", "Flight time", 0.1, 1, "s", "Enter seconds; land with straight legs and jump again.");

    private static readonly Limits Heights = new("measure.jump-height", "Jump height", 10, 100, "cm", "Enter centimetres and measure again.");

    private static readonly Limits Masses = new("measure.jump-mass", "Body mass", 40, 150, "kg", "The equation was fitted to adults: compare heights only.");

    /// <summary>Height in cm: g × t² / 8.</summary>
    /// <param name="flight">0.1 to 1 s from take-off to landing.</param>
    public static Result<Estimate> Height(double flight) => Limits.Answer(
        [Flights.Check(flight)],
        () => new Estimate(Gravity * flight * flight / 8 * 100, "cm", "Jump height", "as sure as the timing; bent legs add height", "Free fall, g = 9.81 m/s²"));

    /// <summary>Peak power in W: 60.7 × height + 45.3 × mass − 2,055.</summary>
    /// <param name="jumpHeight">10 to 100 cm.</param>
    /// <param name="mass">40 to 150 kg.</param>
    /// <remarks>Sayers et al. 1999, Med Sci Sports Exerc 31:572–577; the ranges are editorial.</remarks>
    public static Result<Estimate> PeakPower(double jumpHeight, double mass) => Limits.Answer(
        [Heights.Check(jumpHeight), Masses.Check(mass)],
        () => new Estimate((60.7 * jumpHeight) + (45.3 * mass) - 2055, "W", "Peak power", "estimated; follow one player rather than compare two", "Sayers et al. 1999, Med Sci Sports Exerc 31:572–577"));
}
