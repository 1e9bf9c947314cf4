using System.Net;

namespace Evenstep.Service.Http.Health;

/// <summary>Where a service is to be found from its own machine.</summary>
internal static class OwnAddress
{
    /// <summary>The first of the addresses it listens at that speaks plain HTTP over a network; null if none does.</summary>
    public static Uri? Among(IEnumerable<string> addresses) => addresses
        .Select(BindingAddress.Parse)
        .Where(one => one.Scheme == Uri.UriSchemeHttp && one is { IsUnixPipe: false, IsNamedPipe: false })
        .Select(one => new UriBuilder(one.Scheme, HostOf(one), one.Port).Uri)
        .FirstOrDefault();

    /// <summary>A host to call: what listens everywhere is found at home.</summary>
    private static string HostOf(BindingAddress address) =>
        IPAddress.TryParse(address.Host, out var ip) && !ip.Equals(IPAddress.Any) && !ip.Equals(IPAddress.IPv6Any) ? address.Host : "localhost";
}
