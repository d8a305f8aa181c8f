using System.Globalization;
using SecondShore.Host.Api;
using SecondShore.Store;

namespace SecondShore.Host.Verbs;

/// <summary>Lakes at the host's own console: what is there, by whom, and away with it. Works beside a host that runs.</summary>
internal static class LakeVerbs
{
    public static async Task<int> ListAsync(string[] args)
    {
        await using IDatabase database = await DeviceVerbs.OpenAsync(args).ConfigureAwait(false);
        RecordStore records = new(database, TimeProvider.System, StoreQuota.Default);
        foreach (LakeRow lake in await records.LakesAsync(CancellationToken.None).ConfigureAwait(false))
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{lake.Id}  {lake.Records,8} records  {lake.Bytes / 1048576.0,9:0.0} MB  {lake.AddedAt[..Math.Min(16, lake.AddedAt.Length)]}  {(lake.MadeBy.Length > 0 ? "by " + lake.MadeBy : "")}  {lake.Name}"));
        return 0;
    }

    public static async Task<int> RemoveAsync(string lake, string[] args)
    {
        if (!LakeIds.IsWellFormed(lake)) throw new SettingsException($"'{lake}' is no lake's id; 'lakes' lists them.");
        await using IDatabase database = await DeviceVerbs.OpenAsync(args).ConfigureAwait(false);
        bool done = await new RecordStore(database, TimeProvider.System, StoreQuota.Default).RemoveLakeAsync(lake, CancellationToken.None).ConfigureAwait(false);
        Console.WriteLine(done ? $"The lake {lake} is gone from this host, with its records, files and rights. Devices keep what they have of it." : $"There is no lake {lake}; 'lakes' lists them.");
        return done ? 0 : 2;
    }
}
