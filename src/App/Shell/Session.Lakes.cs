using System.Text.Json;
using SecondShore.App.Compute.Views;
using SecondShore.App.Store;

namespace SecondShore.App.Shell;

/// <summary>Lakes taken in, handed out and removed.</summary>
public sealed partial class Session
{
    /// <summary>What is understood of the files dropped; null when that failed, with the reason in <see cref="Trouble"/>.</summary>
    public async Task<InspectView?> InspectAsync(NewLakeFacts? facts)
    {
        InspectView? found = null;
        // Who brings files waits for them, not for the lake shown before.
        if (Work is not null) await StopAsync();
        await DoAsync("work.inspect", async () =>
            found = Read(await browser.Text("askWithFiles", "inspect", Json(About() with { NewLake = facts, Records = null })) ?? "{}", ViewsJson.Default.InspectView));
        return found;
    }

    /// <summary>Takes the dropped files in as a lake and opens it.</summary>
    public async Task<bool> AdoptAsync(NewLakeFacts facts, string name)
    {
        string id = LakeId.New(TimeProvider.System.GetUtcNow());
        bool taken = false;
        await DoAsync("work.adopt", async () =>
        {
            string json = await browser.Text("createLake", "adopt", Json(About() with { NewLake = facts, Records = null }), id, name, Now()) ?? "{}";
            InspectView? view = Read(json, ViewsJson.Default.InspectView);
            taken = view is { Taken: true };
            if (!taken) Trouble = view?.Problems.Count > 0 ? view.Problems[0] : Words["lakes.check.noposition"];
            else await ReadLakesAsync();
        });
        if (taken && Lakes.FirstOrDefault(l => l.Id == id) is { } lake) _ = OpenAsync(lake);
        return taken;
    }

    /// <summary>Puts a jig or trailer into the tackle box, or changes one.</summary>
    /// <returns>Whether it is kept; the reason otherwise is in <see cref="Trouble"/>.</returns>
    public async Task<bool> ChangeTackleAsync(TackleAsk ask)
    {
        if (Lake is not { } lake) return false;
        if (_engineIsCold) await WorkOutAsync();
        bool kept = false;
        await DoAsync("work.tackle", async () =>
        {
            TackleView? tackle = Read(await browser.Text("changeFiles", "tackle", Json(About() with { Tackle = ask }), lake.Id) ?? "{}", ViewsJson.Default.TackleView);
            kept = tackle is not null;
            if (kept && Lake?.Id == lake.Id && View is { } view) View = view with { Tackle = tackle! };
        });
        if (kept) Kept?.Invoke();
        return kept;
    }

    /// <summary>Hands the lake out as a trip file, with this device's records in it.</summary>
    public Task ExportAsync() => DoAsync("work.export", async () =>
    {
        if (Lake is null) return;
        // An entry whose writing is under way goes with it: the database gives what it was given before.
        await ReadRecordsAsync();
        await browser.Text("download", "export", Json(About()), FileName(Lake.Name) + ".zip", Lake.Id);
    });

    /// <summary>Hands out the second shore and its places as the command line writes them: GeoJSON and GPX.</summary>
    public Task HandOutShoreAsync() => DoAsync("work.export", async () =>
    {
        if (Lake is not null) await browser.Text("download", "shorefiles", Json(About()), "", Lake.Id);
    });

    /// <summary>Removes a lake, its files and its records from this device.</summary>
    public async Task RemoveAsync(LakeRow lake)
    {
        // Work on a lake that goes is work for nothing.
        if (lake.Id == Lake?.Id && Work is not null) await StopAsync();
        await browser.Do("removeLake", lake.Id);
        await ReadLakesAsync();
        if (lake.Id == Lake?.Id)
        {
            (Lake, View, Outlook, Shore, Day, Spots, Records) = (null, null, null, null, null, [], []);
            if (Lakes.Count > 0) _ = OpenAsync(Lakes[0]);
        }

        Tell();
    }

    /// <summary>Something of a lake came from the host: what is shown of it is read anew, and worked out anew where that changes it.</summary>
    /// <param name="lake">The lake.</param>
    /// <param name="records">Records that came.</param>
    /// <param name="files">Files that came.</param>
    public async Task CameAsync(string lake, int records, int files)
    {
        if (records + files == 0) return;
        if (Lake?.Id != lake)
        {
            Tell();
            return;
        }

        string[] before = [.. Readings()];
        await ReadRecordsAsync();
        Tell();
        if (files > 0 || !Readings().SequenceEqual(before)) _ = WorkOutAsync();

        IEnumerable<string> Readings() => Records.Where(r => RecordKinds.Readings.Contains(r.Kind)).Select(r => r.Id);
    }

    private static string Json(AskAbout about) => JsonSerializer.Serialize(about, ViewsJson.Default.AskAbout);

    internal static string FileName(string name)
    {
        char[] letters = [.. name.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-')];
        string joined = string.Join('-', new string(letters).Split('-', StringSplitOptions.RemoveEmptyEntries));
        return joined.Length > 0 ? joined : "lake";
    }
}
