namespace SecondShore.Store.Tests;

/// <summary>A host on a PostgreSQL server of its own. The host goes on while its server dies and comes back.</summary>
internal sealed class PostgresHost : SimulatedHost
{
    private readonly PostgresServer _server;
    private readonly PostgresDatabase _database;

    private PostgresHost(PostgresServer server, string connectionText) => (_server, _database) = (server, PostgresDatabase.Open(connectionText));

    public static async Task<PostgresHost> StartAsync()
    {
        PostgresServer server = new();
        await server.InitializeAsync();
        PostgresHost host = new(server, await server.NewDatabaseAsync());
        await host.BeginAsync(host._database);
        return host;
    }

    /// <summary>A disk cannot be filled here without harm to the machine: the server takes no writes, which the store must tell apart as well.</summary>
    public override Task FillDiskAsync(int? pagesLeft) => _server.TakeWritesAsync(pagesLeft is null);

    /// <summary>The host goes on with connections that are dead: one caller may hear of it, and no second one.</summary>
    public override async Task CutPowerAsync()
    {
        await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => Store.AllAsync("lake", default)));
        await _server.KillAndStartAsync();
        try
        {
            await Store.AllAsync("lake", default);
        }
        catch (StorageException e)
        {
            Assert.Equal(StorageFault.Unreachable, e.Fault);
        }

        await Store.AllAsync("lake", default);
    }

    public override async ValueTask DisposeAsync()
    {
        await _database.DisposeAsync();
        await _server.DisposeAsync();
    }
}
