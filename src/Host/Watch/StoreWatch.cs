using SecondShore.Store;

namespace SecondShore.Host.Watch;

/// <summary>Looks through the database at the start and every few hours, and keeps what is found until it is found sound again.</summary>
internal sealed class StoreWatch(IDatabase database, HostSettings settings, TimeProvider clock) : BackgroundService
{
    private static readonly TimeSpan Between = TimeSpan.FromHours(6);

    /// <summary>What is damaged, in a sentence; null for nothing found.</summary>
    public string? Damage { get; private set; }

    /// <summary>A call met damage.</summary>
    public void Damaged(string message) => Damage = message;

    /// <summary>Looks through the database now.</summary>
    public async Task LookAsync(CancellationToken cancel)
    {
        if (settings.Postgres is not null) return;
        try
        {
            string? sound = await database.ReadAsync(work => work.FirstAsync<string>("pragma quick_check(1)"), cancel).ConfigureAwait(false);
            Damage = sound == "ok" ? null : "The database is damaged. Stop the host and restore the last backup; devices send again what it lacks.";
        }
        catch (StorageException e)
        {
            Damage = e.Message;
        }
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        try
        {
            while (true)
            {
                await Task.Run(() => LookAsync(stoppingToken), stoppingToken).ConfigureAwait(false);
                await Task.Delay(Between, clock, stoppingToken).ConfigureAwait(false);
            }
        }
        catch (OperationCanceledException)
        {
            // The host ends.
        }
    }
}
