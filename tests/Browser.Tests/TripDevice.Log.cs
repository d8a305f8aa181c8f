using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Browser.Tests;

/// <summary>The log of a device on a trip: what is typed and changed in it, and what then stands there.</summary>
internal sealed partial class TripDevice
{
    private readonly List<string> _kinds = [];

    /// <summary>An entry typed from the sheet.</summary>
    /// <param name="kind">Its kind.</param>
    /// <param name="at">When it happened.</param>
    /// <param name="fields">Key of the field's text, its value, its unit; no key is the reading's own value.</param>
    public async Task TypeAsync(string kind, DateTime at, params (string Key, string Value, string Unit)[] fields)
    {
        await App.Page.GetByText(Say("log.sheet"), new() { Exact = true }).ClickAsync();
        ILocator form = App.Page.Locator(".edit.whole");
        await form.Locator("select").First.SelectOptionAsync(kind);
        await form.Locator("input[type=datetime-local]").FillAsync(at.AddHours(-5).ToString("yyyy-MM-ddTHH:mm", CultureInfo.InvariantCulture));
        foreach ((string key, string value, string unit) in fields)
            await (key.Length == 0 ? form.Locator("input[type=number]").First : form.Locator("label", new() { HasTextRegex = new Regex("^" + Regex.Escape(Say(key, unit))) }).Locator("input")).FillAsync(value);
        await form.Locator("button[type=submit]").ClickAsync();
        await StandAsync(kind);
        await ClosedAsync(form);
    }

    // A form that stays open says why.
    private async Task ClosedAsync(ILocator form)
    {
        try
        {
            await form.WaitForAsync(new() { State = WaitForSelectorState.Detached, Timeout = 60_000 });
        }
        catch (TimeoutException)
        {
            await ShotAsync("form", whole: true);
            Assert.Fail($"The form stays: {Plain(await form.InnerTextAsync())} {string.Join(' ', await App.Page.Locator(".work, [role=alert]").AllInnerTextsAsync())} {string.Join(' ', App.Errors)}");
        }
    }

    /// <summary>The oldest fish in the log gets a weight: a new record in the place of the old.</summary>
    public async Task WeighAsync(string pounds)
    {
        // What came with the lake's files cannot be changed here, and has no such button.
        ILocator edit = App.Page.GetByRole(AriaRole.Button, new() { Name = Say("entry.edit"), Exact = true });
        await App.Page.Locator(".entries .ent", new() { HasText = Say("kind.fish"), Has = edit }).Last.GetByRole(AriaRole.Button, new() { Name = Say("entry.edit"), Exact = true }).ClickAsync();
        await App.Page.Locator(".edit.whole").GetByLabel(Say("entry.weight", "lb")).FillAsync(pounds);
        await App.Page.Locator(".edit.whole button[type=submit]").ClickAsync();
        await ClosedAsync(App.Page.Locator(".edit.whole"));
        await StandAsync();
    }

    /// <summary>Waits until the log's lessons stand, and sees that they are of this day.</summary>
    public async Task LearnedAsync()
    {
        await App.RestedAsync();
        await App.Page.WaitForSelectorAsync(".learned .rates", new() { Timeout = 900_000 });
        string day = At(12, 0).ToString("d. MMM", CultureInfo.GetCultureInfo(_locale)).Split(' ')[0].TrimEnd('.');
        Assert.Contains(day, await App.Page.Locator(".learned .rulehead h2").Nth(1).InnerTextAsync(), StringComparison.Ordinal);
    }

    /// <summary>The place of the newest entry of a kind, to the device's own doubt.</summary>
    public async Task<GeoPoint?> PlaceOfLastAsync(string kind)
    {
        double[]? place = await App.Page.EvaluateAsync<double[]?>("""
            async (kind) => {
              const store = await import('/js/app.js'), rows = JSON.parse(await store.recordsJson(await store.setting('lake')));
              const entry = JSON.parse(rows.filter((r) => r.kind === kind).at(-1).json);
              return entry.latDeg === undefined ? null : [entry.latDeg, entry.lonDeg];
            }
            """, kind);
        return place is null ? null : new GeoPoint(place[0], place[1]);
    }

    /// <summary>Kinds of the entries that should stand, in order of the alphabet.</summary>
    public string Kinds => string.Join(' ', _kinds.Order(StringComparer.Ordinal));

    /// <summary>The trip file holds the day, and the command line learns from it what the app shows.</summary>
    public async Task AgreesAsync()
    {
        string inApp = await TripFiles.LearnedInAppAsync(App.Page, _locale[..2]);
        string shown = Plain(await App.Page.InnerTextAsync(".learned"));
        await App.PlaceAsync(Say("place.log"));
        await App.Page.Locator(".mast .t").ClickAsync();
        await App.Page.WaitForSelectorAsync(".lakerow", new() { Timeout = 120_000 });
        await App.RestedAsync();
        IDownload file = await App.Page.RunAndWaitForDownloadAsync(() => App.Page.Locator(".export button, button.export").First.ClickAsync(), new() { Timeout = 900_000 });
        string zip = Path.Combine(Path.GetTempPath(), $"trip-{Guid.NewGuid():N}.zip");
        await file.SaveAsAsync(zip);
        try
        {
            TripFiles.Agree(inApp, await TripFiles.LearnedByCommandLineAsync(zip), shown, _locale);
            TripFiles.Holds(await File.ReadAllBytesAsync(zip), At(0, 0), _kinds);
        }
        finally
        {
            File.Delete(zip);
        }
    }

    // Waits until the device's own entries that stand are those that should, one more of a kind where one was made.
    private async Task StandAsync(string? more = null)
    {
        if (more is not null) _kinds.Add(more);
        if (!await App.BecomesAsync($"async (kinds) => await ({Kept})() === kinds", Kinds)) Assert.Equal(Kinds, await App.Page.EvaluateAsync<string>(Kept));
    }

    private static readonly string Kept = """
        async () => {
          const store = await import('/js/app.js'), rows = JSON.parse(await store.recordsJson(await store.setting('lake')));
          const gone = new Set(rows.map((r) => r.replaces));
          return rows.filter((r) => !r.removed && !gone.has(r.id)).map((r) => r.kind).sort().join(' ');
        }
        """;
}
