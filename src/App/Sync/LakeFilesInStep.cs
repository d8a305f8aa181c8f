using System.Text.Json;
using SecondShore.App.Shell;
using SecondShore.Formats.Files;
using SecondShore.Records;

namespace SecondShore.App.Sync;

/// <summary>
/// Keeps the files of one lake in step: what another device changed is fetched, what this one changed is sent and named by a record.
/// Where both changed a file apart, both versions stay at the host and every device takes the later one.
/// </summary>
internal sealed class LakeFilesInStep(Browser browser, LakeLink link, DeviceRecords records)
{
    /// <summary>What was done.</summary>
    /// <param name="Fetched">Files that came.</param>
    /// <param name="Named">Files that were sent and whose records wait to be sent.</param>
    /// <param name="Missing">Files that the host does not have whole yet.</param>
    public sealed record Done(int Fetched, int Named, int Missing);

    /// <summary>Does it; may be cut off anywhere and run again.</summary>
    /// <param name="progress">Told of the share done.</param>
    /// <exception cref="HostException">The host went away.</exception>
    public async Task<Done> RunAsync(Action<double> progress)
    {
        IReadOnlyDictionary<string, (LakeRecord Record, FileVersion Version)> standing = FileVersion.Standing(await records.FileRecordsAsync());
        Dictionary<string, DeviceFile> here = (JsonSerializer.Deserialize(await browser.Text("hashedFiles", link.Lake) ?? "[]", SyncJson.Default.IReadOnlyListDeviceFile) ?? [])
            .ToDictionary(f => f.Path, StringComparer.Ordinal);
        string[] paths = [.. standing.Keys.Union(here.Keys).Where(FileNames.IsSafe).Order(StringComparer.Ordinal)];
        int fetched = 0, named = 0, missing = 0;
        for (int i = 0; i < paths.Length; i++)
        {
            progress((double)i / paths.Length);
            DeviceFile? file = here.GetValueOrDefault(paths[i]);
            if (!standing.TryGetValue(paths[i], out (LakeRecord Record, FileVersion Version) there))
            {
                if (file is not null && link.MayWrite && await SendAsync(file)) named++;
            }
            else if (file?.Sha256 == there.Version.Sha256)
            {
                if (file.Base != there.Record.Id) await browser.Do("basedFile", link.Lake, file.Path, file.Sha256, there.Record.Id);
            }
            else if (file is null || file.Base is not null || !link.MayWrite)
            {
                if (await FetchAsync(paths[i], there.Version.Sha256, there.Record.Id)) fetched++; else missing++;
            }
            else if (await SendAsync(file))
            {
                named++;
            }
        }

        return new Done(fetched, named, missing);
    }

    private async Task<bool> FetchAsync(string path, string sha256, string record)
    {
        int status = (int)await browser.Number("fetchFile", link.Lake, link.At, path, sha256, record);
        // The bytes may still be on their way from the device that named them; damaged ones are asked for again.
        return status is not (404 or 422) && (status == 200 ? true : throw new HostException(status, ""));
    }

    private async Task<bool> SendAsync(DeviceFile file)
    {
        int status = (int)await browser.Number("sendFile", link.Lake, link.At, file.Path, file.Sha256);
        // Changed since it was hashed, or on its way from another tab: the next round sees to it.
        if (status is 409) return false;
        if (status != 200) throw new HostException(status, "");
        LakeRecord record = new FileVersion(file.Path, file.Sha256, file.SizeBytes)
            .ToRecord(DateTimeOffset.FromUnixTimeMilliseconds((long)file.SavedAt), RecordIds.IsWellFormed(file.Was) ? file.Was : null);
        await records.AddAsync([record], default);
        await browser.Do("basedFile", link.Lake, file.Path, file.Sha256, record.Id);
        return true;
    }
}
