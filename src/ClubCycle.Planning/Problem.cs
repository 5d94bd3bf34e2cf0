namespace ClubCycle.Planning;

/// <summary>Why an input cannot be accepted: a stable code, the place in the input, and a sentence that ends in the next step.</summary>
/// <param name="Code">Stable, dotted, lower case: <c>season.stints-overlap</c>.</param>
/// <param name="Message">What is wrong, why it matters, what to do.</param>
/// <param name="At">Path into the input such as <c>season.stints[1].first</c>; empty when the whole input is meant.</param>
public sealed record Problem(string Code, string Message, string At = "");
