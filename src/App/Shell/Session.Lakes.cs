using SecondShore.App.Store;
using SecondShore.Desk.Entries;
using SecondShore.Desk.Questions;
using SecondShore.Desk.Views;

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
            found = await browser.AskThrough("askWithFiles", [], new InspectFiles(facts)));
        return found;
    }

    /// <summary>Takes the dropped files in as a lake and opens it.</summary>
    public async Task<bool> AdoptAsync(NewLakeFacts facts, string name)
    {
        string id = LakeId.New(TimeProvider.System.GetUtcNow());
        bool taken = false;
        await DoAsync("work.adopt", async () =>
        {
            InspectView view = await browser.AskThrough("askWithFiles", [], new AdoptFiles(facts));
            taken = view.Taken;
            if (taken) await browser.Do("saveMade", id, name.Length > 0 ? name : view.Name, Now());
            if (!taken) Trouble = view.Problems.Count > 0 ? view.Problems[0] : Words["lakes.check.noposition"];
            else await ReadLakesAsync();
        });
        if (taken && Lakes.FirstOrDefault(l => l.Id == id) is { } lake) _ = OpenAsync(lake);
        return taken;
    }

    /// <summary>Puts a jig or trailer into the tackle box, changes one, or times a drop.</summary>
    /// <returns>Whether it is kept; the reason otherwise is in <see cref="Trouble"/>.</returns>
    public async Task<bool> ChangeTackleAsync(Question<TackleView> change)
    {
        if (Lake is not { } lake) return false;
        if (_engineIsCold) await WorkOutAsync();
        bool kept = false;
        await DoAsync("work.tackle", async () =>
        {
            TackleView tackle = await ChangeFilesAsync(change, lake.Id);
            kept = true;
            if (Lake?.Id == lake.Id && View is { } view) View = view with { Tackle = tackle };
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
        await HandOutAsync(new ExportTrip(_kept), Lake.Id, FileName(Lake.Name) + ".zip");
    });

    /// <summary>Hands out the second shore and its places as the command line writes them: GeoJSON and GPX.</summary>
    public Task HandOutShoreAsync() => DoAsync("work.export", async () =>
    {
        if (Lake is not null) await HandOutAsync(new ShorePapers(), Lake.Id);
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

    internal static string FileName(string name)
    {
        char[] letters = [.. name.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-')];
        string joined = string.Join('-', new string(letters).Split('-', StringSplitOptions.RemoveEmptyEntries));
        return joined.Length > 0 ? joined : "lake";
    }
}
