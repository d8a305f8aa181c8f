using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using SecondShore.Answers.Lake;
using SecondShore.Answers.Learn;
using SecondShore.Answers.Questions;
using SecondShore.Engine.Season;
using SecondShore.Formats;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;

namespace SecondShore.Browser.Tests;

/// <summary>A whole trip on the invented lake: planned in the evening, fished without a signal, learned from at home.</summary>
public class TripTests(BrowserFixture fixture)
{
    // The evening before, half past eight on the water, and later, at a lake five hours behind the zero meridian or so.
    private static readonly DateTime Evening = new(2026, 10, 7, 0, 0, 0, DateTimeKind.Utc), Morning = new(2026, 10, 7, 13, 30, 0, DateTimeKind.Utc);

    [Theory]
    [InlineData(390, 664, "en-US")]
    [InlineData(1440, 900, "de-DE")]
    public async Task What_is_seen_and_logged_on_the_water_changes_the_answer_and_is_learned_from(int width, int height, string locale)
    {
        IBrowserContext device = await fixture.DeviceAsync(width, height, locale: locale);
        DeviceClock clock = await DeviceClock.OnAsync(device, fixture.Address, Evening);
        AppPage home = await AppPage.OpenAsync(device, fixture.Address);
        await home.WorkedOutAsync();
        await PlanAsync(home);
        await home.IsOnDeviceAsync();
        await device.SetOfflineAsync(true);
        await clock.SetAsync(Morning);
        await home.Page.CloseAsync();

        AppPage boat = await AppPage.OpenAsync(device, fixture.Address, "aboard");
        await boat.AnsweredAsync();
        await TieOnAsync(boat);
        await TapAsync(boat, 0);
        await clock.SetAsync(Morning.AddMinutes(15));
        await HazeAsync(boat, width);
        await clock.SetAsync(Morning.AddMinutes(25));
        await TapAsync(boat, 1);
        await WaitForKindsAsync(boat, "bite fish haze");
        string before = await boat.Page.InnerTextAsync(".ab-undo span");
        // A wrong tap is taken back once it is seen, and the tab dies.
        await clock.SetAsync(Morning.AddMinutes(26));
        await TapAsync(boat, 2);
        await WaitForKindsAsync(boat, "bite fish haze snag");
        await boat.Page.WaitForFunctionAsync("before => document.querySelector('.ab-undo span').innerText !== before", before);
        await boat.Page.Locator(".ab-undo button").Last.ClickAsync();
        await WaitForKindsAsync(boat, "bite fish haze");
        string rig = await boat.Page.InnerTextAsync(".ab-rig");
        await boat.Page.CloseAsync();
        boat = await AppPage.OpenAsync(device, fixture.Address, "aboard");
        await boat.AnsweredAsync();
        await boat.Page.WaitForFunctionAsync("rig => document.querySelector('.ab-rig')?.innerText === rig", rig);
        await clock.SetAsync(Morning.AddMinutes(50));
        await boat.Page.Locator(".ab-grid .act").ClickAsync();
        await WaitForKindsAsync(boat, "bite effort fish haze");
        await clock.SetAsync(Morning.AddMinutes(110));
        await TapAsync(boat, 3);
        await WaitForKindsAsync(boat, "bite effort fish haze nothing");
        await boat.ShotAsync($"trip-aboard-{width}");
        await boat.AccessibleAsync("Aboard");

        await boat.GoAsync("log");
        await boat.Page.WaitForSelectorAsync(".learned .rates", new() { Timeout = 900_000 });
        await boat.RestedAsync();
        await boat.AccessibleAsync("Log");
        await boat.Page.ScreenshotAsync(new() { Path = Path.Combine(BrowserFixture.Screens, $"trip-log-{width}.png"), FullPage = true });
        string shown = Plain(await boat.Page.InnerTextAsync(".learned"));
        await AgreesAsync(boat, shown, locale);
        Assert.Empty(home.Errors.Concat(boat.Errors));
        string[] faults = [.. home.Faults, .. boat.Faults];
        Assert.True(faults.Length == 0, string.Join('\n', faults));
        await device.CloseAsync();
    }

    private static async Task PlanAsync(AppPage app)
    {
        await app.Page.Locator(".places a[href=day]").ClickAsync();
        await app.Page.Locator(".dayform button[type=submit]").ClickAsync();
        await app.Page.WaitForSelectorAsync(".tl .rg", new() { Timeout = 900_000 });
        await app.RestedAsync();
    }

    private static async Task TieOnAsync(AppPage app)
    {
        await app.Page.Locator(".ab-rig").ClickAsync();
        await app.Page.Locator(".ab-box .picks >> nth=0").Locator("button").First.ClickAsync();
        await app.Page.Locator(".ab-box .picks >> nth=1").Locator("button").First.ClickAsync();
        await app.Page.Locator(".ab-rig").ClickAsync();
        Assert.Contains("slim craw", await app.Page.InnerTextAsync(".ab-rig"), StringComparison.Ordinal);
    }

    private static Task TapAsync(AppPage app, int key) => app.Page.Locator(".ab-grid > button").Nth(key).ClickAsync();

