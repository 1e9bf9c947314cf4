using System.Net;
using System.Net.Sockets;

namespace Evenstep.Service.Tests.Catalogues.Storing;

internal static class FreePort
{
    /// <summary>A port of this machine that nobody listens at just now.</summary>
    public static int Find()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
