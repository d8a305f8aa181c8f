using System.Globalization;
using System.Xml.Linq;
using Microsoft.Playwright;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Browser.Tests;

/// <summary>A device's position, as a boat under way gives it: told by the device's own clock, so that a moment set is a moment known.</summary>
internal static class DeviceBoat
{
    private static readonly double AccuracyM = 5, FixS = 20;

    private static readonly string Script = """
        (() => {
          const told = new Map();
          let last = 0;
          Object.defineProperty(navigator, 'geolocation', { value: {
            watchPosition: (ok) => { told.set(++last, ok); return last; },
            clearWatch: (id) => told.delete(id),
          } });
          window.boatAt = (latitude, longitude, speed, accuracy) =>
            told.forEach((ok) => ok({ coords: { latitude, longitude, speed, heading: null, accuracy }, timestamp: Date.now() }));
        })();
        """;

    /// <summary>A boat for all pages of a device, from the next one on.</summary>
    public static Task OnAsync(IBrowserContext device) => device.AddInitScriptAsync(Script);

    /// <summary>Drags northward and ends over a place: one fix every twenty seconds.</summary>
    /// <param name="page">The page that follows it.</param>
    /// <param name="clock">The device's clock.</param>
    /// <param name="until">When the last fix is told.</param>
    /// <param name="to">Where it ends.</param>
    /// <param name="speedMps">How fast.</param>
    /// <param name="fixes">How many fixes.</param>
    public static async Task DragAsync(IPage page, DeviceClock clock, DateTime until, GeoPoint to, double speedMps, int fixes)
    {
        LocalProjection around = new(to);
        for (int left = fixes - 1; left >= 0; left--)
        {
            await clock.SetAsync(until.AddSeconds(-FixS * left));
            GeoPoint here = around.ToGeo(new PlanePoint(0, -speedMps * FixS * left));
            await page.EvaluateAsync(string.Create(CultureInfo.InvariantCulture, $"() => window.boatAt({here.LatDeg}, {here.LonDeg}, {speedMps}, {AccuracyM})"));
        }
    }

    /// <summary>The waypoints of a route file, in its order.</summary>
    public static (string Name, GeoPoint Place)[] Waypoints(string gpx)
    {
        XNamespace space = "http://www.topografix.com/GPX/1/1";
        return [.. XDocument.Parse(gpx).Descendants(space + "wpt").Select(w => ((string?)w.Element(space + "name") ?? "",
            new GeoPoint(double.Parse(w.Attribute("lat")!.Value, CultureInfo.InvariantCulture), double.Parse(w.Attribute("lon")!.Value, CultureInfo.InvariantCulture))))];
    }
}
