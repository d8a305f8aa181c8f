using System.Globalization;
using System.Text;
using System.Text.Json;
using SecondShore.Answers.Wind;
using SecondShore.App.Compute.Views;
using SecondShore.App.Store;
using SecondShore.App.Tests.Trip;

namespace SecondShore.App.Tests;

public class WindPointTests
{
    [Fact]
    public async Task A_place_that_is_touched_tells_its_hours_and_goes_on_with_the_wind_that_is_asked()
    {
        TripPage page = await BlownAsync();
        await page.Session.AskPointAsync(new PointAsk(0, 0));
        Assert.Null(page.Session.Point);

        await page.Session.AskWindAsync(new WindAsk(12));
        Assert.Null(page.Session.Trouble);
        await page.Session.AskPointAsync(new PointAsk(400, 0));
        PointSeries east = page.Session.Point!;
        Assert.Equal(page.Session.Wind!.Hours.Select(h => h.At), east.Hours.Select(h => h.Time));
        Assert.InRange(east.DepthM, 14, 20);
        Assert.All(east.Hours, h => Assert.Equal(h.DisplacementM!.P50, h.ThermoclineM!.P50 - h.AtRestM!.P50, 0.2));
        // The same wind deepens the layer hour by hour, and the series follows it.
        Assert.Equal(east.AtRestM, east.Hours[0].AtRestM);
        Assert.True(east.Hours[^1].AtRestM!.P50 > east.Hours[0].AtRestM!.P50 + 0.1, $"{east.Hours[0].AtRestM} {east.Hours[^1].AtRestM}");

        // The wind blows from the west: warm water is piled up in the east.
        await page.Session.AskPointAsync(new PointAsk(-400, 0));
        PointSeries west = page.Session.Point!;
        Assert.True(east.Hours[^1].DisplacementM!.P50 > west.Hours[^1].DisplacementM!.P50 + 0.05, $"{east.Hours[^1].DisplacementM} {west.Hours[^1].DisplacementM}");

        await page.Session.AskWindAsync(new WindAsk(24));
        Assert.Equal(25, page.Session.Point!.Hours.Count);
        Assert.Equal(west.Lon, page.Session.Point.Lon);

        Assert.Equal("{}", page.Asked("pointfiles", JsonSerializer.Serialize(new AskAbout(Point: new PointAsk(-400, 0)), ViewsJson.Default.AskAbout)));
        Assert.Equal("{}", page.Asked("windfiles", "{}"));
        Assert.StartsWith("time,latitude_deg", page.Handed("points.csv"), StringComparison.Ordinal);
        Assert.Equal(1 + (25 * west.Hours[0].Currents.Count), page.Handed("points.csv").TrimEnd().Split('\n').Length);
        Assert.Contains("FeatureCollection", page.Handed("wind.geojson"), StringComparison.Ordinal);
        Assert.NotEmpty(page.Handed("wind.csv"));

        await page.Session.LeavePointAsync();
        Assert.Null(page.Session.Point);
    }

    [Fact]
    public async Task Dry_land_is_said_in_a_sentence_and_what_was_looked_at_stays()
    {
        TripPage page = await BlownAsync();
        await page.Session.AskWindAsync(new WindAsk(6));
        await page.Session.AskPointAsync(new PointAsk(0, 0));
        PointSeries middle = page.Session.Point!;
        await page.Session.AskPointAsync(new PointAsk(5000, 0));
        Assert.Contains("not on the water", page.Session.Trouble, StringComparison.Ordinal);
        Assert.Same(middle, page.Session.Point);
    }

    private static async Task<TripPage> BlownAsync()
    {
        Dictionary<string, byte[]> files = TripPage.Bowl();
        StringBuilder weather = new("time,air_temp_c,rel_humidity_pct,wind_speed_m_s,wind_dir_deg,shortwave_w_m2,cloud_fraction\n");
        for (DateTime t = new(2026, 7, 20, 0, 0, 0, DateTimeKind.Utc); t <= new DateTime(2026, 8, 25, 0, 0, 0, DateTimeKind.Utc); t = t.AddHours(1))
        {
            double day = Math.Sin((t.Hour - 6) / 24.0 * 2 * Math.PI);
            weather.Append(string.Create(CultureInfo.InvariantCulture,
                $"{t:yyyy-MM-ddTHH:mm}Z,{22 + (4 * day):0.0},60,{(t >= new DateTime(2026, 8, 20, 0, 0, 0, DateTimeKind.Utc) ? 9 : 3)},270,{Math.Max(0, 800 * day):0},0.3\n"));
        }

        files["weather.csv"] = Encoding.UTF8.GetBytes(weather.ToString());
        TripPage page = new(files);
        await page.Session.OpenAsync(new LakeRow("x", "Test Bowl", ""));
        Assert.Null(page.Session.Trouble);
        return page;
    }
}
