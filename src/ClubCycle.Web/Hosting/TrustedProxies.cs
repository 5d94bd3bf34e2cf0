using Microsoft.AspNetCore.HttpOverrides;
using Microsoft.Extensions.Options;
using IPAddress = System.Net.IPAddress;
using IPNetwork = System.Net.IPNetwork;

namespace ClubCycle.Web.Hosting;

/// <summary>Reverse proxies that are believed when they say who asks and whether over https, settings <c>Proxies:…</c>. Everybody else's word is ignored.</summary>
internal sealed class TrustedProxies : IValidateOptions<TrustedProxies>
{
    public const string Section = "Proxies";

    /// <summary>Addresses and networks with commas between them: <c>10.0.0.5, 10.1.0.0/16, fd00::/8</c>. Empty for none.</summary>
    public string Trusted { get; set; } = "";

    internal bool Any => Parts.Any();

    private IEnumerable<string> Parts => Trusted.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    public ValidateOptionsResult Validate(string? name, TrustedProxies options) =>
        options.Parts.FirstOrDefault(part => Network(part) is null) is { } wrong
            ? ValidateOptionsResult.Fail($"Proxies:Trusted holds \"{wrong}\", which is neither an address nor a network. Write it like 10.0.0.5 or 10.1.0.0/16.")
            : ValidateOptionsResult.Success;

    /// <summary>Before anything that looks at the sender's address.</summary>
    public static void Use(WebApplication app)
    {
        List<IPNetwork> networks = [.. app.Services.GetRequiredService<IOptions<TrustedProxies>>().Value.Parts.Select(part => Network(part)!.Value)];
        if (networks.Count == 0)
        {
            return;
        }

        // Several proxies in a row are gone through from the last to the first that is not ours.
        ForwardedHeadersOptions options = new() { ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto, ForwardLimit = null };
        options.KnownProxies.Clear();
        options.KnownIPNetworks.Clear();
        networks.ForEach(options.KnownIPNetworks.Add);
        app.UseForwardedHeaders(options);
    }

    private static IPNetwork? Network(string text) =>
        IPNetwork.TryParse(text, out var network) ? network
        : IPAddress.TryParse(text, out var address) ? new IPNetwork(address, address.GetAddressBytes().Length * 8)
        : null;
}
