using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using SecondShore.Formats;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.TestKit;

namespace SecondShore.Browser.Tests;

/// <summary>A trip file saved from the app, read as the command line reads it.</summary>
internal static class TripFiles
{
    /// <summary>What the app has learned, as the document that its Log shows.</summary>
    public static Task<string> LearnedInAppAsync(IPage page, string language) => page.EvaluateAsync<string>("""
        async (language) => {
          const store = await import('/js/app.js'), lake = await store.setting('lake'), records = JSON.parse(await store.recordsJson(lake));
          store.setReader(JSON.stringify({ metric: false, language }));
          return store.ask('learn', JSON.stringify({ question: 'learn', wish: {}, records }), lake, null, null, null, null);
        }
        """, language);

    /// <summary>What <c>learn FILE --json</c> prints.</summary>
    public static async Task<string> LearnedByCommandLineAsync(string zip)
    {
        ProcessStartInfo start = new(Programs.Dotnet, [Path.Combine(AppContext.BaseDirectory, "secondshore.dll"), "learn", zip, "--units", "feet", "--json"])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using Process learn = Process.Start(start)!;
        Task<string> error = learn.StandardError.ReadToEndAsync();
        string said = await learn.StandardOutput.ReadToEndAsync();
        await learn.WaitForExitAsync();
        Assert.True(learn.ExitCode == 0, await error);
        return said;
    }

    /// <summary>The same document to the digit; in another language than English the same numbers, and the same choices.</summary>
    public static void Agree(string inApp, string byCommandLine, string shown, string locale)
    {
        bool words = locale.StartsWith("en", StringComparison.Ordinal);
        JsonNode app = JsonNode.Parse(inApp)!, line = JsonNode.Parse(byCommandLine)!;
        // The app never speaks of options.
        Assert.Equal(Lines(line, words).Select(l => Regex.Replace(l, @",? or say it with --[a-z]+", "")), Lines(app, words));
        CultureInfo culture = CultureInfo.GetCultureInfo(locale);
        JsonNode rate = line["choices"]!.AsArray().Single(c => (string?)c!["factor"] == "trailer")!["rates"]!.AsArray().Single(r => (string?)r!["choice"] == "slim craw")!["rate_per_h"]!;
        Assert.Contains(Said.In(locale, "learn.between", One(rate["p50"]!), One(rate["p10"]!), One(rate["p90"]!)), shown, StringComparison.Ordinal);
        Assert.Contains(Said.In(locale, "learn.sums", One(line["hours_h"]!), (int)line["bites"]!, (int)line["blanks"]!), shown, StringComparison.Ordinal);

        string One(JsonNode number) => ((double)number).ToString("0.0", culture);
    }

    /// <summary>Every entry of the day stands in the file, with what was tied on.</summary>
    public static void Holds(byte[] zip, DateTime from, IReadOnlyCollection<string> kinds)
    {
        LakeFolder folder = LakeFolderReader.Read(TripFile.Read("trip.zip", zip, new ProblemLog())!);
        LogRow[] today = [.. folder.Log.Where(r => r.At >= from)];
        foreach ((string kind, LogKind filed) in ((string, LogKind)[])[("bite", LogKind.Bite), ("fish", LogKind.Fish), ("snag", LogKind.Snag), ("nothing", LogKind.Nothing),
            ("effort", LogKind.Effort), ("sighting", LogKind.Sighting), ("note", LogKind.Note)])
            Assert.True(kinds.Count(k => k == kind) == today.Count(r => r.Kind == filed), $"{kind}: {kinds.Count(k => k == kind)} logged, {today.Count(r => r.Kind == filed)} in the file. "
                + string.Join("; ", folder.Problems.Select(p => p.ToString())));
        Assert.All(today.Where(r => r.Kind is not (LogKind.Note or LogKind.Sighting)), r => Assert.Equal("slim craw", r.Trailer));
        Assert.All(today.Where(r => r.Kind is LogKind.Effort or LogKind.Nothing), r => Assert.InRange(r.Minutes!.Value, 10, 240));
        Assert.Equal(kinds.Count(k => k is "haze" or "surface" or "secchi" or "temperature" or "oxygen"),
            folder.Readings.Concat(folder.Secchi).Count(r => r.At >= from) + folder.Profiles.Where(p => p.At >= from).Sum(p => 1));
    }

    // One line for each value: where it stands and what it is.
    private static string[] Lines(JsonNode? node, bool words, string where = "") => node switch
    {
        JsonObject parts => [.. parts.SelectMany(p => Lines(p.Value, words, $"{where}.{p.Key}"))],
        JsonArray rows => [.. rows.SelectMany((r, i) => Lines(r, words, $"{where}[{i}]"))],
        JsonValue value when value.GetValueKind() == JsonValueKind.String && !words && !where.EndsWith(".choice", StringComparison.Ordinal) => [],
        _ => [$"{where} {node?.ToJsonString()}"],
    };
}
