using System.Net;
using System.Net.Sockets;
using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.Connections.Features;
using Microsoft.AspNetCore.Server.Kestrel.Transport.Sockets;
using Microsoft.Extensions.Options;

namespace Evenstep.Service.Http.Hosting;

/// <summary>
/// Listens by sockets, and outlasts a lack of file descriptors. The framework's own listener ends at the first connection
/// that cannot be accepted, and the runtime ends the process where it cannot start a thread for want of one; so connections
/// never get the last ones.
/// </summary>
internal sealed partial class PatientListening(IOptions<SocketTransportOptions> options, ILoggerFactory loggers)
    : IConnectionListenerFactory, IConnectionListenerFactorySelector
{
    private readonly SocketTransportFactory sockets = new(options, loggers);
    private readonly DescriptorLimit limit = DescriptorLimit.OfProcess();

    public bool CanBind(EndPoint endpoint) => sockets.CanBind(endpoint);

    public async ValueTask<IConnectionListener> BindAsync(EndPoint endpoint, CancellationToken cancellationToken = default) =>
        new Listener(await sockets.BindAsync(endpoint, cancellationToken), limit, loggers.CreateLogger<PatientListening>());

    private sealed partial class Listener(IConnectionListener inner, DescriptorLimit limit, ILogger logger) : IConnectionListener
    {
        /// <summary>Until some connection may have been closed.</summary>
        private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(100);

        private bool isShort;

        public EndPoint EndPoint => inner.EndPoint;

        public async ValueTask<ConnectionContext?> AcceptAsync(CancellationToken cancellationToken = default)
        {
            while (true)
            {
                var (connection, isRefused) = await TryAcceptAsync(cancellationToken);
                if (!isRefused)
                {
                    isShort = false;
                    return connection;
                }

                if (!isShort)
                {
                    isShort = true;
                    LogShort(logger, limit.Most);
                }
            }
        }

        public ValueTask UnbindAsync(CancellationToken cancellationToken = default) => inner.UnbindAsync(cancellationToken);

        public ValueTask DisposeAsync() => inner.DisposeAsync();

        private async ValueTask<(ConnectionContext? Connection, bool IsRefused)> TryAcceptAsync(CancellationToken cancellationToken)
        {
            try
            {
                var connection = await inner.AcceptAsync(cancellationToken);
                if (connection is null || DescriptorOf(connection) < limit.FirstForOthers)
                {
                    return (connection, false);
                }

                connection.Abort();
                await connection.DisposeAsync();
                return (null, true);
            }
            catch (SocketException exception) when (exception.SocketErrorCode is SocketError.TooManyOpenSockets or SocketError.NoBufferSpaceAvailable)
            {
                await Task.Delay(Pause, cancellationToken);
                return (null, true);
            }
        }

        private static nint DescriptorOf(ConnectionContext connection) => connection.Features.Get<IConnectionSocketFeature>()?.Socket.Handle ?? 0;

        [LoggerMessage(
            LogLevel.Warning,
            "The process may open {Most} files, and connections have all that are for them: further ones are closed. " +
            "They are taken again as soon as some have ended.")]
        private static partial void LogShort(ILogger logger, int most);
    }
}
