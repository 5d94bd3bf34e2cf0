using Microsoft.Extensions.Options;

namespace ClubCycle.Web.Features.Feeds;

/// <summary>How much polls of feeds may take, settings <c>Feeds:…</c>.</summary>
public sealed class FeedLimits : IValidateOptions<FeedLimits>
{
    public const string Section = "Feeds";

    /// <summary>Memory for links and feeds on each node; 0 reads the database at each poll.</summary>
    public int CacheMegabytes { get; set; } = 64;

    /// <summary>Answers that one address gets to addresses that lead nowhere, before it is told to wait.</summary>
    public int MissesPerMinute { get; set; } = 60;

    public ValidateOptionsResult Validate(string? name, FeedLimits options) =>
        options.CacheMegabytes is < 0 or > 16_384 ? ValidateOptionsResult.Fail($"Feeds:CacheMegabytes is {options.CacheMegabytes}; it must be 0 to 16384.")
        : options.MissesPerMinute is < 1 or > 1_000_000 ? ValidateOptionsResult.Fail($"Feeds:MissesPerMinute is {options.MissesPerMinute}; it must be 1 to 1000000.")
        : ValidateOptionsResult.Success;
}
