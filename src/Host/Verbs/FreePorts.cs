using System.Net;
using System.Net.Sockets;

namespace SecondShore.Host.Verbs;

/// <summary>Whether the addresses can be listened at, asked before the server starts: its own log would say it in stack traces.</summary>
internal static class FreePorts
{
    /// <summary>Requires that each address is free. One with port 0 always is.</summary>
    /// <exception cref="IOException">One is not; the message says what to do.</exception>
    public static void Require(IEnumerable<Uri> addresses)
    {
        foreach (Uri address in addresses.Where(a => a.Port > 0))
        {
            using TcpListener listener = new(Place(address), address.Port);
            try
            {
                listener.Start();
            }
            catch (SocketException e)
            {
                throw new IOException(Sentence(address, e.SocketErrorCode), e);
            }
        }
    }

    private static IPAddress Place(Uri address) =>
        IPAddress.TryParse(address.DnsSafeHost, out IPAddress? place) ? place : address.IsLoopback ? IPAddress.Loopback : IPAddress.Any;

    private static string Sentence(Uri address, SocketError error) => error switch
    {
        SocketError.AddressAlreadyInUse => $"{address.OriginalString} is in use by another program, perhaps another host: "
            + $"stop that one, or name another address with --urls, such as --urls http://127.0.0.1:{Other(address.Port)}.",
        SocketError.AccessDenied => $"{address.OriginalString} may not be listened at by this account: "
            + "name a port of 1024 or more with --urls.",
        SocketError.AddressNotAvailable => $"{address.OriginalString} is no address of this machine: "
            + $"name one of its own with --urls, such as {HostSettings.DefaultAddress}.",
        _ => $"{address.OriginalString} cannot be listened at ({error}): name another address with --urls.",
    };

    private static int Other(int port) => port < 65535 ? port + 1 : 5080;
}
