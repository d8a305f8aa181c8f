using SecondShore.Store;

namespace SecondShore.Host;

/// <summary>The store as a service: opened before the server listens, closed after it.</summary>
internal static class HostStore
{
    public static void AddHostStore(this IServiceCollection services, HostSettings settings)
    {
        services.AddSingleton<OpenStore>(_ => new OpenStore(settings));
        services.AddSingleton<IDatabase>(provider => provider.GetRequiredService<OpenStore>().Database);
        services.AddSingleton<RecordStore>();
        services.AddSingleton<FileStore>();
        services.AddSingleton<DeviceStore>();
        services.AddHostedService<StoreOpening>();
        services.AddSingleton<Watch.StoreWatch>();
        services.AddHostedService(provider => provider.GetRequiredService<Watch.StoreWatch>());
    }

    /// <summary>The database of the settings.</summary>
    /// <exception cref="StorageException">It cannot be opened.</exception>
    public static IDatabase Open(HostSettings settings) => settings.Postgres is { } text
        ? PostgresDatabase.Open(text)
        : SqliteDatabase.Open(DataFolder.DatabaseIn(Path.GetFullPath(settings.DataFolder)));

    /// <summary>The database, and the folder held while it is open.</summary>
    internal sealed class OpenStore : IAsyncDisposable
    {
        private readonly DataFolder? _folder;

        public OpenStore(HostSettings settings)
        {
            _folder = settings.Postgres is null ? DataFolder.Take(settings.DataFolder) : null;
            Database = Open(settings);
        }

        public IDatabase Database { get; }

        public async ValueTask DisposeAsync()
        {
            await Database.DisposeAsync().ConfigureAwait(false);
            _folder?.Dispose();
        }
    }

    // The key comes after the store: only the host that holds the folder may put its own there.
    private sealed class StoreOpening(RecordStore records, Security.StartKey key) : IHostedService
    {
        public Task StartAsync(CancellationToken cancellationToken)
        {
            ArgumentNullException.ThrowIfNull(key);
            return records.OpenAsync(cancellationToken);
        }

        public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
    }
}
