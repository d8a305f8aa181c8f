using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using SecondShore.TestKit;

namespace SecondShore.Browser.Tests;

/// <summary>What reaches a German reader of the published app: German, and neither the framework's words nor the command line's.</summary>
public partial class WordsTests(BrowserFixture fixture)
{
    private static readonly string Place = """{ "name": "Bruch", "latitude_deg": 45, "longitude_deg": -90, "time_zone": "America/Chicago" }""";

    // A file that is wrong, beside a sound lake.json, and words that its sentence must hold.
    private static readonly (string File, string Text, string Said)[] Broken =
    [
        ("lake.json", "{ \"name\": \"Bruch\",\n \"latitude_deg\": tru }", "kein lesbares JSON"),
        ("survey.gpx", "<gpx><wpt lat=\"45\" lon=\"-90\"/><na", "bricht hier ab oder ist beschädigt"),
        ("cover.gpx", "<?xml version=\"1.0\"?><!DOCTYPE gpx [<!ENTITY x \"y\">]><gpx><wpt lat=\"45\" lon=\"-90\"/></gpx>", "Dokumenttyp (DTD)"),
        ("weather.csv", "time,air_temp_c\n2026-09-01T00:00:00Z,warm\n", "wo eine Zahl erwartet wird"),
        ("hypsography.csv", "depth_m,area_m2\n0,1000\n5,2000\n", "Flächen dürfen mit der Tiefe nicht wachsen"),
        ("survey.csv", "x,y,z\n500000,4400000,3\n500010,4400010,4\n500020,4400000,5\n", "nennt kein Koordinatensystem"),
    ];

    [Fact]
    public async Task A_german_reader_meets_neither_english_nor_the_framework_nor_the_command_line()
    {
        IBrowserContext device = await fixture.DeviceAsync(1440, 900, locale: "de-DE");
        AppPage app = await AppPage.OpenAsync(device, fixture.Address);
        await app.StopAsync();
        List<string> foreign = [];
        await app.Page.Locator(".mast .t").ClickAsync();
        foreach ((string file, string text, string said) in Broken)
        {
            FilePayload[] files = file == "lake.json" ? [File(file, text)] : [File("lake.json", Place), File(file, text)];
            await app.Page.SetInputFilesAsync("#lakefiles", files);
            await SaidAsync(app, file, said, foreign);
            await ReadAsync(app, $"{file} that is wrong", foreign);
        }

        await ImpossibleRigAsync(app, foreign);
        await app.BringTestLakeAsync(Text("lakes.check.take"));
        foreach (string place in (string[])["place.lake", "place.shore", "place.rig", "place.log"])
        {
            await app.PlaceAsync(Text(place));
            await app.RestedAsync();
            await ReadAsync(app, Text(place), foreign);
        }

        await app.PlaceAsync(Text("place.shore"));
        await app.PressAsync(Text("step.more").Replace("{0}", Text("shore.ask.depth"), StringComparison.Ordinal));
        await app.Page.WaitForSelectorAsync(".whatif");
        await app.Page.WaitForTimeoutAsync(2_000);
        await app.RestedAsync();
        await ReadAsync(app, "what if", foreign);
        await app.PlaceAsync(Text("place.wind"));
        await app.Page.WaitForSelectorAsync(".wind .scrub", new() { Timeout = 300_000 });
        await ReadAsync(app, Text("place.wind"), foreign);
        await app.PlaceAsync(Text("place.day"));
        await app.PressAsync(Text("day.plan"));
        await app.Page.WaitForSelectorAsync(".tl .rg", new() { Timeout = 900_000 });
        await app.RestedAsync();
        await ReadAsync(app, Text("place.day"), foreign);
        Assert.True(foreign.Count == 0, string.Join('\n', foreign.Distinct()));
        await device.CloseAsync();
    }

    // What does not come is told with what came instead.
    private static async Task SaidAsync(AppPage app, string file, string said, List<string> foreign)
    {
        try
        {
            await app.Page.WaitForFunctionAsync("said => document.querySelector('.found')?.textContent.includes(said)", said, new() { Timeout = 90_000 });
        }
        catch (TimeoutException)
        {
            string[] came = [.. await app.Page.Locator(".found, .trouble").AllInnerTextsAsync()];
            foreign.Add($"{file} that is wrong: wanted '{said}', and was told '{Regex.Replace(string.Join(' ', came), @"\s+", " ")}'");
        }
    }

    // No control of the page goes that far; a question by hand does.
    private static async Task ImpossibleRigAsync(AppPage app, List<string> foreign)
    {
        string said = await app.Page.EvaluateAsync<string>("""
            async () => {
              const app = await import('./js/app.js');
              app.setReader(JSON.stringify({ metric: true, language: 'de' }));
              const question = JSON.stringify({ question: 'rig', ask: { depthM: 900, speedMps: 0.3, lineKg: 5 } });
              return app.ask('rig', question, null, null, null, null, null).then(() => 'answered', (error) => String(error.message));
            }
            """);
        Assert.StartsWith("said:Die Tiefe ist 900,0 m", said, StringComparison.Ordinal);
        foreign.AddRange(Foreign(said).Select(f => $"an impossible rig: {f}"));
    }

    private static async Task ReadAsync(AppPage app, string where, List<string> foreign)
    {
        // Folded away is read all the same.
        await app.Page.EvaluateAsync("() => document.querySelectorAll('details').forEach((d) => { d.open = true; })");
        string text = await app.Page.EvaluateAsync<string>("() => [...document.querySelectorAll('main, header, .trouble')].map((e) => e.innerText).join('\\n')");
        foreign.AddRange(Foreign(text).Select(f => $"{where}: {f}"));
    }

    private static IEnumerable<string> Foreign(string text) =>
        // Names of countries and coordinate systems are data.
        text.Replace("United States of America", "", StringComparison.Ordinal).Split('\n').Where(line => Framework().IsMatch(line) || CommandLine().IsMatch(line) || English().IsMatch(line)).Select(l => l.Trim());

    private static string Text(string key)
    {
        using JsonDocument texts = JsonDocument.Parse(System.IO.File.ReadAllText(Path.Combine(SharedData.RepositoryRoot, "src", "App", "Text", "de.json")));
        return texts.RootElement.GetProperty(key).GetString()!;
    }

    private static FilePayload File(string name, string text) => new() { Name = name, MimeType = "text/plain", Buffer = Encoding.UTF8.GetBytes(text) };

    [GeneratedRegex("Arg_|_Name,|Xml_|IO_|Format_|Argument_|ExpectedTrue|Exception|ManagedError")]
    private static partial Regex Framework();

    [GeneratedRegex(@"(^|\s)--[a-z]|secondshore ")]
    private static partial Regex CommandLine();

    [GeneratedRegex(@"\b(the|is|are|were|with|from|and|of|to|not|taken|used|about|between|which|there|where)\b")]
    private static partial Regex English();
}
