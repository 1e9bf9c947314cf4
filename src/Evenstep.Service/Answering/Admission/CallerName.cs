using System.Net;
using System.Net.Sockets;
using Evenstep.Service.Http.Authentication;

namespace Evenstep.Service.Answering.Admission;

/// <summary>Who shares what is there with whom: each key is a caller, and where there are none, each address.</summary>
internal static class CallerName
{
    /// <summary>The bytes of an IPv6 address that name a network; whoever has one address of it has them all.</summary>
    private const int NetworkBytes = 8;

    public static string Of(ApiKey? key, IPAddress? address) => key is not null ? $"key {key.Name}" : $"address {Network(address)}";

    private static string Network(IPAddress? address)
    {
        if (address is not { AddressFamily: AddressFamily.InterNetworkV6, IsIPv4MappedToIPv6: false } || IPAddress.IsLoopback(address))
        {
            return address is { IsIPv4MappedToIPv6: true } ? address.MapToIPv4().ToString() : address?.ToString() ?? "of this process";
        }

        var bytes = address.GetAddressBytes();
        bytes.AsSpan(NetworkBytes).Clear();
        return new IPAddress(bytes).ToString();
    }
}
