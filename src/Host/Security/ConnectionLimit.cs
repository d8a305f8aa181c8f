using System.Collections.Concurrent;
using System.Net;
using Microsoft.AspNetCore.Connections;

namespace SecondShore.Host.Security;

/// <summary>How many connections one address may hold open: what it opens beyond them is closed at once, and others go on.</summary>
internal sealed class ConnectionLimit(HostSettings settings)
{
    private readonly ConcurrentDictionary<string, int> _open = new(StringComparer.Ordinal);

    public ConnectionDelegate Around(ConnectionDelegate next) => async context =>
    {
        IPAddress? remote = (context.RemoteEndPoint as IPEndPoint)?.Address;
        // Behind a named proxy all callers come from its address.
        if (remote is not null && settings.Proxies.Contains(remote))
        {
            await next(context).ConfigureAwait(false);
            return;
        }

        string key = CallerAddress.KeyOf(remote);
        try
        {
            if (_open.AddOrUpdate(key, 1, (_, n) => n + 1) > settings.ConnectionsPerAddress) context.Abort();
            else await next(context).ConfigureAwait(false);
        }
        finally
        {
            if (_open.AddOrUpdate(key, 0, (_, n) => n - 1) <= 0) _open.TryRemove(KeyValuePair.Create(key, 0));
        }
    };
}
