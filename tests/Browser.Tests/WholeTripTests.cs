using Microsoft.Playwright;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Browser.Tests;

/// <summary>A whole trip on the invented lake: planned in the evening, fished without a signal, learned from at home.</summary>
public class WholeTripTests(BrowserFixture fixture)
{
    private static readonly double DragMps = 0.27;

    [Fact]
    public async Task A_trip_from_the_evening_plan_to_what_the_day_taught()
    {
        await using TripDevice trip = await TripDevice.OnAsync(fixture, 390, 844, "en-US");
        await trip.OpenAsync("", TripDevice.Evening);
        await trip.App.WorkedOutAsync();
        await trip.PlanAsync();
        (string Name, GeoPoint Place)[] way = DeviceBoat.Waypoints(await trip.RouteAsync());
        Assert.True(way.Length > 2, "A ramp and two stops at least.");

        // The night at home: the plan stands in the morning.
        await trip.OpenAsync("day", TripDevice.At(5, 30));
        await trip.App.Page.WaitForSelectorAsync(".tl .rg");
        await trip.App.RestedAsync();
        Assert.Equal(way.Length - 1, await trip.App.Page.Locator(".tl .rg").CountAsync());
        await trip.OfflineAsync();

        await trip.OpenAsync("aboard", TripDevice.At(6, 40));
        await trip.TieOnAsync("slim craw");
        await trip.App.Page.Locator(".ab-speed .btn").ClickAsync();
        await DeviceBoat.DragAsync(trip.App.Page, trip.Clock, TripDevice.At(7, 10), way[1].Place, DragMps, 16);
        await MorningAsync(trip, way[1].Place);
        await DayAsync(trip);
        await EveningAsync(trip);
        await trip.AgreesAsync();
        await trip.EndAsync();
    }

    [Theory]
    [InlineData("en-US", new[] { 390, 664, 1024, 768 })]
    [InlineData("de-DE", new[] { 390, 664, 390, 844, 768, 1024, 1440, 900 })]
    public async Task A_trip_in_every_size_and_language(string locale, int[] sizes)
    {
        await using TripDevice trip = await TripDevice.OnAsync(fixture, sizes[0], sizes[1], locale);
        await trip.OpenAsync("", TripDevice.Evening);
        await trip.App.WorkedOutAsync();
        await trip.PlanAsync();
        await trip.OfflineAsync();
        await trip.OpenAsync("aboard", TripDevice.At(8, 10));
        await trip.TieOnAsync("slim craw");
        List<string> kinds = [];
        for (int i = 0; i < sizes.Length; i += 2)
        {
            await trip.SizeAsync(sizes[i], sizes[i + 1]);
            await trip.TapAsync(TripDevice.At(8, 12 + i), i % 4 == 0 ? "bite" : "fish");
            await trip.WrongTapAsync(TripDevice.At(8, 13 + i), "snag");
            await trip.LookAsync("aboard");
        }

        await trip.HazeAsync(TripDevice.At(8, 30), planAgain: false);
        await trip.App.AccessibleAsync($"Aboard, {locale}");
        string before = await trip.AboardAsync();
        await trip.KillAsync(TripDevice.At(9, 40));
        await trip.OpenAsync("aboard");
        await trip.AgainAsync(before);
        await trip.NextAsync(TripDevice.At(9, 50));
        await trip.TapAsync(TripDevice.At(10, 50), "nothing");
        await trip.OnlineAsync();
        await trip.OpenAsync("log", TripDevice.At(19, 30));
        await trip.TypeAsync("fish", TripDevice.At(11, 0), ("entry.weight", "3.2", "lb"), ("entry.trailer", "slim craw", ""));
        await trip.LearnedAsync();
        await trip.App.AccessibleAsync($"Log, {locale}");
        foreach (string place in (string[])["lake", "shore", "rig", "day", "log"])
        {
            await trip.PlaceAsync(place);
            for (int i = 0; i < sizes.Length; i += 2)
            {
                await trip.SizeAsync(sizes[i], sizes[i + 1]);
                await trip.LookAsync(place);
            }
        }

        await trip.AgreesAsync();
        await trip.EndAsync();
    }