    // Five feet deeper than told: the depth moves, and the plan says what it loses.
    private static async Task HazeAsync(AppPage app, int width)
    {
        double toldFt = await DepthAsync(app);
        int steps = 0;
        while (Number(await app.Page.InnerTextAsync(".ab-mid b")) < toldFt + 5 && steps++ < 40) await app.Page.Locator(".ab-haze button").Last.ClickAsync();
        await app.Page.Locator(".ab-mid").ClickAsync();
        await app.Page.WaitForSelectorAsync(".ab-hold", new() { Timeout = 900_000 });
        await app.RestedAsync();
        double nowFt = await DepthAsync(app);
        Assert.True(nowFt > toldFt + 1, $"{toldFt} to {nowFt} ft");
        string said = await app.Page.InnerTextAsync(".ab-hold span");
        // The line tells whole feet, the large number halves.
        Assert.InRange(Number(said), nowFt - 0.8, nowFt + 0.8);
        await app.ShotAsync($"trip-haze-{width}");
        if (width >= 1000) Assert.NotEqual("0", await app.Page.GetAttributeAsync(".ab-map .map", "data-places"));
        await app.Page.Locator(".ab-hold button").ClickAsync();
        await app.Page.WaitForSelectorAsync(".ab-hold", new() { State = WaitForSelectorState.Detached, Timeout = 900_000 });
        await app.RestedAsync();
    }

    private static async Task<double> DepthAsync(AppPage app) => Number(Regex.Match(await app.Page.InnerTextAsync(".ab-depth .num"), @"^[\d.,]+").Value);

    private static double Number(string text) => double.Parse(Regex.Match(text, @"[\d.,]+").Value.Replace(',', '.'), CultureInfo.InvariantCulture);

    // Kinds of the device's own entries that stand, in order of the alphabet.
    private static async Task WaitForKindsAsync(AppPage app, string kinds)
    {
        if (!await app.BecomesAsync($"async (kinds) => await ({Kept})() === kinds", kinds)) Assert.Equal(kinds, await app.Page.EvaluateAsync<string>(Kept));
    }

    private static readonly string Kept = """
        async () => {
          const store = await import('/js/app.js'), rows = JSON.parse(await store.recordsJson(await store.setting('lake')));
          const gone = new Set(rows.map((r) => r.replaces));
          return rows.filter((r) => !r.removed && !gone.has(r.id)).map((r) => r.kind).sort().join(' ');
        }
        """;

    // The trip file, learned from as the command line does: the same sums and rates, to the digit that is shown.
    private static async Task AgreesAsync(AppPage app, string shown, string locale)
    {
        await app.GoAsync("lakes");
        await app.Page.WaitForSelectorAsync(".lakerow", new() { Timeout = 120_000 });
        await app.RestedAsync();
        IDownload trip = await app.Page.RunAndWaitForDownloadAsync(() => app.Page.Locator(".export button, button.export").First.ClickAsync(), new() { Timeout = 900_000 });
        string file = Path.Combine(Path.GetTempPath(), $"trip-{Guid.NewGuid():N}.zip");
        await trip.SaveAsAsync(file);
        LakeFolder folder = LakeFolderReader.Read(TripFile.Read("trip.zip", await File.ReadAllBytesAsync(file), new ProblemLog())!);
        File.Delete(file);
        PreparedLake lake = PreparedLake.From(folder);
        Outlook outlook = OutlookAnswer.Compute(lake, AnswerTime.Default(folder, TimeProvider.System));
        LearnDocument learned = LearnDocument.Of(LearnAnswer.Of(folder, outlook, new LearnWish(), UnitSystem.Feet), []);
        LearnDocument.RateRow rate = learned.Choices.Single(c => c.Factor == "trailer").Rates.Single(r => r.Choice == "slim craw");
        CultureInfo culture = CultureInfo.GetCultureInfo(locale);
        string between = locale == "de-DE" ? "bis" : "to";
        Assert.Contains(string.Create(culture, $"{rate.RatePerH.P50:0.0}, {rate.RatePerH.P10:0.0} {between} {rate.RatePerH.P90:0.0}"), shown, StringComparison.Ordinal);
        Assert.Contains(string.Create(culture, $"{learned.HoursH:0.0} h, {learned.Bites}"), shown, StringComparison.Ordinal);
        LogRow[] today = [.. folder.Log.Where(r => r.At >= Morning.AddHours(-2))];
        Assert.True(today.Any(r => r.Kind == LogKind.Fish), string.Join("; ", folder.Log.TakeLast(12).Select(r => $"{r.At:u} {r.Kind} {r.Id}")) + " | " + string.Join("; ", folder.Problems.Select(p => p.ToString())));
        Assert.Equal((1, 1, 1), (today.Count(r => r.Kind == LogKind.Effort), today.Count(r => r.Kind == LogKind.Nothing), today.Count(r => r.Kind == LogKind.Fish)));
        Assert.All(today, r => Assert.Equal("slim craw", r.Trailer));
        Assert.All(today.Where(r => r.Kind is LogKind.Effort or LogKind.Nothing), r => Assert.InRange(r.Minutes!.Value, 20, 130));
    }

    private static string Plain(string text) => Regex.Replace(text, @"\s+", " ");
}
