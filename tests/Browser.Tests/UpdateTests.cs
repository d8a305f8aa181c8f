using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace SecondShore.Browser.Tests;

/// <summary>A newer version of the app that one tab takes while another writes.</summary>
public class UpdateTests(BrowserFixture fixture)
{
    private static readonly string Write = """
        async () => {
          const store = await import('/js/app.js');
          window.kept = 0;
          for (let i = 0; i < 400; i++) {
            const id = `w-${String(i).padStart(6, '0')}`;
            await store.addRecordsJson(JSON.stringify([{ id, lake: 'x', kind: 'note', at: '2026-10-06T12:00:00Z',
              replaces: null, removed: false, json: '{}' }]));
            window.kept = i + 1;
            await new Promise((go) => setTimeout(go, 20));
          }
        }
        """;

    [Fact]
    public async Task A_version_taken_in_one_tab_leaves_another_that_writes_whole_until_its_user_takes_it_too()
    {
        string folder = Directory.CreateTempSubdirectory("second-shore-site-").FullName;
        foreach (string file in Directory.EnumerateFiles(fixture.SiteFolder, "*", SearchOption.AllDirectories))
        {
            string to = Path.Combine(folder, Path.GetRelativePath(fixture.SiteFolder, file));
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            File.Copy(file, to);
        }

        using StaticSite site = new(folder);
        IBrowserContext device = await fixture.DeviceAsync(1440, 900);
        AppPage writing = await AppPage.OpenAsync(device, site.Address, "log");
        await writing.AnsweredAsync();
        await writing.IsOnDeviceAsync();
        Assert.True(await writing.BecomesAsync("() => navigator.serviceWorker.controller !== null"));
        // A part that this tab has not needed yet; the next version has it under no name at all.
        string part = await PartAsync(writing.Page, folder);
        _ = writing.Page.EvaluateAsync(Write).ContinueWith(ended => ended.Exception, TaskScheduler.Default);

        MakeNext(folder, part);
        AppPage other = await AppPage.OpenAsync(device, site.Address, "log");
        await other.Page.EvaluateAsync("async () => { await (await navigator.serviceWorker.getRegistration()).update(); }");
        await other.PressAsync("Use it now");

        // The tab that writes is told, and is not taken from under its user.
        await writing.Page.GetByRole(AriaRole.Button, new() { Name = "Use it now" }).WaitForAsync(new() { Timeout = 60_000 });
        Assert.True(await writing.BecomesAsync("() => window.kept === 400"), "Writing stopped when another tab took the newer version.");
        // A third tab, begun when only the one that writes is open, takes nothing from it either.
        await other.Page.CloseAsync();
        AppPage third = await AppPage.OpenAsync(device, site.Address, "log");
        await third.AnsweredAsync();
        // Its own parts are still there, though no server has them.
        Assert.Equal(200, await writing.Page.EvaluateAsync<int>("async (part) => (await fetch(part)).status", part));
        Assert.True(await writing.Page.EvaluateAsync<bool>("async (part) => (await (await fetch(part)).text()).includes('export')", part), "The part is another file.");

        await writing.PressAsync("Use it now");
        Assert.True(await writing.BecomesAsync("() => window.kept === undefined"), "The tab did not begin anew.");
        await writing.AnsweredAsync();
        Assert.Equal(400, await writing.Page.EvaluateAsync<int>("async () => JSON.parse(await (await import('/js/app.js')).recordsJson('x')).length"));
        // Once a page opens alone, nothing of the version before stays.
        await third.Page.CloseAsync();
        await writing.Page.ReloadAsync();
        Assert.True(await writing.BecomesAsync("async () => (await caches.keys()).length === 1"), "The version before stays on the device.");
        await device.CloseAsync();
        Directory.Delete(folder, recursive: true);
    }

    // One of the bundle's parts that was not loaded.
    private static async Task<string> PartAsync(IPage page, string folder)
    {
        string[] loaded = await page.EvaluateAsync<string[]>("() => performance.getEntriesByType('resource').map(r => new URL(r.name).pathname)");
        return Directory.EnumerateFiles(Path.Combine(folder, "js"), "part-*.js").Select(f => "/js/" + Path.GetFileName(f))
            .First(p => !loaded.Contains(p) && File.ReadAllText(Path.Combine(folder, "js", Path.GetFileName(p))).Contains("export", StringComparison.Ordinal));
    }

    // The next version: another version, a changed page, a part fewer.
    private static void MakeNext(string folder, string part)
    {
        string list = Path.Combine(folder, "service-worker-assets.js"), page = Path.Combine(folder, "index.html"), text = File.ReadAllText(list);
        File.Delete(Path.Combine(folder, part.TrimStart('/').Replace('/', Path.DirectorySeparatorChar)));
        File.AppendAllText(page, "<!-- next -->");
        string hash = "sha256-" + Convert.ToBase64String(SHA256.HashData(File.ReadAllBytes(page)));
        text = Regex.Replace(text, @"(""version"":\s*"")[^""]*", "$1next");
        text = Regex.Replace(text, @"""hash"":\s*""[^""]*"",\s*""url"":\s*""index\.html""", $"\"hash\": \"{hash}\", \"url\": \"index.html\"");
        text = Regex.Replace(text, @"\{\s*""hash"":\s*""[^""]*"",\s*""url"":\s*""" + Regex.Escape(part.TrimStart('/')) + @"""\s*\},?", "");
        File.WriteAllText(list, text, new UTF8Encoding(false));
        // The worker itself is told apart by its bytes.
        File.AppendAllText(Path.Combine(folder, "service-worker.js"), "\n// next");
    }
}