    // Up to the plan made anew on the water: the jig's own place behind the boat, a tap taken back, a haze deeper than told.
    private static async Task MorningAsync(TripDevice trip, GeoPoint first)
    {
        await trip.TapAsync(TripDevice.At(7, 11), "bite");
        GeoPoint? where = await trip.PlaceOfLastAsync("bite");
        Assert.NotNull(where);
        // The boat came from the south, and the jig still lies there.
        PlanePoint jig = new LocalProjection(first).ToPlane(where.Value);
        Assert.InRange(jig.YM, -60, -8);
        Assert.InRange(jig.XM, -3, 3);
        await trip.TapAsync(TripDevice.At(7, 20), "fish");
        await trip.WrongTapAsync(TripDevice.At(7, 24), "snag");
        await trip.TapAsync(TripDevice.At(7, 40), "snag");
        await trip.TapAsync(TripDevice.At(8, 5), "bite");
        await trip.HazeAsync(TripDevice.At(8, 30), planAgain: true);
        await trip.LookAsync("aboard");
        await trip.App.AccessibleAsync("Aboard");
    }

    // A page loaded anew, a tab that dies, stops left and a stretch without a bite.
    private static async Task DayAsync(TripDevice trip)
    {
        string before = await trip.AboardAsync();
        await trip.App.Page.ReloadAsync();
        await trip.AgainAsync(before);
        await trip.TapAsync(TripDevice.At(8, 50), "fish");
        await trip.TapAsync(TripDevice.At(9, 5), "bite");
        await trip.NextAsync(TripDevice.At(9, 10));
        await trip.TapAsync(TripDevice.At(9, 40), "bite");
        await trip.TapAsync(TripDevice.At(9, 45), "fish");
        before = await trip.AboardAsync();
        await trip.KillAsync(TripDevice.At(9, 50));
        await trip.OpenAsync("aboard");
        await trip.AgainAsync(before);
        await trip.TapAsync(TripDevice.At(9, 55), "snag");
        await trip.NextAsync(TripDevice.At(10, 5));
        // Taken back, nothing here opens its stretch again.
        await trip.WrongTapAsync(TripDevice.At(11, 10), "nothing");
        await trip.TapAsync(TripDevice.At(11, 15), "nothing");
        await trip.App.RestedAsync();
    }

    // Typed from the sheet at home; a fish logged aboard is weighed.
    private static async Task EveningAsync(TripDevice trip)
    {
        await trip.OnlineAsync();
        await trip.OpenAsync("log", TripDevice.At(19, 30));
        await trip.App.Page.WaitForSelectorAsync(".entries .ent");
        await trip.TypeAsync("effort", TripDevice.At(11, 40), ("entry.minutes.field", "35", ""), ("entry.trailer", "slim craw", ""));
        await trip.TypeAsync("fish", TripDevice.At(11, 50), ("entry.weight", "3.2", "lb"), ("entry.length", "17", "in"), ("entry.species", "smallmouth bass", ""),
            ("entry.ate", "crayfish", ""), ("entry.trailer", "slim craw", ""));
        await trip.TypeAsync("sighting", TripDevice.At(11, 55), ("entry.bottom", "30", "ft"));
        await trip.TypeAsync("note", TripDevice.At(12, 0), ("entry.note", "wind got up from the west", ""));
        await trip.TypeAsync("surface", TripDevice.At(12, 5), ("", "66", ""));
        await trip.TypeAsync("secchi", TripDevice.At(12, 6), ("", "9", ""));
        await trip.TypeAsync("temperature", TripDevice.At(12, 8), ("", "63", ""), ("reading.at", "20", "ft"));
        await trip.TypeAsync("oxygen", TripDevice.At(12, 10), ("", "7.5", ""), ("reading.at", "20", "ft"));
        await trip.WeighAsync("2.5");
        Assert.Equal("bite bite bite bite effort effort effort fish fish fish fish haze note nothing oxygen secchi sighting snag snag surface temperature", trip.Kinds);
        await trip.LearnedAsync();
        await trip.App.AccessibleAsync("Log");
        await trip.LookAsync("log");
    }
}
